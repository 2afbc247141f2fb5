import { readdir, readFile, stat } from "node:fs/promises";
import { basename, extname, join } from "node:path";
import { readAttachment } from "../reading/attachment.ts";
import { readLetter } from "../reading/letter.ts";
import { composeAnswer } from "../report/answer.ts";
import { reportJson } from "../report/json.ts";
import { makeReport } from "../report/report.ts";
import type { Attachment } from "../trade/attachment.ts";
import { CannotRun, defineCommand } from "./command.ts";
import { configure, settingsOption } from "./wire.ts";

export const check = defineCommand({
  name: "check",
  takes: "PATH…",
  words: [1, Number.POSITIVE_INFINITY],
  summary: "Checks sheets and prints the report.",
  details:
    "PATH is a PDF, a letter (.eml) or a folder of them; all that is named is taken as one submission.\nEnds with 0 when it passes, 1 when it does not, 2 when it cannot be checked. Nothing is recorded or sent.",
  options: { json: { type: "boolean", tells: "print one JSON object instead" }, ...settingsOption },
  async run(paths, { json, settings }, { out }) {
    const { catalogue, editions } = await configure(settings);
    const attachments = await attachmentsOf(await filesOf(paths));
    const read = await Promise.all(
      attachments.map((attachment) => readAttachment(attachment, { editions, catalogue })),
    );
    const report = makeReport(
      { files: read.map(({ file }) => file), sheets: read.flatMap(({ sheet }) => sheet ?? []), earlier: [] },
      catalogue,
    );
    out(json ? JSON.stringify(reportJson(report), null, 2) : composeAnswer(report, catalogue).text.trimEnd());
    return report.verdict === "pass" ? 0 : 1;
  },
});

async function filesOf(paths: readonly string[]): Promise<string[]> {
  const files: string[] = [];
  for (const path of paths) {
    const found = await stat(path).catch((cause: unknown) => {
      throw new CannotRun(`cannot read ${path}: no such file or folder`, { cause });
    });
    if (found.isDirectory()) {
      const names = (await readdir(path)).filter((name) =>
        [".pdf", ".eml"].includes(extname(name).toLowerCase()),
      );
      if (names.length === 0) throw new CannotRun(`no PDF and no .eml in ${path}`);
      files.push(...names.toSorted().map((name) => join(path, name)));
    } else files.push(path);
  }
  return files;
}

async function attachmentsOf(files: readonly string[]): Promise<Attachment[]> {
  const attachments: Attachment[] = [];
  for (const [i, file] of files.entries()) {
    const bytes = new Uint8Array(
      await readFile(file).catch((cause: unknown) => {
        throw new CannotRun(`cannot read ${file}`, { cause });
      }),
    );
    if (extname(file).toLowerCase() === ".eml")
      attachments.push(...(await readLetter(bytes, `${i + 1}`)).attachments);
    else attachments.push({ id: `${i + 1}`, file: basename(file), bytes });
  }
  return attachments;
}
