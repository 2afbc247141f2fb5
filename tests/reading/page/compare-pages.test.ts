import { PDFBool, PDFName, PDFString } from "pdf-lib";
import { describe, expect, test } from "vitest";
import type { Box, Difference } from "../../../src/reading/facts.ts";
import { blankForm } from "../../../src/reading/page/blank-form.ts";
import { comparePages } from "../../../src/reading/page/compare-pages.ts";
import { dictsIn, textOf } from "../../../src/reading/pdf/pdf-value.ts";
import type { Entries } from "../../make/odd-pdf.ts";
import { ourOutline } from "../../make/our-marks.ts";
import { lookOf, type Making, madeForm } from "./made-form.ts";

const text = PDFString.of;
/** Where the n-th field is: in two columns, from above. */
const boxOf = (n: number): Box => {
  const [left, bottom] = [10 + 145 * (n % 2), 170 - 25 * Math.floor(n / 2)];
  return [left, bottom, left + 130, bottom + 20];
};
const names = (count: number): string[] => Array.from({ length: count }, (_, n) => `f${n}`);

/** A form that is filled in, and what is done to it. */
interface Sheet {
  /** What each field's drawing says. */
  readonly says?: Readonly<Record<string, string>>;
  /** What each field holds; what its drawing says, if absent. */
  readonly held?: Readonly<Record<string, string>>;
  readonly change?: (making: Making) => void;
  /** What else the content of the page draws. */
  readonly content?: string;
  /** Where the fields are, moved so far from where they were. */
  readonly moved?: Readonly<Record<string, readonly [x: number, y: number]>>;
  readonly view?: Box;
  /** On which page they are. */
  readonly page?: number;
  readonly redrawn?: boolean;
  /** The blank's pages, by their numbers; its only page, if absent. */
  readonly pages?: readonly 1[];
}

/** What the form prints. */
const frame = "0.5 w 0 0 1 RG 5 100 290 95 re S";
const square = (x: number, y: number, width = 5, height = width) => `0 g ${x} ${y} ${width} ${height} re f `;

function made(
  fields: readonly string[],
  { says = {}, held = {}, change, content = "", moved = {}, view, redrawn }: Sheet,
) {
  const widgets = fields.map((name, n): Entries => {
    const [x, y] = moved[name] ?? [0, 0];
    const [left, bottom, right, top] = boxOf(n);
    return {
      FT: "Tx",
      T: text(name),
      DA: text("/Helv 10 Tf"),
      F: 4,
      Rect: [left + x, bottom + y, right + x, top + y],
    };
  });
  return madeForm(widgets, (making) => {
    const { pdf, page, form, set } = making;
    const all = `${frame} ${content}`;
    set(page, { Contents: pdf.context.register(pdf.context.stream(all, { Length: all.length })) });
    if (view !== undefined) set(page, { MediaBox: [...view] });
    if (redrawn) form.set(PDFName.of("NeedAppearances"), PDFBool.True);
    for (const widget of dictsIn(page, "Annots")) {
      const name = textOf(widget.get(PDFName.of("T")));
      const words = says[name];
      if (words === undefined) continue;
      const look = lookOf(`/Tx BMC q BT /Helv 10 Tf 0 g 2 6 Td (${words}) Tj ET Q EMC`, {
        Type: "XObject",
        BBox: [0, 0, 130, 20],
      });
      set(widget, { AP: { N: pdf.context.register(look) }, V: text(held[name] ?? words) });
    }
    change?.(making);
  });
}

/** In what a sheet differs from its blank, with the size of each picture. */
async function found(fields: readonly string[], sheet: Sheet) {
  const form = await blankForm(await (await made(fields, {})).save({ updateFieldAppearances: false }));
  const pdf = await made(fields, sheet);
  const { held = sheet.says ?? {}, moved = {}, view = [0, 0, 300, 200], page = 1, redrawn = false } = sheet;
  const facts = {
    fields: fields.map((name) => ({ name, kind: "text" as const, values: [held[name] ?? ""] })),
    widgets: fields.map((field, n) => {
      const [[x, y], box] = [moved[field] ?? [0, 0], boxOf(n)];
      const [left, bottom] = [x - view[0], y - view[1]];
      return {
        field,
        page,
        box: [box[0] + left, box[1] + bottom, box[2] + left, box[3] + bottom] as const,
        hidden: false,
      };
    }),
  };
  const differences = await comparePages(
    await pdf.save({ updateFieldAppearances: false }),
    { facts, pages: [{ view, annotations: [] }], pageCount: pdf.getPageCount(), walked: pdf, redrawn },
    { ...form, pages: (sheet.pages ?? [1]).flatMap((number) => form.pages[number - 1] ?? []) },
  );
  return differences?.map(plain);
}
function plain({ picture, ...one }: Difference) {
  // ISO/IEC 15948 §11.2.2: width and height stand in the first chunk.
  const size = picture && [16, 20].map((at) => Buffer.from(picture).readUInt32BE(at));
  return { ...one, ...(size === undefined ? {} : { size }) };
}

