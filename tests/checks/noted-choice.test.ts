import { expect, test } from "vitest";
import { choiceAgainst } from "../../src/checks/noted-choice.ts";
import { notesCarryOrders } from "../../src/checks/sheet/notes-carry-orders.ts";
import { catalogue } from "../make/config.ts";
import { device } from "../make/sample.ts";

const place = (notes: string) => choiceAgainst(notes, device({ finish: "OAT", lettering: "INK" }), catalogue);

test.each([
  ["Chalk", "finish"],
  ["in chalk.", "finish"],
  ["Finish: CHK", "finish"],
  ["Milk lettering", "lettering"],
  ["Oat", undefined],
  ["Oat finish", undefined],
  ["text: Ink", undefined],
  ["Brick wall", undefined],
  ["next to the Chalk plate", undefined],
  ["", undefined],
])("the notes “%s” contradict %s", (notes, said) => {
  expect(place(notes)).toBe(said);
});

test("notes that name another finish alone are asked about", () => {
  const notes = device({ finish: "OAT", notes: "Chalk" });
  expect([...notesCarryOrders.find(notes, catalogue)].map(({ wording, facts }) => [wording, facts])).toEqual([
    ["elsewhere", { typed: "Chalk", field: "Finish", own: "Oat" }],
  ]);
});
