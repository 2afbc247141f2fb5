import { basename, dirname, join, resolve } from "node:path";
import { composeAnswer } from "../answer/answer.ts";
import { proofsFor } from "../answer/enclosures.ts";
import type { Catalogue } from "../catalogue/catalogue.ts";
import { makeReport, type Report } from "../judging/report.ts";
import { PackageThere, writePackage } from "../store/package-folder.ts";
import { CannotRun, defineCommand, reasonOf } from "./command.ts";
import { configure, settingsOption } from "./configuration.ts";
import { checkPaths, withReader } from "./submission.ts";

export const fill = defineCommand({
  name: "fill",
  words: [1, 1],
  details:
    "LIST is a station list as `burin blank` writes it, filled in: a workbook (.xlsx) or CSV. It is checked as the desk\nwould check it. Where something has to be fixed, that is printed with its cells, nothing is written, and it ends\nwith 1. Otherwise DIR has every device and plate sheet and one proof: whole or not at all, and never over one that\nis there.",
  options: {
    out: { type: "string", takes: "DIR", tells: "the folder to make; has to be given" },
    ...settingsOption,
  },
  async run([list = ""], { out: folder = "", settings }, { out, err }) {
    if (folder === "") throw new CannotRun("say where to put the sheets: --out DIR");
    const configuration = await configure(settings);
    const { catalogue } = configuration;
    const { report, attachments } = await withReader(configuration, (reader) =>
      checkPaths([list], configuration, reader),
    );
    if (!report.files.some(({ file }) => file.kind === "list"))
      throw new CannotRun(`${list} is no station list as \`burin blank\` writes it`);
    if (report.verdict === "fail") {
      out(composeAnswer(report, catalogue).text.trimEnd());
      return 1;
    }
    const sheets = attachments.filter((file) => file.list !== undefined);
    const files = [...sheets, ...(await proofsFor(report, catalogue))];
    try {
      const target = resolve(folder);
      await writePackage(
        dirname(target),
        basename(target),
        files.map(({ file, bytes }) => ({ path: file, bytes })),
      );
    } catch (cause) {
      if (cause instanceof PackageThere) throw new CannotRun(cause.message, { cause });
      if ((cause as Partial<NodeJS.ErrnoException>).code === undefined) throw cause;
      throw new CannotRun(`cannot write ${folder}: ${reasonOf(cause)}`, { cause });
    }
    out(composeAnswer(asSheets(report, catalogue), catalogue).text.trimEnd());
    for (const { file } of files) err(`wrote ${join(folder, file)}`);
    return 0;
  },
});

/** What would be answered if the sheets came as sheets: whoever fills them in sees them, and is not asked to. */
function asSheets({ files, sheets }: Report, catalogue: Catalogue): Report {
  const came = sheets.map(({ sheet }) => {
    const { list, ...own } = sheet;
    return list === undefined ? sheet : own;
  });
  return makeReport({ files: files.map(({ file }) => file), sheets: came }, catalogue);
}