const lobby = { f0: "LOBBY" };
const field = { what: "field", page: 1, field: "f0", box: [10, 170, 140, 190], size: [304, 84] };

describe("a page is its form's", () => {
  test.each<[string, Sheet]>([
    ["where it is empty", {}],
    ["where its fields show what they hold", { says: { f0: "LOBBY", f1: "2" } }],
    ["where its viewer is to draw the fields", { says: lobby, redrawn: true }],
    [
      "where a mark of ours lies on it",
      {
        says: lobby,
        change: ({ pdf: { context }, page, set }) => {
          const fields = dictsIn(page, "Annots").flatMap((one) => context.getObjectRef(one) ?? []);
          set(page, { Annots: [...fields, ourOutline(context, 8, 168, 142, 192)] });
        },
      },
    ],
    ["where a program has moved a field by a point and a half", { says: lobby, moved: { f0: [0, 1.5] } }],
  ])("%s", async (_, sheet) => {
    expect(await found(names(3), sheet)).toEqual([]);
  });
});

test.each([false, true])(
  "a field that shows other than it holds is told once, redrawn: %s",
  async (redrawn) => {
    expect(await found(names(2), { says: lobby, held: { f0: "EXIT" }, redrawn })).toEqual([field]);
  },
);

test("a field whose own drawing says other than it holds is told, though its viewer is to draw it anew", async () => {
  const anew = { held: { f0: "EXIT" }, redrawn: true };
  expect(await found(names(2), { says: lobby, ...anew })).toEqual([field]);
  expect(await found(names(2), { says: { f0: "EXIT" }, ...anew })).toEqual([]);
});

test("a place is told from the corner of what the page shows", async () => {
  const view: Box = [-30, -20, 300, 200];
  expect(await found(names(2), { says: lobby, held: { f0: "EXIT" }, view })).toEqual([
    { ...field, box: [40, 190, 170, 210] },
  ]);
  expect(await found(names(2), { moved: { f1: [0, -40] }, view })).toEqual(
    expect.arrayContaining([{ what: "other", page: 1 }]),
  );
  expect(await found(names(4), { moved: { f1: [0, -40] }, view })).toEqual([
    { what: "moved", page: 1, field: "f1", box: [185, 150, 315, 170] },
  ]);
});

describe("what is drawn beside the fields is told", () => {
  test.each<[string, string, object[]]>([
    ["with its place", square(40, 20), [{ what: "more", page: 1, box: [36, 20, 48, 26], size: [72, 60] }]],
    [
      "up to four one by one",
      [10, 60, 110, 160].map((x) => square(x, 10)).join(""),
      [
        [6, 18],
        [60, 66],
        [108, 120],
        [156, 168],
      ].map(([left, right]) => expect.objectContaining({ what: "more", page: 1, box: [left, 8, right, 20] })),
    ],
    [
      "of more than four, all together",
      [10, 60, 110, 160, 210].map((x) => square(x, 10)).join(""),
      [{ what: "more", page: 1, box: [6, 8, 216, 20], size: [456, 64] }],
    ],
    [
      "smaller, if it is large",
      square(18, 20, 150, 46),
      [{ what: "more", page: 1, box: [18, 20, 168, 68], size: [174, 72] }],
    ],
    [
      "not as small, if it is wider than half of the page",
      square(18, 20, 151, 46),
      [{ what: "more", page: 1, box: [18, 20, 174, 68], size: [360, 144] }],
    ],
  ])("%s", async (_, content, differences) => {
    expect(await found(names(2), { content })).toEqual(differences);
  });

  test("if it is the form's own print in another colour", async () => {
    const red: Sheet["change"] = ({ pdf: { context }, page, set }) => {
      const content = frame.replace("0 0 1", "1 0 0");
      set(page, { Contents: context.register(context.stream(content, { Length: content.length })) });
    };
    expect(await found(names(2), { change: red })).toEqual([
      { what: "more", page: 1, box: [0, 98, 300, 200], size: [300, 114] },
    ]);
  });

  test("not by itself, if it lies within twelve pixels of a field that shows something else", async () => {
    const near = (y: number) =>
      found(names(2), { says: lobby, held: { f0: "EXIT" }, content: square(40, y, 4) });
    expect(await near(165)).toEqual([field]);
    expect(await near(160)).toEqual([field, expect.objectContaining({ what: "more" })]);
  });

  test("as a stroke, if it crosses more than three fields, and at the fields, if it crosses fewer", async () => {
    const stroke = async (from: number) =>
      (await found(names(8), { content: square(20, from, 3, 190 - from) }))?.map(
        ({ what, field: name, box }) => [what, name, box],
      );
    expect(await stroke(120)).toEqual([0, 2, 4].map((n) => ["field", `f${n}`, [...boxOf(n)]]));
    expect(await stroke(95)).toEqual([["more", undefined, [18, 110, 24, 170]]]);
  });
});

