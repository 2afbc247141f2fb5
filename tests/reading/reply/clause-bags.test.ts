import { describe, expect, test } from "vitest";
import { plainly, read } from "./read-reply.ts";

const answer = [
  "CONFIRM: questions to answer.",
  "",
  "sala.pdf",
  "  1. The ship-to address is begun but not complete; not filled in: “Ship",
  "     to: street”.",
  "     Fill it in, and send the sheet again.",
  "  2. “LAMPS” stands on button 2 and button 4.",
  "     Send the sheet again with the legends that tell them apart.",
  "  3. “COMDOR” in row 1 of button 3 looks misspelt.",
  "     If you mean CONDOR, send the sheet again.",
].join("\n");
const said = (text: string): ReturnType<typeof read> =>
  read(text, { answer, bringsSheets: /\battached\b/iu.test(text) });

describe("a slip is told in any turn of words for one", () => {
  test.each([
    "Had my glasses off.",
    "Extra O crept in.",
    "One letter too many.",
    "I transposed two letters.",
    "(letters swapped)",
    "The E went missing.",
    "Copy and paste error.",
    "That was an oversight.",
    "I ticked the wrong box",
    "I rushed it.",
    "It was left over from the last job.",
  ])("%j", (slip) => {
    expect(said(`2 YES\n3 NO. ${slip} New sheet attached.`)).toEqual(plainly([2], [3]));
  });

  test.each([
    "The finish is wrong.",
    "The plate is wrong too.",
    "The drawing is wrong.",
    "I copied it from the wrong drawing.",
    "Button 4 is missing.",
    "You forgot the plate.",
    "Forgot one more.",
    "Too many on the last one.",
    "Sorry, rush it for Friday.",
    "Wrong price as well.",
    "To our office.",
  ])("%j is for a person", (wish) => {
    expect(said(`2 YES\n3 NO. ${wish} New sheet attached.`)).toMatchObject({ person: true });
  });

  test("beside a yes it takes that back", () => {
    for (const slip of ["Extra O crept in.", "I rushed it.", "missing E"])
      expect(said(`2 YES\n3 YES, ${slip} New sheet attached.`)).toMatchObject({ person: true });
  });
});

describe("what was mended on a sheet is told in any turn of such words", () => {
  test.each([
    "Street filled in.",
    "Both completed now.",
    "Ship-to ticked as same as bill-to.",
    "All filled in now.",
    "Address added and name corrected.",
  ])("%j", (mended) => {
    expect(said(`2 YES\n3 NO. ${mended} New sheet attached.`)).toEqual(plainly([2], [3]));
  });

  test.each([
    "Have the street filled in.",
    "Legends corrected in brass.",
    "Both to be completed in gold.",
    "Add the address.",
    "Ship to ticked as the site.",
  ])("%j is for a person", (wish) => {
    expect(said(`2 YES\n3 YES. ${wish} New sheet attached.`)).toMatchObject({ person: true });
  });

  test.each<[string, number[], number[]]>([
    ["Both completed now. New sheet attached. 2 and 3 YES.", [2, 3], []],
    ["Street filled in with the box ticked. New sheet attached. 2 and 3 YES.", [2, 3], []],
    ["2 YES. 3 retyped with the box ticked. New sheet attached.", [2], [3]],
    ["2 YES. 3 reworded and relabelled. Sheet attached.", [2], [3]],
    ["Amended 3 and filled in the address as well. 2 YES. Sheet attached.", [2], [3]],
  ])("%j", (text, yes, no) => {
    expect(said(text)).toEqual(plainly(yes, no));
  });

  test.each([
    "2 YES. 3 reworded and relabelled.",
    "2 YES. 3 - have it relabelled. New sheet attached.",
    "2 YES. 3 with the box ticked. New sheet attached.",
    "Revised 3 and added the address. 2 YES.",
    "Revised 3 and now four. 2 YES. Sheet attached.",
    "Updated 3 and have it sorted. 2 YES. Sheet attached.",
  ])("%j promises no sheet, or asks for something", (text) => {
    expect(said(text)).toMatchObject({ no: [], person: true });
  });

  test("with something is with the sheet that was told of, and with no yes", () => {
    expect(said("2 YES. 3 YES. New sheet attached with the address filled in.")).toEqual(plainly([2, 3]));
    expect(said("New sheet attached. 2 YES. With the name corrected. 3 YES.")).toMatchObject({
      person: true,
    });
    expect(said("New sheet attached. 2 YES, name corrected. 3 YES.")).toMatchObject({ person: true });
  });
});

describe("words that shall stand on the sheet are told in any turn, in capitals", () => {
  test.each([
    "3 NO, obviously COMEDOR.",
    "3 NO - COMEDOR is correct.",
    "3 NO. I meant to type COMEDOR.",
    "3 NO, that one should be COMEDOR with an E.",
    "3 NO, COMEDOR over two rows.",
    "3 corrected to COMEDOR.",
    "3 is a typo for COMEDOR.",
    "3 renamed to COMEDOR.",
    "3 NO. I meant to type PIANO.",
    "3 NO. I meant to type NOOK.",
    "3 NO. I meant to type TV.",
  ])("%j", (written) => {
    expect(said(`2 YES. ${written} New sheet attached.`)).toEqual(plainly([2], [3]));
  });

  test.each([
    "3 NO, COMEDOR in BOLD.",
    "3 NO, PLEASE CALL ME.",
    "3 NO, DO NOT CUT IT.",
    "3 NO, STOP THE ORDER.",
    "3 NO, I meant it.",
    "3 NO, COMEDOR iTALIC.",
    "3 NO, COMEDOR Italic.",
    "3 NO, now COMEDOR upside down.",
    "3 NO, must be type A.",
    "3 - write COMEDOR instead.",
    "3 - type COMEDOR.",
    "3 NO, that is what I meant.",
    "3 YES, COMEDOR is correct.",
    "3 YES, now COMEDOR.",
  ])("%j is for a person", (written) => {
    expect(said(`2 YES. ${written} New sheet attached.`)).toMatchObject({ person: true });
  });
});
