import { deflateSync } from "node:zlib";
import { PDFDocument, PDFHexString, PDFName, PDFNumber, PDFString } from "pdf-lib";
import { describe, expect, test } from "vitest";
import type { Box } from "../../../src/reading/facts.ts";
import { areaOf, around, common, inOrder, moved, overlap, standsIn } from "../../../src/reading/pdf/boxes.ts";
import { operatorsIn } from "../../../src/reading/pdf/content-operators.ts";
import { hiddenValues, sameText } from "../../../src/reading/pdf/hidden-values.ts";
import { decodeName, decodeTextString } from "../../../src/reading/pdf/pdf-string.ts";
import { contentOf, dictsIn, listOf, rectangleOf, textOf } from "../../../src/reading/pdf/pdf-value.ts";
import { editions } from "../../make/config.ts";

test("boxes are told by their corners, and meet in more than an edge", () => {
  expect(around([])).toBeUndefined();
  expect(
    around([
      [3, 9],
      [1, 4],
      [2, 20],
    ]),
  ).toEqual([1, 4, 3, 20]);
  expect(inOrder(5, 6, 1, 2)).toEqual([1, 2, 5, 6]);
  expect(moved([1, 2, 3, 4], 10, -1)).toEqual([11, 1, 13, 3]);
  expect(
    [
      [0, 0, 4, 5],
      [4, 0, 0, 5],
      [0, 5, 4, 0],
    ].map((box) => areaOf(box as never)),
  ).toEqual([20, 0, 0]);
  expect(common([0, 0, 10, 10], [5, -5, 20, 5])).toEqual([5, 0, 10, 5]);
  expect(overlap([0, 0, 10, 10], [10, 0, 20, 10])).toBe(false);
  expect(overlap([0, 0, 10, 10], [0, 10, 10, 20])).toBe(false);
  expect(overlap([0, 0, 10, 10], [9, 9, 20, 20])).toBe(true);
});

/** A frame of 100 by 20 points, and a box of 20 by 20. */
const [frame, small]: Box[] = [
  [100, 100, 200, 120],
  [100, 100, 120, 120],
];
test.each<[string, Box, Box | undefined, boolean]>([
  ["all in it", [110, 104, 150, 114], frame, true],
  ["half in it", [80, 104, 120, 114], frame, true],
  ["less than half in it", [79, 104, 119, 114], frame, false],
  ["over all of it", [50, 104, 250, 114], frame, true],
  ["over half of it", [150, 104, 350, 114], frame, true],
  ["over less than half of it", [151, 104, 351, 114], frame, false],
  ["with its middle above it", [110, 112, 150, 128], frame, false],
  ["with its middle below it", [110, 92, 150, 108], frame, false],
  ["beside it", [210, 104, 250, 114], frame, false],
  ["of half a point in width, in it", [150, 104, 150.5, 114], frame, true],
  ["of no width, on its edge", [100, 104, 100, 114], frame, false],
  ["before a small box, and running into it", [60, 104, 110, 114], small, false],
  ["behind a small box, and beginning in it", [110, 104, 160, 114], small, false],
  [
    "before a box twice as long as high, running half over it",
    [50, 104, 120, 114],
    [98, 100, 138, 120],
    true,
  ],
  ["before a shorter one, running half over it", [50, 104, 120, 114], [98, 100, 137, 120], false],
  ["in a small box, and running out of it", [100, 104, 138, 114], small, true],
])("a text %s stands in a frame or not", (_, text, box, stands) => {
  expect(standsIn(text, box as Box)).toBe(stands);
});

// ISO 32000-1:2008 §7.9.2.2 and Annex D.2, ISO 32000-2:2020 §7.9.2.2
test.each([
  ["41 e9", "Aé"],
  ["18 1f 80 9e a0", "˘˜•ž€"],
  ["fe ff 00 41 20 ac", "A€"],
  ["ff fe 41 00 ac 20", "A€"],
  ["ef bb bf e2 82 ac", "€"],
  ["fe ff 00 41 20", "A"],
  ["fe 41", "þA"],
  ["fe ff 00 1b 00 65 00 6e 00 1b 00 41", "A"],
  ["ef bb bf 41", "A"],
])("the bytes %s are the text %j", (hex, text) => {
  expect(decodeTextString(Buffer.from(hex.replaceAll(" ", ""), "hex"))).toBe(text);
});