test("what is drawn is told with many fields only if it touches one of them", async () => {
  const says = Object.fromEntries(names(4).map((name) => [name, "A"]));
  const whats = async (content: string) =>
    (await found(names(4), { says, held: {}, content }))?.map(({ what }) => what);
  expect(await whats(square(40, 20))).toEqual(["field", "field", "field", "field", "more"]);
  expect(await whats(square(40, 140, 4))).toEqual(["more"]);
});

test("fields are told one by one, up to eight, where nothing crosses them", async () => {
  const says = Object.fromEntries(names(10).map((name) => [name, "A"]));
  const all = await found(names(10), { says, held: {} });
  expect(all?.map((one) => one.field)).toEqual(names(8));
});

describe("fields that lie elsewhere", () => {
  const away = (count: number) => Object.fromEntries(names(count).map((name) => [name, [0, -4] as const]));
  test("are told, up to three of ten, and beyond that it is another page", async () => {
    const moved = await found(names(10), { moved: away(3) });
    expect(moved?.map((one) => [one.what, one.field])).toEqual(names(3).map((name) => ["moved", name]));
    expect(await found(names(10), { moved: away(4) })).toEqual([{ what: "other", page: 1 }]);
  });

  test.each([
    [4, 0],
    [0, 4],
    [1, 0],
    [0, 1],
  ])("have to be where the print is: not %d and %d points from it", async (...by) => {
    const all = await found(names(4), { moved: Object.fromEntries(names(4).map((name) => [name, by])) });
    expect(all).toContainEqual(expect.objectContaining({ what: "more", box: expect.anything() }));
  });
});

describe("a page is missing", () => {
  const more =
    (count: number) =>
    ({ pdf }: Making): void => {
      for (let n = 0; n < count; n++) pdf.addPage([300, 200]);
    };
  test("that the file has not", async () => {
    expect(await found(names(2), { page: 2 })).toEqual([
      { what: "less", page: 2 },
      expect.objectContaining({ what: "page", page: 1 }),
    ]);
  });
  test("if its fields lie on one that is another's", async () => {
    expect(await found(names(2), { pages: [1, 1] })).toEqual([{ what: "less", page: 1 }]);
  });
  test("if it lies beyond the first twenty", async () => {
    expect(await found(names(2), { page: 21, change: more(20) })).toContainEqual({ what: "less", page: 21 });
    expect(await found(names(2), { page: 20, change: more(19) })).not.toContainEqual({
      what: "less",
      page: 20,
    });
  });
});

test("a page that PDFium may draw in part is not compared", async () => {
  const large: Sheet["change"] = ({ pdf: { context }, page, set }) => {
    const image = { Type: "XObject", Subtype: "Image", Width: 50_001, Height: 1_000 };
    set(page, { Resources: { XObject: { I: context.register(context.stream("x", image)) } } });
  };
  await expect(found(names(2), { content: "/I Do", change: large })).rejects.toThrow("beyond PDFium's means");
  expect(await found(names(2), { change: large })).toEqual([]);
});

test("a file that PDFium cannot open is not compared", async () => {
  const pdf = await made(names(1), {});
  const form = await blankForm(await pdf.save({ updateFieldAppearances: false }));
  const sheet = { facts: { fields: [], widgets: [] }, pages: [], pageCount: 1, walked: pdf, redrawn: false };
  expect(await comparePages(Buffer.from("no PDF"), sheet, form)).toBeUndefined();
});
