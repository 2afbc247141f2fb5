import { describe, expect, test } from "vitest";
import {
  type Block,
  blockIn,
  isPlain,
  legendIn,
  meaningOf,
  rowAt,
} from "../../../src/reading/own-form/meanings.ts";
import { trade } from "../../make/config.ts";

const makes = trade.catalogue;
const meaning = (words: string, around?: Block, form: "device" | "plate" = "device") =>
  meaningOf(words, { around, form, makes });

// What forms print beside their fields. Common practice, no source.
test.each([
  ["ship to", "ship"],
  ["shipment", "ship"],
  ["delivery address", "ship"],
  ["consignee", "ship"],
  ["bill to", "bill"],
  ["sold to", "bill"],
  ["customer account", "bill"],
  ["contact", "contact"],
  ["ordered by", "contact"],
  ["ship to if not billing", "ship"],
  ["same as billing", undefined],
  ["sameday ship", "ship"],
  ["selfsame ship", "ship"],
  ["township", undefined],
  ["shipyard", undefined],
  ["waybill", undefined],
  ["billboard", undefined],
  ["chairperson", undefined],
  ["personal", undefined],
])("“%s” speaks of the block %s", (words, block) => {
  expect(blockIn(words)).toBe(block);
});

describe.each([
  [
    "ship.same",
    ["same", "ship to billing address", "deliver to account", "drop ship"],
    [
      "sameness",
      "selfsame",
      "drop shipping",
      "teardrop ship",
      "worship bill",
      "shipping billed",
      "ship handbill",
    ],
  ],
  ["contact.email", ["email", "mail", "email address"], ["airmail", "mailing"]],
  ["contact.phone", ["telephone", "cell", "mobile no"], ["headphone", "phones", "hotel"]],
  ["edition", ["edition", "form version"], ["sedition", "editions", "platform version", "form versions"]],
  ["part-key", ["part no", "catalogue number", "sku"], ["counterpart key", "part keys", "skull"]],
  [
    "order",
    ["order", "po", "p o number", "orderno"],
    ["orders", "reorder", "order by", "po form", "preorderno", "ordernote"],
  ],
  ["project", ["project name", "job", "site", "project address"], ["projector", "subproject", "jobs"]],
  [
    "standing",
    ["where the device goes", "alone or in a plate", "single gang", "stand alone", "standing"],
    ["elsewhere the device", "where the devices", "outstanding", "standings", "bystand alone", "standalones"],
  ],
  [
    "legend-place",
    ["legend sits", "text placement", "engraving at"],
    ["context at", "texts at", "text attic", "text misplace"],
  ],
  [
    "position",
    ["position", "slot", "gang number", "k of n"],
    ["exposition", "positions", "mygang number", "k of nine", "ink of n"],
  ],
  ["gangs", ["number of gangs", "plate size", "gang"], ["gangster", "gang box", "my gang", "chaingangs"]],
  ["layout", ["layout", "buttons", "keys"], ["layouts", "monkeys", "reconfig"]],
  [
    "lettering",
    ["letters", "text colour", "color of the text", "ink color", "text"],
    ["letterhead", "newsletters", "text colours", "colours of text", "the text", "texts"],
  ],
  ["finish", ["finish", "colour", "context colour", "inkjet color"], ["refinish", "finished", "colours"]],
  ["mark", ["station", "location", "room tag"], ["workstation", "marks", "stations"]],
  [
    "notes",
    ["notes", "remark", "special instructions", "telefax notes", "dated notes"],
    ["keynote", "noted"],
  ],
  ["contact.name", ["your name", "attn", "buyer"], ["surname", "named", "date", "country"]],
  ["bill.street", ["street", "address", "order address", "room address"], ["streetcar", "headdress"]],
  ["bill.postcode", ["zip", "post codes", "postal"], ["zipper", "gzip"]],
  ["bill.city", ["city", "town"], ["capacity", "towns"]],
  ["bill.state", ["state", "province", "st"], ["estate", "statement"]],
  [
    "bill.name",
    ["company", "bill to name", "bill", "bill to"],
    ["accompany", "companys", "bill to nickname", "please bill", "bill to dock"],
  ],
] as const)("%s", (place, says, saysNot) => {
  test.each(says)("is what “%s” says", (words) => expect(meaning(words)).toBe(place));
  test.each(saysNot)("is not what “%s” says", (words) => expect(meaning(words)).not.toBe(place));
});

test("the parts of an address belong to the block in which they stand, or of which they speak", () => {
  expect(meaning("city", "ship")).toBe("ship.city");
  expect(meaning("city", "bill")).toBe("bill.city");
  expect(meaning("city", "contact")).toBe("bill.city");
  expect(meaning("billing city", "ship")).toBe("bill.city");
  expect(meaning("name", "ship")).toBe("ship.name");
  expect(meaning("name", "contact")).toBe("contact.name");
  expect(meaning("ship to")).toBe("ship.name");
});

test.each([
  ["button 1 row 2", "row.1.2"],
  ["k 1 line 2", "row.1.2"],
  ["btn no # 3 ln 1", "row.3.1"],
  ["gang 6 l 1", "row.6.1"],
  ["plate row 2", "row.plate.2"],
  ["cover", "row.plate.1"],
  ["plate legend", "row.plate.1"],
  ["button 1", "row.1.1"],
  ["key no 1 text", "row.1.1"],
  ["button 2 leave plain", "plain.2"],
  ["plate blank", "plain.plate"],
  ["plate", undefined],
  ["button 0", undefined],
  ["button 7", undefined],
  ["button 100", undefined],
  ["button 1 row 0", undefined],
  ["button 1 row 3", undefined],
  ["button 1 row 200", undefined],
  ["monkey 1 row 1", undefined],
  ["template row 1", undefined],
  ["plates row 1", undefined],
  ["button 1 arrow 2", undefined],
  ["button 1 texts", undefined],
  ["the button 1", undefined],
])("on a device sheet “%s” is the legend of %s", (words, place) => {
  expect(legendIn(words, "device", makes)).toBe(place);
  if (place !== undefined) expect(meaning(words)).toBe(place);
});

test("a plate sheet has gangs, and no plate of a device", () => {
  expect(legendIn("gang 6 row 2", "plate", makes)).toBe("row.6.2");
  expect(legendIn("gang 7 row 2", "plate", makes)).toBeUndefined();
  expect(legendIn("plate row 1", "plate", makes)).toBeUndefined();
  expect(rowAt("plate", 1, "plate", makes)).toBeUndefined();
  expect(rowAt("plate", 2, "device", makes)).toBe("row.plate.2");
  expect(rowAt("plate", 3, "device", makes)).toBeUndefined();
});

test("a face is left plain where words say so as words", () => {
  expect(["plain", "leave blank", "no legend", "no engraving"].map(isPlain)).toEqual([
    true,
    true,
    true,
    true,
  ]);
  expect(["explain", "plainly", "no legends", "piano text"].map(isPlain)).toEqual([
    false,
    false,
    false,
    false,
  ]);
});
