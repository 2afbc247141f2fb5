import { describe, expect, test } from "vitest";
import { readTo } from "./read-letters.ts";
import { plainly } from "./read-reply.ts";

describe("a reason beside a clear yes", () => {
  test.each<[string, string, number[]]>([
    [
      "L01",
      "1 sheet attached\n2 yes, that's the name of the room, the client has it painted over the door\n3 yes, plum on barley, it's meant",
      [2, 3],
    ],
    ["L01", "1 sheet attached\n2 not a typo, that's the name of the room\n3 so intended", [2, 3]],
    [
      "L02",
      "Yes, CWTCH is right, it's Welsh for a cuddle (or the cupboard under the stairs). It's on their front door as well :)",
      [1],
    ],
    [
      "L03",
      "1 YES. The sedilia are the seats for the clergy by the altar.\n2 YES. The narthex is the porch end.\n3 YES. We do have two aisles.",
      [1, 2, 3],
    ],
    [
      "L03",
      "All three are as drawn. Sedilia and narthex are parts of the church, and there is an aisle on either side, hence AISLE twice.",
      [1, 2, 3],
    ],
    ["L03", "1 YES\n2 YES\n3 YES. They switch the same circuit from two buttons.", [1, 2, 3]],
    ["L05", "1 YES (mezzanine)\n2 YES, one at each end of the room", [1, 2]],
    ["L05", "1 yes, they had to be shortened\n2 yes", [1, 2]],
    [
      "L06",
      "1 YES, the capitals are room names and the small ones are fixtures. The librarian was very particular about it!",
      [1],
    ],
    [
      "L06",
      "Yes, this is intentional. The architect's schedule has the room names in capitals and the shelf zones in upper and lower case.",
      [1],
    ],
    [
      "L08",
      "All four are YES. The family speaks German at home, and Gartn is how they say it in Bavaria :-)",
      [1, 2, 3, 4],
    ],
    ["L09", "1 YES\nJust the one. TYP OF 4 is what the drawing calls it.", [1]],
    ["L11", "1 yes\n2 yes, dropped the T on purpose, thats the class name on their posters", [1, 2]],
    ["L14", "1 YES\n2 YES science room", [1, 2]],
    [
      "L15",
      "1 Yes. Mrs. Krebbs is the donor, please leave it.\n2 Yes, stage word for the curtains.\n3 Yes",
      [1, 2, 3],
    ],
    ["L16", "Sheet for 1 attached\n2 yes\n3 yes tech company lol\n4 yes", [2, 3, 4]],
    [
      "L16",
      "Hi, yes to all three, they have funny names for everything in that office. Corrected sheet with the billing city attached.",
      [2, 3, 4],
    ],
    ["L18", "1 YES\nTwo boards in that room, front and back wall.", [1]],
    ["L18", "1 YES\nThere are two whiteboards, one at each end of the hall.", [1]],
    [
      "L19",
      "1 - Cream please, new sheet attached.\n2 - yes, the contrast between device and plate is on purpose.",
      [2],
    ],
    ["L28", "Only one is wanted.", [1]],
    ["L29", "1 yes, 2-way hall, both ends same.\n2 yes", [1, 2]],
  ])("%s: %s", (letter, text, yes) => {
    expect(readTo(letter, text)).toEqual(plainly(yes));
  });

  test.each<[string, string]>([
    ["L02", "1 YES, cuddle"],
    ["L02", "1 YES as in watch"],
    ["L02", "1 YES. The client has it painted over, though."],
    ["L02", "1 YES. The client has it painted over the door as CWTCHE."],
    ["L02", "1 YES. They had to be shortened, please spell it out."],
    ["L02", "1 YES. They speak Welsh, I don't."],
    ["L02", "1 YES. The family speaks Welsh now"],
    ["L02", "1 YES, new room"],
    ["L02", "1 YES, brass company"],
    ["L02", "1 YES, different company"],
    ["L02", "1 YES, bold word"],
    ["L02", "1 YES, temporary name"],
    ["L02", "1 YES, parts of the job"],
    ["L02", "1 YES, sort of a joke"],
    ["L05", "2 YES\n1 YES (MEZZANINE)"],
    ["L05", "2 YES\n1 yes, Mezzanine"],
    ["L05", "2 YES\n1 YES or mezzanine"],
    ["L05", "2 YES\n1 YES, write mezzanine"],
    ["L05", "2 YES\n1 mezzanine"],
    ["L05", "2 YES\n1 not a typo, it should be MEZE"],
    ["L05", "2 YES\n1 not a typo I hope"],
    ["L05", "2 YES\n1 hardly so intended"],
    ["L05", "1 YES\n2 YES. There are two lamps, swap them."],
    ["L05", "1 YES\n2 YES. They should switch the same circuit from two buttons."],
    ["L05", "1 YES\n2 YES, so LAMPS twice please"],
    ["L06", "1 YES, the capitals are room names and the small ones are wrong."],
    ["L06", "1 YES, capitals for all rooms."],
    ["L06", "1 YES. Capitals are room names and small letters are to be capitals."],
    ["L09", "1 YES\nTYP OF 4 is what the drawing calls it, so we need 4."],
    ["L11", "1 yes\n2 yes, dropped the T by accident"],
    ["L15", "1 YES. Mrs. Krebs is the donor.\n2 YES\n3 YES"],
    ["L15", "1 YES\n2 YES\n3 YES. Mr. Foyer is the donor."],
    ["L15", "1 YES, Mrs Krebs wants it so.\n2 YES\n3 YES"],
    ["L15", "1 YES. Mrs. Krebbs is the donor, so check with her.\n2 YES\n3 YES"],
    ["L15", "1 YES\n2 YES\n3 YES for foyer"],
    ["L15", "1 YES\n3 YES\n2 YES, wrong word for the curtains"],
    ["L16", "yes to all three?"],
    ["L16", "All three are right if 1 is"],
    ["L16", "yes to all four"],
    ["L18", "1 YES, two boards please"],
    ["L18", "1 YES, we need two"],
    ["L18", "1 YES. We have two units in that room."],
    ["L18", "1 YES. There are two of these in that room."],
    ["L18", "1 YES. There are two problems."],
    ["L18", "1 YES. There are two boards but one moves."],
    ["L18", "1 YES, BOARD 1 and BOARD 2."],
    ["L18", "1 YES if there are two boards in that room."],
    ["L18", "1 YES. Front one and back one should say FRONT and BACK."],
    ["L19", "1 sheet attached\n2 YES, Pumice on Coal."],
    ["L19", "1 sheet attached\n2 YES, Coal on Coal."],
    ["L19", "1 sheet attached\n2 YES. the contrast is not on purpose"],
    ["L19", "1. Black please, new sheet attached.\n2 YES"],
    ["L19", "1. Cream for all stations, new sheet attached.\n2 YES"],
    ["L19", "1. Cream please and make the plate Coal, new sheet attached.\n2 YES"],
    ["L28", "Only one is wanted?"],
    ["L28", "Only one is wanted for now, six later."],
    ["L28", "Only one of them is wanted."],
    ["L28", "They only need one, but I want six."],
    ["L28", "Only the one is required, in brass."],
  ])("and what may be more than one is for a person: %s: %s", (letter, text) => {
    expect(readTo(letter, text)).toMatchObject({ person: true });
  });
});