test("a name is UTF-8, or Latin-1 where it is none", () => {
  expect(decodeName("\u00c3\u00a9")).toBe("é");
  expect(decodeName("\u00e9")).toBe("é");
});

describe("a value in a file", async () => {
  const { context } = await PDFDocument.create();
  const stream = (bytes: Uint8Array, entries = {}) => context.stream(bytes, entries);

  test.each([
    ["a string", PDFString.of("EXIT"), "EXIT"],
    ["a string in hexadecimal", PDFHexString.of("45584954"), "EXIT"],
    ["a name", PDFName.of("EXIT"), "EXIT"],
    ["a number", PDFNumber.of(-2.5), "-2.5"],
    ["a stream", stream(Buffer.from("EXIT")), "EXIT"],
    ["an empty stream", stream(new Uint8Array()), ""],
    ["an empty stream that is said to be packed", stream(new Uint8Array(), { Filter: "FlateDecode" }), ""],
    ["a packed stream", stream(deflateSync("EXIT"), { Filter: "FlateDecode" }), "EXIT"],
    ["a stream of 64 KB", stream(Buffer.alloc(65_536, "x")), "x".repeat(65_536)],
    ["an array", context.obj(["EXIT"]), ""],
    ["nothing", undefined, ""],
  ])("is the text of %s", (_, value, text) => {
    expect(textOf(value)).toBe(text);
  });

  test("is none of a stream that is endless", () => {
    expect(() => textOf(stream(Buffer.alloc(65_537, "x")))).toThrow("endless");
    expect(contentOf(stream(Buffer.alloc(10, "x")), 10)).toBe("x".repeat(10));
    expect(() => contentOf(stream(Buffer.alloc(10, "x")), 9)).toThrow("endless");
    expect(contentOf(stream(new Uint8Array(), { Filter: "Unknown" }), 9)).toBe("");
  });

  test("is a list, a list of one, or dictionaries in a list", () => {
    const [one, two] = [PDFNumber.of(1), PDFNumber.of(2)];
    expect(listOf(context.obj([1, 2]))).toEqual([one, two]);
    expect(listOf(one)).toEqual([one]);
    const dict = context.obj({ All: [{ A: 1 }, 2, { A: 3 }] });
    expect(dictsIn(dict, "All")).toHaveLength(2);
    expect(dictsIn(dict, "None")).toEqual([]);
  });

  test.each([
    [
      [10, 20, 3, 4],
      [3, 4, 10, 20],
    ],
    [[1, 2, 3], undefined],
    [[1, 2, 3, 4, 5], undefined],
    [[1, 2, 3, "A"], undefined],
  ])("is a rectangle: %j", (numbers, box) => {
    expect(rectangleOf(context.obj(numbers))).toEqual(box);
    expect(rectangleOf("1 2 3 4")).toBeUndefined();
  });
});

// ISO 32000-1:2008 §7.3.4 and §8.9.7
test.each<[string, unknown[]]>([
  ["(a\\\r\nb\\\nc\\\rd) Tj", [["Tj", "(abcd"]]],
  ["(\\n\\r\\t\\b\\f\\q\\\\) Tj", [["Tj", "(\n\r\t\b\fq\\"]]],
  ["(\\101\\1012\\7\\777) Tj", [["Tj", "(AA2\u0007\u00ff"]]],
  ["(\\)) Tj", [["Tj", "()"]]],
  ["1.5.2 Tj 3x 4", [["1.5.2"], ["Tj"], ["3x"]]],
  ["true false null d", [["d", "true", "false", "null"]]],
  ["<4f\n4B> Tj", [["Tj", "(OK"]]],
  ["ID xEI EIx\nEI", [["ID"], ["EI"]]],
  ["ID x", [["ID"]]],
  ["%a\nq", [["q"]]],
  ["/A#20B/C gs", [["gs", "/A#20B", "/C"]]],
])("the operators of %j", (content, operators) => {
  expect([...operatorsIn(content)].map(({ name, operands }) => [name, ...operands])).toEqual(operators);
});

