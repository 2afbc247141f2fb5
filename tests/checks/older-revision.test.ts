import { expect, test } from "vitest";
import { sheetReplaced } from "../../src/checks/order/sheet-replaced.ts";
import { subject } from "../../src/checks/sample.ts";
import { catalogue } from "../make/config.ts";
import { deviceAt, plate } from "../make/sample.ts";

/** How it is told that a sheet in a file of one name gives way to another of the other name. */
function told(before: string, after: string): string[] {
  const { order, others } = subject([plate()]);
  const old = deviceAt(2, { file: `${before}.pdf` });
  const now = deviceAt(2, { id: "2/1", file: `${after}.pdf`, finish: "CHK" });
  return [...sheetReplaced.find({ order, others, replaced: [{ old, now, how: "place" }] }, catalogue)].map(
    ({ wording }) => wording,
  );
}

// Common practice, no source.
test.each([
  ["S-104 rev C", "S-104 Rev. B"],
  ["revision 2", "Revision_1"],
  ["S-104 REV-B", "S-104 rev a"],
  ["rev_-C", "rev. B"],
  ["revC", "revB"],
  ["rev 10", "rev 9"],
  ["v3", "V.2"],
  ["S-104 v12", "S-104 v2"],
])("“%s” is newer than “%s”, which takes its place", (before, after) => {
  expect(told(before, after)).toEqual(["older"]);
  expect(told(after, before)).toEqual(["changed"]);
  expect(told(before, before)).toEqual(["changed"]);
});

test.each([
  ["S-104", "S-104 rev A"],
  ["S-104 rev B", "S-104"],
  ["rev C", "rev 2"],
  ["rev 2", "rev A"],
  ["prev C", "prev B"],
  ["rev CD", "rev BC"],
  ["rev 123", "rev 122"],
  ["rev -  C", "rev -  B"],
  ["v123", "v122"],
  ["nav3", "nav2"],
  ["v3b", "v2b"],
  ["v", "a"],
])("nobody knows which of “%s” and “%s” is newer", (before, after) => {
  expect(told(before, after)).toEqual(["changed"]);
});