describe("a no without a number, where a single question can be meant", () => {
  test.each<[string, string]>([
    ["L20", "Good catch! The positions were swapped. Both sheets attached, corrected."],
    ["L20", "Good catch, I had them backwards. Both sheets corrected and attached."],
    ["L20", "Yes, they got swapped. New sheets attached."],
    ["L20", "Die Positionen waren tatsächlich vertauscht. Beide Blätter korrigiert im Anhang."],
    ["L21", "X-3 should say EXAM 3. Corrected sheet attached, thanks for checking."],
    ["L21", "yep x-3 should say exam 3. fixed sheet attached"],
  ])("%s: %s", (letter, text) => {
    expect(readTo(letter, text)).toEqual(plainly([], [1]));
  });

  test.each<[string, string]>([
    ["L20", "They are swapped on purpose."],
    ["L20", "1 YES, they were swapped on purpose."],
    ["L20", "The positions were not swapped."],
    ["L20", "The positions were swapped?"],
    ["L20", "The positions were swapped on your side. Sheets attached."],
    ["L20", "If they were swapped we will send new sheets. Sheets attached."],
    ["L20", "They should be swapped, please do it for us."],
    ["L21", "X-3 should say EXAM 2. Corrected sheet attached."],
    ["L21", "X-3 should not say EXAM 3. Corrected sheet attached."],
    ["L21", "X-3 should say EXAM 3 but we keep EXAM 2. Sheet attached."],
    ["L21", "Maybe X-3 should say EXAM 3. Sheet attached."],
    ["L21", "X-3 should say EXAM 3, please change it for us."],
    ["L21", "1 YES, X-3 is EXAM 3."],
  ])("and anything else is for a person: %s: %s", (letter, text) => {
    expect(readTo(letter, text)).toMatchObject({ yes: [], no: [], person: true });
  });

  test("one of two buttons that say the same was renamed", () => {
    const text =
      "MEZZ is fine. We've renamed one of the LAMPS buttons so they can be told apart, new sheet attached.";
    expect(readTo("L05", text)).toEqual(plainly([1], [2]));
    expect(readTo("L05", "MEZZ is fine. Please have one of the LAMPS buttons renamed.")).toMatchObject({
      yes: [],
      person: true,
    });
  });

  test("who owns a slip behind the sheet for what was denied takes no yes back", () => {
    const text = "2 no\n1 yes\nnew sheet attached. spelling was never my thing";
    expect(readTo("L05", text)).toEqual(plainly([1], [2]));
    expect(readTo("L05", "1 yes\n2 yes\nspelling was never my thing")).toMatchObject({
      yes: [],
      person: true,
    });
  });

  test("a full stop stops nothing", () => {
    const text = "1 YES\n2 No, the full stop is a slip. I enclose a corrected sheet. Attached.";
    expect(readTo("L24", text)).toEqual(plainly([1], [2]));
    expect(readTo("L24", "1 YES\n2 No, stop the order. New sheet attached.")).toMatchObject({ person: true });
  });
});
