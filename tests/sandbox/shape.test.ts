import { describe, expect, test } from "vitest";
import type { Answers, Op } from "../../src/sandbox/message.ts";
import { shapes } from "../../src/sandbox/shape.ts";

const bytes = new Uint8Array([1, 2]);
const box = [1, 2, 3, 4] as const;
const part = { name: "a.pdf", bytes, looks: false };
const left = { name: "b.pdf", kind: "too-large" } as const;
const words = { text: "Hello", unsure: true } as const;

/** Answers with all that each may hold. */
const whole: readonly { readonly [O in Op]: readonly [O, string, Answers[O]] }[Op][] = [
  [
    "file",
    "of a PDF",
    {
      kind: "pdf",
      fields: [{ name: "a", kind: "text", values: ["LOBBY"], unsure: { one: "A", other: "B" } }],
      widgets: [{ field: "a", page: 1, box, shown: "LOBBY", hidden: false }],
      pageCount: 1,
      pages: [
        {
          width: 1,
          height: 2,
          text: "x",
          drawn: true,
          ours: true,
          marks: [{ what: "free-text", box, text: "x" }],
        },
      ],
      differences: [{ what: "more", page: 1, box, field: "a", text: "x", picture: bytes }],
      dynamic: false,
      portfolio: false,
      recovered: false,
      together: 2,
      attached: { files: [part], left: [left] },
    },
  ],
  ["file", "of another kind", { kind: "damaged-pdf" }],
  [
    "file",
    "of a list",
    {
      kind: "list",
      text: words,
      tables: [{ name: "Sheet1", rows: [[{ column: 1, row: 2, text: "x", odd: "formula" }]] }],
      more: [{ what: "hidden", where: "A1", text: "x" }],
    },
  ],
  ["file", "of a text", { kind: "text", words }],
  ["file", "of an archive", { kind: "archive", files: [part], left: [left], words }],
  [
    "letter",
    "of a letter",
    {
      from: "ines@brightwire.example",
      fromName: "Ines",
      replyTo: "site@brightwire.example",
      subject: "Stations",
      date: new Date(0),
      messageId: "<1@b.example>",
      inReplyTo: "<2@b.example>",
      references: ["<3@b.example>"],
      text: "Hello",
      textUnsure: true,
      otherTexts: ["Bye"],
      parts: [part],
      links: ["https://brightwire.example/a.pdf"],
    },
  ],
  ["sender", "of a sender", "pass"],
  ["mark", "of a marked copy", { copy: bytes, mended: true }],
  ["page", "of a picture", { pages: 1, png: bytes }],
];

/** Things that an answer may only say by saying yes. */
const onlyTrue = new Set(["drawn", "ours", "unsure", "textUnsure", "mended"]);

function isPlain(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && Object.getPrototypeOf(value) === Object.prototype;
}

/** The same value with one thing in it that is of another type, or more than there may be; and where that is. */
function* spoilt(value: unknown, at = ""): Generator<[string, unknown]> {
  yield [`${at} is of another type`, typeof value === "string" ? 7 : "x"];
  if (value === true && onlyTrue.has(at.split(".").at(-1) ?? "")) yield [`${at} says no`, false];
  if (Array.isArray(value)) {
    for (const [i, one] of value.entries())
      for (const [where, other] of spoilt(one, `${at}.${i}`)) yield [where, value.with(i, other)];
    return;
  }
  if (!isPlain(value)) return;
  yield [`${at} holds a thing that nobody knows`, { ...value, nobody: 1 }];
  for (const [key, one] of Object.entries(value)) {
    for (const [where, other] of spoilt(one, `${at}.${key}`)) yield [where, { ...value, [key]: other }];
  }
}

const takes = (op: Op, answer: unknown): boolean => shapes[op].safeParse(answer).success;

describe.each(whole)("the answer to %s, %s,", (op, _, answer) => {
  test("is taken as it is", () => {
    expect(shapes[op].parse(answer)).toEqual(answer);
  });
  test.each([...spoilt(answer)])("is not taken where%s", (_, other) => {
    expect(takes(op, other)).toBe(false);
  });
});

test("pictures of differences have 200,000 bytes at most", () => {
  const facts = whole[0]?.[2] as object;
  const picture = (size: number) => ({
    ...facts,
    differences: [{ what: "more", page: 1, picture: new Uint8Array(size) }],
  });
  expect([200_000, 200_001].map((size) => takes("file", picture(size)))).toEqual([true, false]);
});

test("a width that is no number is one that a damaged page has", () => {
  expect(takes("page", { pages: Number.NaN })).toBe(true);
});
