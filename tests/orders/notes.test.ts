import { expect, test } from "vitest";
import { readNotedPlace } from "../../src/orders/notes.ts";

const marks = ["S-104", "S-105", "KITCHEN", "12"];
const numbers = ["BW-2207"];

test.each([
  ["plate S-104 pos 3 of 6", { mark: "S-104", position: 3, gangs: 6 }],
  ["Plate s104, position 3", { mark: "S-104", position: 3 }],
  ["S-104", { mark: "S-104" }],
  ["goes into S-104 (gang 2/4)", { mark: "S-104", position: 2, gangs: 4 }],
  ["station no. S 104", { mark: "S-104" }],
  ["S-104, 3 of 6", { mark: "S-104", position: 3, gangs: 6 }],
  ["Station: K-7, pos. 1", { mark: "K-7", position: 1 }],
  ["plate kitchen", { mark: "KITCHEN" }],
  ["station 12", { mark: "12" }],
  ["plate ABCD12345", { mark: "ABCD12345" }],
  ["next to abcd-12345b", { mark: "ABCD-12345B" }],
  ["S-104, beside K-9", { mark: "S-104" }],
  ["pos 3 of 120", { position: 3 }],
])("“%s” names a place", (notes, place) => {
  expect(readNotedPlace(notes, marks, numbers)).toEqual(place);
});

test.each([
  ["", {}],
  ["call before delivery", {}],
  ["12 screws, please", {}],
  ["near the kitchen door", {}],
  ["S-104 or S-105", {}],
  ["see order BW-2207", {}],
  ["part key D4/OAT/INK-2", {}],
  ["needed by 10/12/26", {}],
  ["page 2 of 3", {}],
  ["the plate of 6 gangs", {}],
  ["template S200", {}],
  ["plate S 104B", {}],
  ["plate attached", {}],
  ["plate 2S-107", {}],
  ["plate S-107-2", {}],
  ["plate ABCDE-10", {}],
  ["plate S-123456", {}],
  ["expos 2", {}],
  ["pos 123", {}],
  ["pos 2B", {}],
  ["lot X2 of 6", {}],
  ["105 of 6", {}],
  ["3 of 120", {}],
  ["2 of 4x4 boxes", {}],
])("“%s” names none", (notes, place) => {
  expect(readNotedPlace(notes, marks, numbers)).toEqual(place);
});

test("a mark is told as it was typed first", () => {
  expect(readNotedPlace("for s 104", ["S-104", "s104"], [])).toEqual({});
  expect(readNotedPlace("for s104", ["S-104", "s104"], [])).toEqual({ mark: "S-104" });
});
