import { expect, test } from "vitest";
import { legend } from "../../src/checks/sample.ts";
import { legendCaseMixed } from "../../src/checks/sheet/legend-case-mixed.ts";
import { catalogue } from "../make/config.ts";
import { plate } from "../make/sample.ts";

/** What is found on a plate with these rows on its first gang, in the wording and with the word that it names. */
const found = (...rows: string[]): string[] =>
  [...legendCaseMixed.find(plate({ legends: [legend("1", ...rows), legend("2", "HALL")] }), catalogue)].map(
    ({ wording, facts }) => [wording, facts["word"] ?? facts["small"]].join(" "),
  );

// Common practice, no source: what a shift key that is let go too early or too late leaves.
test.each(["STUDy", "sTUDY", "StUDY", "STUdy", "KItchen", "KITCHENs", "kItchen", "éTAGE", "LIVIng"])(
  "“%s” is asked about",
  (word) => {
    expect(found(word)).toEqual([`within ${word}`]);
    expect(found("MAIN", `OLD ${word}`)).toEqual([`within ${word}`]);
  },
);

test.each(["STUDY", "McKAY", "MacLEOD", "DeWITT", "LaSALLE", "St", "2nd", "TVs", "PCs", "HVACs", "OWNER's"])(
  "“%s” is not",
  (word) => {
    expect(found(word).filter((one) => one.startsWith("within"))).toEqual([]);
  },
);

test("small letters among capitals are worth knowing", () => {
  for (const word of ["Study", "study", "McKay", "iPad", "eBike", "kWh", "DayRoom"])
    expect(found(word)).toEqual([`mixed ${word}`]);
});
