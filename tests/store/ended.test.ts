import { expect, test } from "vitest";
import { type EndedRow, endingOf } from "../../src/store/ended.ts";
import type { Problem } from "../../src/trade/problem.ts";

const moment = "2026-11-10T05:00:00.000Z";
const [before, after] = ["2026-11-10T04:59:59.999Z", "2026-11-10T05:00:00.001Z"];
const open: EndedRow = {
  settled_at: null,
  decided_by: null,
  closed_at: null,
  withdrawn: null,
  cause: "letter",
  isSenders: false,
};
const about = (...files: string[]): Problem => ({
  check: "spelling",
  wording: "misspelt",
  severity: "asks",
  verdict: "confirm",
  facts: {},
  spots: files.map((file) => ({ file })),
});

test.each<[string, Partial<EndedRow>, string]>([
  ["nobody has answered", {}, "open"],
  ["its sender has settled", { settled_at: before }, "yes"],
  ["its sender has settled by the page", { settled_at: before, decided_by: "ines", isSenders: true }, "yes"],
  ["one of our own people has decided", { settled_at: before, decided_by: "Rosa Imhoff" }, "decided"],
  ["is settled at the moment itself", { settled_at: moment }, "open"],
  ["is settled later", { settled_at: after, closed_at: after }, "open"],
  ["was closed before it was settled", { settled_at: after, closed_at: before }, "corrected"],
  ["is closed at the moment itself", { closed_at: moment }, "open"],
  ["was closed by a new sheet", { closed_at: before }, "corrected"],
  ["was closed by one of our own people", { closed_at: before, cause: "person" }, "decided"],
  ["was closed as its sheet was withdrawn", { closed_at: before, withdrawn: '["1/2"]' }, "withdrawn"],
  ["was closed as another sheet was withdrawn", { closed_at: before, withdrawn: '["1/3"]' }, "corrected"],
  ["was closed where nothing was withdrawn", { closed_at: before, withdrawn: "[]" }, "corrected"],
])("a question that %s", (_what, row, ending) => {
  expect(endingOf({ ...open, ...row }, about("1/2"), moment)).toBe(ending);
});

test("a question about several sheets, or about none, is withdrawn with any", () => {
  const row = { ...open, closed_at: before, withdrawn: '["1/3"]' };
  expect(endingOf(row, about("1/2", "1/3"), moment)).toBe("withdrawn");
  expect(endingOf(row, about(), moment)).toBe("withdrawn");
  expect(endingOf({ ...row, withdrawn: null }, about(), moment)).toBe("corrected");
});
