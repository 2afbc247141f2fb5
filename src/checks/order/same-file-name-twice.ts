import { at, defineOrderCheck } from "../check.ts";
import { subject } from "../sample.ts";

export const sameFileNameTwice = defineOrderCheck({
  id: "same-file-name-twice",
  title: "Several files came with one name",
  severity: "notes",
  source: { kind: "house" },
  why: "Nothing is lost by it, but an answer must name each file so that its sender knows which one is meant.",
  wordings: {
    told: {
      says: "More than one file came with the name {named}; what came later is called {files} here.",
      fix: "Nothing to do. A name for each sheet, such as its station and position, makes answers easier to read.",
    },
  },
  passing: [{ shows: "a name for each file", given: ({ completeOrder }) => subject(completeOrder()) }],
  failing: [
    {
      shows: "two different sheets of one name",
      given: ({ deviceAt, plate }) =>
        subject([
          plate(),
          deviceAt(1, { file: "device.pdf" }),
          deviceAt(2, { file: "device (2).pdf", named: "device.pdf" }),
        ]),
      wording: "told",
      says: "More than one file came with the name device.pdf; what came later is called device (2).pdf here.",
    },
  ],
  *find({ order }, _, say) {
    for (const [named, sheets] of Map.groupBy(order.sheets, (sheet) => sheet.named))
      if (named !== undefined)
        yield say(
          "told",
          { named, files: sheets.map(({ file }) => file) },
          sheets.flatMap((sheet) => at(sheet)),
        );
  },
});
