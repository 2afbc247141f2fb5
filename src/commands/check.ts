import { composeAnswer, nothingEnclosed } from "../answer/answer.ts";
import { reportJson } from "../answer/json.ts";
import { enclose } from "../intake/enclose.ts";
import { defineCommand } from "./command.ts";
import { configure, settingsOption } from "./configuration.ts";
import { checkPaths, withReader, writeFiles } from "./submission.ts";

export const check = defineCommand({
  name: "check",
  words: [1, Number.POSITIVE_INFINITY],
  details:
    "PATH is a PDF, a station list (.xlsx, .csv), a letter (.eml), or a folder of PDFs and letters; all that is named is\ntaken as one submission. What else lies in a folder is not read, and told.\nEnds with 0 when it passes, 1 when it does not, 2 when it cannot be checked. Nothing is recorded or sent.",
  options: {
    json: { type: "boolean", tells: "print one JSON object instead" },
    out: {
      type: "string",
      takes: "DIR",
      tells: "write there the proofs, the sheets with what is wrong marked on them, and the missing ones",
    },
    ...settingsOption,
  },
  async run(paths, { json, out: folder, settings }, { out, err }) {
    const configuration = await configure(settings);
    const { report, enclosed } = await withReader(configuration, async (reader) => {
      const checked = await checkPaths(paths, configuration, reader, (path) => {
        err(`not read: ${path}`);
      });
      if (folder === undefined) return { ...checked, enclosed: undefined };
      const made = { reader, ...configuration, most: Number.POSITIVE_INFINITY, pictures: checked.pictures };
      return { ...checked, enclosed: await enclose(checked.report, checked.attachments, made) };
    });
    if (folder !== undefined && enclosed !== undefined)
      for (const path of await writeFiles(
        [
          ...enclosed.marked,
          ...enclosed.missing.sheets,
          ...enclosed.filled,
          ...enclosed.proofs,
          ...enclosed.pictures,
        ],
        folder,
      ))
        err(`wrote ${path}`);
    out(
      json
        ? JSON.stringify(reportJson(report), null, 2)
        : composeAnswer(
            report,
            configuration.catalogue,
            enclosed && { ...nothingEnclosed, pictures: enclosed.pictures },
          ).text.trimEnd(),
    );
    return report.verdict === "pass" ? 0 : 1;
  },
});
