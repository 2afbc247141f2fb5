import type { Place } from "../../trade/place.ts";
import type { Sheet } from "../../trade/sheet.ts";
import { at, defineOrderCheck } from "../check.ts";
import { rowPlaces } from "../limits.ts";
import { subject } from "../sample.ts";

export const numberLeftOut = defineOrderCheck({
  id: "number-left-out",
  title: "Of numbered rooms one stands twice, and one is left out",
  severity: "asks",
  sender: "settles",
  source: { kind: "common practice" },
  why: "Sheets of numbered rooms are copied, and the number of one is not changed.",
  wordings: {
    twice: {
      says: "“{typed}” stands on {files}, and “{missing}” on none.",
      fix: "If one of them is “{missing}”, send its sheet again.",
    },
  },
  passing: [
    { shows: "legends without numbers", given: ({ completeOrder }) => subject(completeOrder()) },
    {
      shows: "a room with two doors, and numbers that are all there",
      given: ({ aloneDevice }) =>
        subject(["1", "2", "2", "3"].map((n, i) => aloneDevice(numbered(i), { plate: [`EXAM ${n}`] }))),
    },
    {
      shows: "a number left out, and none twice",
      given: ({ aloneDevice }) =>
        subject(["1", "2", "4"].map((n, i) => aloneDevice(numbered(i), { plate: [`EXAM ${n}`] }))),
    },
  ],
  failing: [
    {
      shows: "a number twice, and the next one never",
      given: ({ aloneDevice }) =>
        subject(["1", "2", "2", "4"].map((n, i) => aloneDevice(numbered(i), { plate: [`EXAM ${n}`] }))),
      wording: "twice",
      says: "“EXAM 2” stands on S-202.pdf and S-203.pdf, and “EXAM 3” on none.",
      fix: "If one of them is “EXAM 3”, send its sheet again.",
    },
  ],
  *find({ order }, catalogue, say) {
    const found = order.stations
      .flatMap(({ plates, devices }): Sheet[] => [...plates, ...devices])
      .flatMap((sheet) =>
        sheet.legends
          .filter(({ face, plain }) => !plain && (sheet.kind === "plate" || face === "plate"))
          .flatMap(({ face, rows }) => {
            const typed = rows.join(" ").replace(/\s+/g, " ").trim();
            const [, name, digits = ""] = /^(.*\p{L}.*?)(?<!\d)(\d{1,4})$/u.exec(typed) ?? [];
            const places: readonly Place[] = rowPlaces(sheet, face, catalogue);
            return name === undefined ? [] : [{ sheet, typed, name, digits, places }];
          }),
      );
    for (const series of Map.groupBy(found, ({ name }) => name.trim().toUpperCase()).values()) {
      const byNumber = Map.groupBy(series, ({ digits }) => Number(digits));
      const numbers = [...byNumber.keys()];
      const [first, last] = [Math.min(...numbers), Math.max(...numbers)];
      const twice = [...byNumber.values()].filter(({ length }) => length > 1);
      const [same = [], ...moreTwice] = twice;
      const [one] = same;
      const before = numbers.find((number) => number < last && !byNumber.has(number + 1));
      // One number is left out between the first and the last.
      const isOne = last - first === numbers.length;
      if (one === undefined || before === undefined || moreTwice.length > 0 || same.length > 2 || !isOne)
        continue;
      const missing = `${before + 1}`.padStart(one.digits.length, "0");
      yield say(
        "twice",
        { typed: one.typed, files: same.map(({ sheet }) => sheet.file), missing: one.name + missing },
        same.flatMap(({ sheet, places }) => at(sheet, ...places)),
      );
    }
  },
});

const numbered = (i: number): { mark: string; file: string } => ({
  mark: `S-20${i + 1}`,
  file: `S-20${i + 1}.pdf`,
});
