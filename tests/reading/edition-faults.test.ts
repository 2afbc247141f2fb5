import { describe, expect, test } from "vitest";
import { readEditions } from "../../src/reading/editions.ts";
import { faultLine } from "../../src/yaml/yaml.ts";
import { catalogue } from "../make/config.ts";

/** A device edition with some fields, one a line from line 4 on; `head` stands in its first line. */
function edition(name: string, fields: readonly string[], head = ""): { file: string; text: string } {
  const text = `edition: ${name}\ntitle: Form ${name}${head}\nform: device\nfields:\n  ${fields.join("\n  ")}\n`;
  return { file: `${name}.yaml`, text };
}

function faultsOf(...texts: readonly { file: string; text: string }[]): string[] {
  return readEditions(texts, catalogue).faults.map(faultLine);
}

const sound = "PO: { means: order, label: PO }";

describe("one field", () => {
  test.each([
    [
      "a finish",
      "F: { means: finish, label: F, values: { Pink: PNK, White: CHK } }",
      /:5:43 fields\.F\.values\.Pink: “Finish” cannot be “PNK”; there are CHK, /,
    ],
    [
      "a layout",
      "L: { means: layout, label: L, ticked: D5 }",
      /fields\.L\.ticked: “Layout” cannot be “D5”; there are D1, D2, D4, D6$/,
    ],
    [
      "a lettering",
      "C: { means: lettering, label: C, ticked: Gold }",
      /fields\.C\.ticked: “Lettering” cannot be “Gold”/,
    ],
    [
      "a legend place",
      "P: { means: legend-place, label: P, values: { low: bottom } }",
      /values\.low: .* there are top, middle$/,
    ],
    [
      "a standing",
      "S: { means: standing, label: S, values: { out: outside } }",
      /values\.out: .* there are alone, in-plate$/,
    ],
    ["a number", "G: { means: gangs, label: G, values: { two: two } }", /values\.two: “two” is no number$/],
    ["a position", "P: { means: position, label: P, ticked: left }", /ticked: “left” is no position$/],
    ["what is typed freely", "J: { means: project, label: J, values: { a: b } }", /nothing reads this/],
    [
      "a place",
      "J: { means: colour, label: J }",
      /fields\.J\.means: not a place on a sheet; `burin settings --places` lists them$/,
    ],
    ["a row that is none", "J: { means: row.0.1, label: J }", /not a place on a sheet/],
    [
      "a hole that means lacks",
      '"K{face}{row}": { means: "row.1.{row}", label: K }',
      /fields\.K\{face\}\{row\}: \{face\} stands here, but not in what the field means$/,
    ],
    [
      "a hole that the name lacks",
      '"K{face}": { means: "row.{face}.{row}", label: K }',
      /means: \{row\} stands here, but not in the field's name$/,
    ],
    [
      "a hole that the label alone has",
      'N: { means: notes, label: "Notes {face}" }',
      /fields\.N\.label: \{face\} stands here/,
    ],
    [
      "a hole written otherwise",
      '"K{Face}": { means: plain.1, label: K }',
      /\{Face\} is no hole; there are \{face\} and \{row\}$/,
    ],
  ])("%s", (_, field, fault) => {
    expect(faultsOf(edition("a", [field]))).toEqual([expect.stringMatching(fault)]);
  });

  test.each([
    "F: { means: finish, label: F, values: { White: chk, Grey: Slate } }",
    "G: { means: gangs, label: G, values: { two: '2' } }",
    "P: { means: position, label: P, values: { left: 1 of 2 } }",
    "S: { means: ship.same, label: S, values: { Ja: 'yes', Nein: 'no' } }",
    '"K{face}": { means: "row.{face}.1", label: Key }',
    '"Plate {row}": { means: "row.plate.{row}", label: "Plate {row}" }',
    '"Show{face}": { means: nothing, label: "Preview {face}" }',
  ])("is right: %s", (field) => {
    expect(faultsOf(edition("a", [field]))).toEqual([]);
  });
});

test("a place that this kind of sheet does not have", () => {
  const { file, text } = edition("a", [
    "S: { means: standing, label: S }",
    "P: { means: row.plate.1, label: P }",
  ]);
  expect(faultsOf({ file, text: text.replace("form: device", "form: plate") })).toEqual([
    "a.yaml:5:8 fields.S.means: a plate sheet has no such place",
    "a.yaml:6:8 fields.P.means: a plate sheet has no such place",
  ]);
});

test("two fields for one place, but for boxes that make one choice", () => {
  const boxes = [
    "One: { means: layout, label: '1', ticked: D1 }",
    "Two: { means: layout, label: '2', ticked: D2 }",
  ];
  expect(faultsOf(edition("a", [sound, ...boxes]))).toEqual([]);
  expect(faultsOf(edition("a", [sound, ...boxes, "Six: { means: layout, label: '6', ticked: d2 }"]))).toEqual(
    ["a.yaml:8:3 fields.Six: Two fills layout with D2 too"],
  );
  expect(faultsOf(edition("a", [...boxes, "Any: { means: layout, label: L }"]))).toEqual([
    "a.yaml:5:3 fields.One: Any fills layout too, and is no box",
    "a.yaml:6:3 fields.Two: Any fills layout too, and is no box",
  ]);
  expect(faultsOf(edition("a", [sound, "Job: { means: order, label: Job }"]))).toEqual([
    "a.yaml:6:3 fields.Job: PO fills order too",
  ]);
  expect(
    faultsOf(
      edition("a", ['"K{face}": { means: "row.{face}.1", label: K }', "Top: { means: row.3.1, label: T }"]),
    ),
  ).toEqual(["a.yaml:6:3 fields.Top: K{face} fills row.3.1 too"]);
});

