import { expect, test } from "vitest";
import { paragraphsOf } from "../../../src/reading/reply/sentences.ts";

test.each<[string, string[]]>([
  ["10. Then more", ["10. Then more"]],
  ["(4. Then more", ["(4. Then more"]],
  ["100. Then more", ["100.", "Then more"]],
  ["It is S-1. Then more", ["It is S-1.", "Then more"]],
  ["See no. 4. Then more", ["See no. 4.", "Then more"]],
  ["Mr. Lund says so. Then more", ["Mr. Lund says so.", "Then more"]],
  [
    "Fr. Lund, Sr. Agnes and Rev. Holm say so. Then more",
    ["Fr. Lund, Sr. Agnes and Rev. Holm say so.", "Then more"],
  ],
  ["It is att. Then more", ["It is att.", "Then more"]],
  ["Yes! Then more? Or so; and on", ["Yes!", "Then more?", "Or so;", "and on"]],
  ["Lobby - 12 devices", ["Lobby -", "12 devices"]],
])("%j has the sentences %j", (line, sentences) => {
  expect(paragraphsOf([line])).toEqual([sentences]);
});
