import { PDFString } from "pdf-lib";
import { expect, test } from "vitest";
import type { FormField } from "../../../src/reading/form.ts";
import { blankOf, looksOf, prepareForms, printFor } from "../../../src/reading/page/known-forms.ts";
import { editions } from "../../make/config.ts";
import { madeForm } from "./made-form.ts";

const [edition, other] = editions;
if (edition === undefined || other === undefined) throw new Error("no editions");
const fields = edition.fields.map(({ name }): FormField => ({ name, kind: "text", values: [] }));
const saved = async (...form: Parameters<typeof madeForm>): Promise<Uint8Array> =>
  (await madeForm(...form)).save({ updateFieldAppearances: false });
const blank = await saved([]);
const known = { editions, blanks: new Map([[edition.name, blank]]) };

test("the blank form of a sheet is that of its edition, rendered once", async () => {
  const form = blankOf(fields, known);
  expect((await form)?.pages.map(({ box }) => box)).toEqual([[0, 0, 300, 200]]);
  expect(blankOf(fields, { ...known, blanks: new Map([[edition.name, Buffer.from(blank)]]) })).toBe(form);
});

test("the print of a sheet's blank form is that of its edition", async () => {
  await prepareForms(known);
  expect((await printFor(fields, known))?.pages).toMatchObject([{ view: [0, 0, 300, 200] }]);
});

test("a sheet on a form of which nobody has a blank has none", async () => {
  for (const [own, forms] of [
    [fields, { editions, blanks: new Map([[other.name, blank]]) }],
    [[], known],
    [fields, { ...known, editions: [] }],
  ] as const)
    expect([blankOf(own, forms), await printFor(own, forms)]).toEqual([undefined, undefined]);
});

test("a blank form that cannot be opened is no form", async () => {
  const broken = { editions, blanks: new Map([[edition.name, Buffer.from("no PDF")]]) };
  await expect(prepareForms(broken)).rejects.toThrow();
});

test("two forms look the same if all of their pixels and fields are", async () => {
  const row = { FT: "Tx", T: PDFString.of("row") };
  const looks = await looksOf(await saved([row]));
  expect(looks).toMatch(/^[0-9a-f]{32}$/);
  expect(await looksOf(await saved([row]))).toBe(looks);
  const others = [
    saved([{ ...row, T: PDFString.of("notes") }]),
    saved([{ ...row, Rect: [10, 21, 160, 60] }]),
    saved([row], ({ pdf: { context }, page, set }) =>
      set(page, { Contents: context.register(context.stream("0 0 9 9 re f")) }),
    ),
  ];
  const all = [looks, ...(await Promise.all(others.map(async (one) => looksOf(await one))))];
  expect(new Set(all).size).toBe(4);
});