test.each([
  ["EXIT", "E X I T", true],
  ["EXIT", "EXIT?", true],
  ["EXIT", "EX1T", false],
  ["“A” – ‘B’", "\"A\" - 'B'", true],
  ["Łodz", "odz", true],
  ["2", "2.00", true],
  ["302.8", "302,80", true],
  ["20", "2", false],
  ["2.05", "2.5", false],
  ["(312) 555-0142", "312.555.0142", true],
  ["1-2", "12", true],
  ["A1-2", "A12", false],
  ["", "0", false],
])("%j and %j show the same: %s", (one, other, same) => {
  expect(sameText(one, other)).toBe(same);
});

describe("a value that its page does not show", () => {
  const edition = editions.find(({ name }) => name === "device-26c");
  const nameOf = (place: string): string =>
    edition?.fields.find((field) => field.place === place)?.name ?? place;
  const doubts = (
    place: string,
    value: string,
    widgets: readonly { shown?: string; hidden?: boolean }[],
    more: object = {},
  ): unknown[] => {
    const name = nameOf(place);
    const fields = [{ name, kind: "text", values: [value], ...more }];
    const facts = {
      fields,
      pages: 1,
      widgets: widgets.map((widget) => ({ field: name, hidden: false, ...widget })),
    };
    return edition === undefined ? [] : hiddenValues(facts as never, edition);
  };
  test.each<[string, unknown[], unknown[]]>([
    ["shows", doubts("project", "Larkspur", [{ shown: "Larkspur" }]), []],
    ["is told by nobody", doubts("project", "Larkspur", [{}]), []],
    [
      "shows otherwise",
      doubts("project", "Larkspur", [{ shown: "Lark" }]),
      [{ what: "value-hidden", place: "project", text: "Larkspur", shown: "Lark" }],
    ],
    [
      "shows as nothing",
      doubts("project", "Larkspur", [{ shown: " " }]),
      [{ what: "value-hidden", place: "project", text: "Larkspur" }],
    ],
    [
      "shows at one place of two",
      doubts("project", "Larkspur", [{ shown: "Larkspur" }, { shown: "Lark" }]),
      [{ what: "value-hidden", place: "project", text: "Larkspur", shown: "Lark" }],
    ],
    [
      "is hidden",
      doubts("project", "Larkspur", [{ hidden: true }]),
      [{ what: "value-hidden", place: "project", text: "Larkspur" }],
    ],
    ["is empty, and hidden", doubts("project", "", [{ hidden: true }]), []],
    [
      "is empty, and shows something",
      doubts("project", "", [{ shown: "Lark" }]),
      [{ what: "value-hidden", place: "project", shown: "Lark" }],
    ],
    ["is notes, of which the first lines show", doubts("notes", "One\nTwo", [{ shown: "One" }]), []],
    [
      "is notes, of which the last lines show",
      doubts("notes", "One\nTwo", [{ shown: "Two" }]),
      [{ what: "value-hidden", place: "notes", text: "One\nTwo", shown: "Two" }],
    ],
    [
      "is notes, of which nothing shows",
      doubts("notes", "One\nTwo", [{ shown: "" }]),
      [{ what: "value-hidden", place: "notes", text: "One\nTwo" }],
    ],
    ["is not sure", doubts("project", "Larkspur", [{ shown: "Lark" }], { unsure: {} }), []],
    ["lost its fields", doubts("project", "Larkspur", []), [{ what: "flattened" }]],
    ["lost its fields, and is empty", doubts("project", "", []), []],
  ])("%s", (_, found, expected) => {
    expect(found).toEqual(expected);
  });
});
