import { PDFString } from "pdf-lib";
import { expect, test } from "vitest";
import { areaOn, blankForm, boxOn, pixelsOf } from "../../../src/reading/page/blank-form.ts";
import type { Picture } from "../../../src/reading/page/picture.ts";
import { oddForm } from "../../make/odd-pdf.ts";

const text = (words: string): PDFString => PDFString.of(words);

test("a blank form tells of each field what kind it is, what it stands for and how it shows", async () => {
  const bytes = await oddForm(({ widget, looks, context }) => [
    widget({ FT: "Tx", T: text("row"), DA: text("/Helv 9 Tf") }),
    widget({ FT: "Tx", Ff: 1 << 12, T: text("notes"), DA: text("/Helv 0 Tf") }),
    widget({ FT: "Btn", T: text("box"), ...looks("Gr#C3#BCn", "Off") }),
    widget({ FT: "Btn", Ff: 1 << 15, T: text("round"), ...looks("in", "Off") }),
    widget({
      FT: "Ch",
      Ff: 1 << 17,
      T: text("list"),
      Opt: [context.obj([text("OAT"), text("Oatmeal")]), text("CHK")],
    }),
    widget({ FT: "Btn", Ff: 1 << 16, T: text("push") }),
    widget({ FT: "Sig", T: text("sign") }),
    widget({ FT: "Tx" }),
  ]);
  const { pages, held } = await blankForm(bytes);
  const [page, ...others] = pages;
  expect([page?.box, others]).toEqual([[0, 0, 300, 300], []]);
  const told = page?.widgets.map(({ field, kind, manyLines, size, state, shows }) => ({
    field,
    kind,
    manyLines,
    size,
    state,
    shows: [...shows],
  }));
  expect(told).toEqual([
    { field: "row", kind: "text", manyLines: false, size: 9, shows: [] },
    { field: "notes", kind: "text", manyLines: true, size: 0, shows: [] },
    { field: "box", kind: "tick", manyLines: false, size: 0, state: "Grün", shows: [] },
    { field: "round", kind: "tick", manyLines: false, size: 0, state: "in", shows: [] },
    {
      field: "list",
      kind: "choice",
      manyLines: false,
      size: 0,
      shows: [
        ["OAT", "Oatmeal"],
        ["CHK", "CHK"],
      ],
    },
  ]);
  expect([...held.widgets.keys()]).toEqual(["row", "notes", "box", "round", "list", "push", "sign", ""]);
  for (const { empty, ticked } of [page?.looks, page?.redrawn].flatMap((one) => one ?? []))
    expect([empty, ticked].map(({ width, height }) => [width, height])).toEqual([
      [600, 600],
      [600, 600],
    ]);
});

test("a blank form is seen empty, and with every box ticked", async () => {
  const bytes = await oddForm(({ widget, context }) => {
    const [on, off] = ["0 0 9 9 re f", ""].map((content) =>
      context.register(context.stream(content, { Type: "XObject", Subtype: "Form", BBox: [0, 0, 9, 9] })),
    );
    if (on === undefined || off === undefined) throw new Error("no looks");
    return [
      { Off: off, Yes: on },
      { No: on, Off: off },
    ].map((N, i) => widget({ FT: "Btn", T: text(`box ${i}`), AS: "Off", AP: { N } }));
  });
  const [page] = (await blankForm(bytes)).pages;
  if (page === undefined) throw new Error("no page");
  const isInked = ({ pixels }: Picture) =>
    page.widgets.map(({ box }) => {
      const { left, top } = areaOn(page, box);
      return pixels[(top + 9) * 600 + left + 9] !== pixels[0];
    });
  expect([isInked(page.looks.empty), isInked(page.looks.ticked)]).toEqual([
    [false, false],
    [true, true],
  ]);
});

test("a blank form is seen with the frames that it draws itself, and with nothing that its fields hold", async () => {
  const bytes = await oddForm(({ widget, field, context }) => {
    const look = (content: string) =>
      context.register(context.stream(content, { Type: "XObject", Subtype: "Form", BBox: [0, 0, 90, 20] }));
    const [frame, inked] = [look("0 0 90 3 re f"), look("0 0 90 3 re 0 10 90 10 re f")];
    const row = { FT: "Tx", DA: text("/Helv 9 Tf") };
    const kids = [1, 2].map(() => widget({ AP: { N: inked } }));
    return [
      widget({ FT: "Btn", T: text("box"), AS: "Off", AP: { N: { Off: frame, Yes: inked } } }),
      widget({ FT: "Btn", T: text("ticked"), V: "Yes", AS: "Yes", AP: { N: { Off: frame, Yes: inked } } }),
      widget({ ...row, T: text("empty"), AP: { N: frame } }),
      widget({ ...row, T: text("filled"), V: text("LOBBY"), AP: { N: inked } }),
      field({ ...row, T: text("twice"), V: text("LOBBY") }, kids),
    ];
  });
  const [page] = (await blankForm(bytes)).pages;
  if (page === undefined) throw new Error("no page");
  const isDark = ({ pixels }: Picture, up: number) =>
    page.widgets.map(({ box }) => {
      const { left, bottom } = areaOn(page, box);
      return pixels[(bottom - up) * 600 + left + 20] !== pixels[0];
    });
  expect(page.widgets.map(({ field }) => field)).toEqual([
    "twice",
    "twice",
    "box",
    "ticked",
    "empty",
    "filled",
  ]);
  expect(isDark(page.framed.empty, 3)).toEqual([false, false, true, true, true, false]);
  expect(isDark(page.framed.empty, 30)).toEqual(Array(6).fill(false));
  expect(isDark(page.framed.ticked, 30).slice(2, 4)).toEqual([true, true]);
});

test("a page has two pixels a point, and an area of it is where its box is, edges included", () => {
  const page = { box: [10, 20, 110, 220] } as const;
  expect(pixelsOf(page.box)).toEqual({ width: 200, height: 400 });
  expect(areaOn(page, [12.2, 30.2, 20.2, 40.2])).toEqual({ left: 4, right: 21, top: 359, bottom: 380 });
  expect(boxOn(page, { left: 4, right: 22, top: 360, bottom: 380 })).toEqual([12, 30, 21, 40]);
});
