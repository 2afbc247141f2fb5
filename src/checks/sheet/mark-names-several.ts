import { at, defineSheetCheck, labelOf } from "../check.ts";
import { asksForSeveral, mayAskForSeveral, namesSeveral } from "../several.ts";

/** S-201 (3), ALL and "all guest rooms" for a station mark. */
const ofMarks = [/\S\s*\((?!0?1\))\d{1,2}\)$/, /^\W*(?:all|every|each)\b(?! off\b)\D*$/i];
/** Words and signs between two order numbers. */
const between = /\s*(?:[&+;,]|\s\/\s|\b(?:and|or|was|now|formerly|previously|replaces|supersedes)\b:?)\s*/i;
/** A second number that borrows its letters from the first. */
const borrowed = /\p{L}\D{0,3}(\d{3,})\s*(?:[&+]|\b(?:and|or)\b)\s*(\d{3,})\W*$/iu;

export const markNamesSeveral = defineSheetCheck({
  id: "mark-names-several",
  title: "A sheet seems to order several of a kind",
  severity: "asks",
  sender: "settles",
  source: { kind: "common practice" },
  why: "Every sheet orders one device or one plate. Whoever writes TYP OF 4 or two marks on it expects more than one, and would get one.",
  wordings: {
    several: {
      says: "“{field}” says “{typed}”, which seems to name several stations. A sheet orders one.",
      fix: "Send one sheet for each station, with its own mark.",
    },
    orders: {
      says: "“{field}” says “{typed}”, which seems to name several orders. A sheet belongs to one.",
      fix: "Write one number, the same on every sheet of the order.",
    },
    quantity: {
      says: "“{field}” says “{typed}”, which seems to ask for several. A sheet orders one.",
      fix: "Send one sheet for each, with its own station mark.",
    },
  },
  passing: [
    { shows: "one mark", given: ({ plate }) => plate() },
    { shows: "a mark with a letter, a mark with a room", given: ({ device }) => device({ mark: "S-201B" }) },
    { shows: "a level and a station", given: ({ device }) => device({ mark: "L2 S-104" }) },
    { shows: "a mark that is an X and a number", given: ({ device }) => device({ mark: "X3" }) },
    {
      shows: "an order number with a release",
      given: ({ device }) => device({ order: "4512-2207/3, Rel 2" }),
    },
    { shows: "rooms that share a station", given: ({ device }) => device({ mark: "Rm 201/202" }) },
    {
      shows: "a measure in the project's name",
      given: ({ plate }) => plate({ project: "4x4 Ranch, Units 1-12" }),
    },
    {
      shows: "a quantity of one",
      given: ({ plate }) => plate({ project: "Larkspur Library (QTY 1)", mark: "S-201 x1" }),
    },
    { shows: "a tower named with an X", given: ({ plate }) => plate({ project: "Tower X2, Typical Unit" }) },
  ],
  failing: [
    {
      shows: "two marks",
      given: ({ device }) => device({ mark: "S-201, S-201B" }),
      wording: "several",
      says: "“Station mark” says “S-201, S-201B”, which seems to name several stations. A sheet orders one.",
    },
    {
      shows: "two marks with a stroke",
      given: ({ device }) => device({ mark: "S-201 / S-202" }),
      wording: "several",
      says: "“Station mark” says “S-201 / S-202”, which seems to name several stations. A sheet orders one.",
    },
    {
      shows: "two marks of two series",
      given: ({ device }) => device({ mark: "S-201 & K-4" }),
      wording: "several",
      says: "“Station mark” says “S-201 & K-4”, which seems to name several stations. A sheet orders one.",
    },
    {
      shows: "two letters behind one number",
      given: ({ device }) => device({ mark: "S-201A/B" }),
      wording: "several",
      says: "“Station mark” says “S-201A/B”, which seems to name several stations. A sheet orders one.",
    },
    {
      shows: "two numbers",
      given: ({ device }) => device({ mark: "201, 202" }),
      wording: "several",
      says: "“Station mark” says “201, 202”, which seems to name several stations. A sheet orders one.",
    },
    {
      shows: "a number that borrows its letter",
      given: ({ device }) => device({ mark: "S-201 & 202" }),
      wording: "several",
      says: "“Station mark” says “S-201 & 202”, which seems to name several stations. A sheet orders one.",
    },
    {
      shows: "two order numbers",
      given: ({ device }) => device({ order: "BW-2207 / BW-2208" }),
      wording: "orders",
      says: "“Order number” says “BW-2207 / BW-2208”, which seems to name several orders. A sheet belongs to one.",
    },
    {
      shows: "two order numbers, of which the second borrows its letters",
      given: ({ device }) => device({ order: "BW-2207 & 2208" }),
      wording: "orders",
      says: "“Order number” says “BW-2207 & 2208”, which seems to name several orders. A sheet belongs to one.",
    },
    {
      shows: "an order number and an older one",
      given: ({ device }) => device({ order: "BW-2207 (was BW-2190)" }),
      wording: "orders",
      says: "“Order number” says “BW-2207 (was BW-2190)”, which seems to name several orders. A sheet belongs to one.",
    },
    {
      shows: "typical",
      given: ({ plate }) => plate({ mark: "TYP OF 4" }),
      wording: "quantity",
      says: "“Station mark” says “TYP OF 4”, which seems to ask for several. A sheet orders one.",
    },
    {
      shows: "a number of times",
      given: ({ plate }) => plate({ mark: "S-201 X3" }),
      wording: "quantity",
      says: "“Station mark” says “S-201 X3”, which seems to ask for several. A sheet orders one.",
    },
    {
      shows: "all rooms of a kind",
      given: ({ device }) => device({ mark: "all guest rooms" }),
      wording: "quantity",
      says: "“Station mark” says “all guest rooms”, which seems to ask for several. A sheet orders one.",
    },
    {
      shows: "nothing but x3",
      given: ({ plate }) => plate({ mark: "x3" }),
      wording: "quantity",
      says: "“Station mark” says “x3”, which seems to ask for several. A sheet orders one.",
    },
    {
      shows: "a quantity in the project",
      given: ({ plate }) => plate({ project: "Larkspur Library (QTY 2)" }),
      wording: "quantity",
      says: "“Project name” says “Larkspur Library (QTY 2)”, which seems to ask for several. A sheet orders one.",
    },
  ],
  *find(sheet, _catalogue, say) {
    for (const place of ["mark", "project", "order"] as const) {
      const typed = sheet[place];
      if (typed === undefined) continue;
      const facts = { field: labelOf(sheet, place), typed };
      const isMark = place === "mark";
      if (
        isMark
          ? mayAskForSeveral(typed) || ofMarks.some((pattern) => pattern.test(typed))
          : asksForSeveral(typed)
      )
        yield say("quantity", facts, at(sheet, place));
      else if (isMark && namesSeveral(typed)) yield say("several", facts, at(sheet, place));
      else if (place === "order" && namesTwo(typed)) yield say("orders", facts, at(sheet, place));
    }
  },
});

/** Whether an order number is two: "BW-2207 / BW-2208", "4512 & 4513", "BW-2207 (was BW-2190)", "BW-2207 & 2208". */
function namesTwo(typed: string): boolean {
  const parts = typed
    .replaceAll(/[()[\]]/g, " ")
    .split(between)
    .filter((part) => part.trim() !== "");
  const shapes = new Set(
    parts.map((part) =>
      part
        .replaceAll(/\p{L}/gu, "A")
        .replaceAll(/\p{N}/gu, "0")
        .replaceAll(/[\s.#-]/g, ""),
    ),
  );
  const isEach = parts.length > 1 && shapes.size === 1 && parts.every((part) => /\d/.test(part));
  const [, one = "", other = ""] = borrowed.exec(typed) ?? [];
  return isEach || (one !== "" && one !== other && one.length === other.length);
}