test("two fields of one name", () => {
  const fields = ['"K{face}": { means: "row.{face}.1", label: K }', "K2: { means: notes, label: N }"];
  expect(faultsOf(edition("a", fields))).toEqual(["a.yaml:6:3 fields.K2: K{face} makes the field K2 too"]);
});

test("a fault of one kind hides none of another", () => {
  const fields = [
    "F: { means: finish, label: F, ticked: PNK }",
    "J: { means: project, label: 4 }",
    "N: { menas: notes, label: N }",
  ];
  expect(faultsOf(edition("a", fields, "\ncolour: red"))).toEqual([
    expect.stringMatching(/^a\.yaml:3:1 colour: unknown key$/),
    expect.stringMatching(/^a\.yaml:6:33 fields\.F\.ticked: “Finish” cannot be “PNK”/),
    expect.stringMatching(/^a\.yaml:7:24 fields\.J\.label: /),
    expect.stringMatching(/^a\.yaml:8:3 fields\.N\.means: /),
    expect.stringMatching(/^a\.yaml:8:8 fields\.N\.menas: unknown key$/),
  ]);
});

test.each([
  ["is no edition", "nowhere", "a.yaml:3:1 replaced_by: no edition is named nowhere; there are a, b"],
  ["is itself", "a", "a.yaml:3:1 replaced_by: leads back to this edition, so that none is in use"],
  ["is the other kind of sheet", "b", "a.yaml:3:1 replaced_by: b is a plate sheet"],
])("replaced_by that %s", (_, by, fault) => {
  const b = edition("b", ["Q: { means: order, label: Q }"]);
  expect(
    faultsOf(edition("a", [sound], `\nreplaced_by: ${by}`), {
      ...b,
      text: b.text.replace("device", "plate"),
    }),
  ).toEqual([fault]);
});

test("a file that cannot be read is not said to be missing", () => {
  const broken = { file: "b.yaml", text: "edition: b\nform: [device\n" };
  expect(faultsOf(edition("a", [sound], "\nreplaced_by: b"), broken)).toEqual([
    expect.stringMatching(/^b\.yaml:\d+:\d+: /),
  ]);
});

test("an edition without a field", () => {
  const { file, text } = edition("a", [""]);
  expect(faultsOf({ file, text: text.replace(/fields:[^]*/, "fields: {}\n") })).toEqual([
    "a.yaml:4:1 fields: needs a field",
  ]);
});

test("editions that replace each other in a circle, and one that leads into it", () => {
  const circle = [
    edition("a", ["A: { means: order, label: A }"], "\nreplaced_by: b"),
    edition("b", ["B: { means: order, label: B }"], "\nreplaced_by: c"),
    edition("c", ["C: { means: order, label: C }"], "\nreplaced_by: b"),
  ];
  expect(faultsOf(...circle)).toEqual([
    "b.yaml:3:1 replaced_by: leads back to this edition, so that none is in use",
    "c.yaml:3:1 replaced_by: leads back to this edition, so that none is in use",
  ]);
});

test("two editions of one name, however it is written, and two that nothing tells apart", () => {
  const [one, other] = [edition("form-1", [sound]), edition("Form 1", ["Q: { means: order, label: Q }"])];
  expect(faultsOf(one, other)).toEqual([
    "Form 1.yaml:1:1 edition: form-1.yaml is the edition form-1 already",
  ]);
  expect(faultsOf(one, edition("b", [sound]))).toEqual([
    "b.yaml:4:1 fields: cannot be told from form-1: the same fields, and none for the edition",
  ]);
  const says = "E: { means: edition, label: E }";
  expect(faultsOf(edition("a", [sound, says]), edition("b", [sound, says]))).toEqual([]);
});

test("a day until which nothing replaces the edition, or that is none", () => {
  expect(faultsOf(edition("a", [sound], "\naccepted_until: 2026-12-31"))).toEqual([
    "a.yaml:3:1 accepted_until: needs replaced_by: the edition to use then",
  ]);
  const b = edition("b", ["Q: { means: order, label: Q }"]);
  expect(faultsOf(edition("a", [sound], "\nreplaced_by: b\naccepted_until: 2026-02-30"), b)).toEqual([
    "a.yaml:4:1 accepted_until: a day is written as 2026-12-31",
  ]);
});

test("without a catalogue the form of editions is looked at, and what they say of each other", () => {
  const texts = [
    edition("a", ["F: { means: finish, label: F, ticked: PNK }"], "\ncolour: red\nreplaced_by: x"),
  ];
  const { editions, faults } = readEditions(texts, undefined);
  expect(editions).toEqual([]);
  expect(faults.map(faultLine)).toEqual([
    "a.yaml:3:1 colour: unknown key",
    "a.yaml:4:1 replaced_by: no edition is named x; there are a",
  ]);
});

test("good editions are read although others are faulty", () => {
  const { editions, faults } = readEditions(
    [edition("a", [sound], "\ncolour: red"), edition("b", [sound])],
    catalogue,
  );
  expect(editions.map(({ edition }) => edition.name)).toEqual(["b"]);
  expect(faults).toHaveLength(1);
});
