import { expect, test } from "vitest";
import type { Guess } from "../../../src/reading/own-form/guess.ts";
import type { OutlinedField } from "../../../src/reading/own-form/outline.ts";
import { skeletonOf } from "../../../src/reading/own-form/skeleton.ts";
import { trade } from "../../make/config.ts";

const frame = (x: number, on?: string) => ({
  page: 2,
  box: [x, 100.4, x + 90.6, 115] as const,
  ...(on === undefined ? {} : { on }),
});
const field = (name: string, more: Partial<OutlinedField> = {}): OutlinedField => ({
  name,
  kind: "text",
  values: [],
  frames: [frame(40)],
  ...more,
});
const skeleton = (guesses: readonly Guess[], never: readonly string[] = []): string[] =>
  skeletonOf(
    { name: "shop-1", title: "Shop: sheet", form: "device", blank: "no", guesses, never },
    trade.catalogue,
  ).split("\n");

test("a skeleton says of each field what the form says, what is guessed and why", () => {
  const lines = skeleton([
    {
      field: field("Job", { most: 30 }),
      label: "Job name",
      place: "project",
      why: "its label says “Job name”",
    },
    { field: field("memo", { manyLines: true, frames: [] }), label: "memo" },
    { field: field("f3"), label: "Mounting height" },
    { field: field("f4"), label: "Job", taken: { place: "project", by: "Job" } },
    {
      field: field("body", {
        kind: "choice",
        choices: [
          { value: "1", shown: "Oat" },
          { value: "CHK", shown: "CHK" },
        ],
      }),
      label: "Finish",
      place: "finish",
      why: "its tip says “Finish”",
      values: [
        ["1", "OAT"],
        ["true", undefined],
      ],
    },
    {
      field: field("size", { kind: "tick", frames: [frame(40, "two"), frame(140, "four")] }),
      label: "Size",
      place: "layout",
      why: "x",
    },
    { field: field("b.2", { kind: "tick" }), label: "Two", place: "layout", ticked: "D2", why: "x" },
  ]);
  expect(lines.slice(3)).toEqual([
    "edition: shop-1",
    'title: "Shop: sheet"',
    "form: device   # a guess: its fields fit a device sheet best",
    'blank: "no"',
    "# Every place that such a sheet has to ask for is mapped.",
    "# Mapped to nothing yet: memo, f3, f4.",
    "fields:",
    "  # text; at most 30 characters; page 2 at 40 100 131 115",
    "  # a guess: its label says “Job name”",
    "  Job: { means: project, label: Job name }",
    "  # text; several lines; on no page",
    "  # nothing tells what it means",
    '  memo: { means: "?", label: memo }',
    "  # text; page 2 at 40 100 131 115",
    "  # “Mounting height” tells nothing of what it means",
    '  f3: { means: "?", label: Mounting height }',
    "  # text; page 2 at 40 100 131 115",
    "  # looks like project too, which Job fills",
    '  f4: { means: "?", label: Job }',
    "  # a list; page 2 at 40 100 131 115; choices: Oat (1) | CHK",
    "  # a guess: its tip says “Finish”",
    '  body: { means: finish, label: Finish, values: { "1": OAT, "true": "?" } }',
    "  # 2 buttons; page 2 at 40 100 131 115; choices: two | four",
    "  # a guess: x",
    "  size: { means: layout, label: Size }",
    "  # a box; page 2 at 40 100 131 115",
    "  # a guess: x",
    "  b.2: { means: layout, label: Two, ticked: D2 }",
    "",
  ]);
});

test("legends whose names are numbered alike are said in one line", () => {
  const faces = [1, 2, 3, 4, 5, 6];
  const guesses = faces.flatMap((face) =>
    [1, 2].map(
      (row): Guess => ({
        field: field(`k${face}r${row}`),
        label: `Key ${face}, line ${row}`,
        place: `row.${face}.${row}` as "row.1.1",
        why: "x",
      }),
    ),
  );
  expect(skeleton(guesses).slice(8)).toEqual([
    "# Every field is mapped.",
    "fields:",
    "  # 12 fields, the first: text; page 2 at 40 100 131 115",
    "  # a guess: x",
    '  "k{face}r{row}": { means: "row.{face}.{row}", label: "Key {face}, line {row}" }',
    "",
  ]);
  expect(skeleton(guesses.slice(1), ["the mark"])).toContain(
    "# Such a sheet has to ask for these too, and no field was found: the mark.",
  );
  expect(skeleton(guesses.slice(1)).filter((line) => line.includes("fields, the first"))).toEqual([]);
});
