import { expect, test } from "vitest";
import { withoutReplacements } from "../../../src/reading/reply/replacements.ts";
import { alone, came } from "../../make/came.ts";

const salon = alone("B-1", ["SALON"]);
const sauna = alone("B-1", ["SAUNA"]);
const steam = alone("B-2", ["STEAM"]);
const again = came([sauna], [salon]);
const oneOfTwo = came([sauna], [salon, steam]);
const added = came([steam], [salon]);

const saysNothing = (said: string, given: typeof again): boolean =>
  !/[\p{L}\p{N}]/u.test(withoutReplacements(said, given));

test.each([
  ["Please use this one instead", again, added],
  ["So please just use the attached", again, added],
  ["Please disregard the earlier sheet", again, added],
  ["Please ignore the earlier sheets", again, oneOfTwo],
  ["Ignore the first copies we sent yesterday", again, oneOfTwo],
  ["Please replace B-1 with this", oneOfTwo, came([sauna, steam], [salon, steam])],
  ["Please replace the old sheet with the new one", again, added],
  ["New B-1 replaces the old one", again, added],
  ["This one is right now", again, added],
  ["That's the right sheet", again, added],
  ["Rev B attached, supersedes rev A", again, added],
  ["B-1 rev 2", again, came([steam], [steam])],
  ["Our client has changed her mind", again, added],
  ["Changed SALON to SAUNA", again, came([salon], [salon])],
  ["Fixed it from “SALON” to “SAUNA”", again, came([steam], [steam])],
  ["Shortened it to SAUNA", again, came([salon], [salon])],
  ["Used SAUNA instead", again, came([steam], [steam])],
  ["We'll go with SAUNA", again, came([sauna], [sauna])],
  ["Owner agreed to SAUNA", again, added],
  ["Took out SALON", again, came([salon], [salon])],
  ["Cut it down to fit", again, added],
  ["Resubmitted", again, added],
  ["Does this fit now?", again, added],
  ["OK now?", again, added],
  ["How about this one?", again, added],
])("“%s” asks for nothing where it came so, and for something where it did not", (said, fits, others) => {
  expect([saysNothing(said, fits), saysNothing(said, others)]).toEqual([true, false]);
});

test.each([
  "Use the old one",
  "Disregard this one",
  "Please use this one for B-2",
  "Please use this for all stations",
  "Use this one, not the other",
  "Please replace B-2 with this",
  "Ignore the first sheet but keep its finish",
  "Changed SALON to STEAM",
  "Changed Oat to Chalk",
  "This is the right plate",
  "Cut it in half",
  "Cut it to 2 inches",
  "Took out button 3",
  "Removed the pilot light",
  "Owner is fine with Oat",
  "Changed the finish to Oat",
  "How about Oat?",
  "Is this one in Oat?",
  "Does this come in Oat?",
])("“%s” asks for something else", (said) => {
  expect(saysNothing(said, again)).toBe(false);
});

test("a word that still stands somewhere was not changed everywhere", () => {
  expect(saysNothing("Changed SALON to SAUNA", came([sauna, salon], [salon, salon]))).toBe(false);
});
