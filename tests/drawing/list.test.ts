import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { buttonsOf, type Layout } from "../../src/catalogue/catalogue.ts";
import { blankSheet } from "../../src/drawing/blank-sheet.ts";
import { fillSheet } from "../../src/drawing/fill-sheet.ts";
import { listCsv } from "../../src/drawing/list/list-csv.ts";
import { printedTexts } from "../../src/drawing/list/list-words.ts";
import { listWorkbook } from "../../src/drawing/list/list-workbook.ts";
import { type ListedSheet, sheetsOfList } from "../../src/drawing/list/sheets-of-list.ts";
import type { ReadField } from "../../src/reading/form.ts";
import { judge } from "../../src/reading/judge.ts";
import { type ListForm, listForm } from "../../src/reading/list/list-form.ts";
import { readList, type StationList } from "../../src/reading/list/read-list.ts";
import { openFile } from "../../src/reading/open-file.ts";
import { readSheet } from "../../src/reading/sheet.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { maker, trade } from "../make/config.ts";
import { alone, csvOf, type Filling, pair, type Rows, rowsOf, usualHead } from "../make/list.ts";

const { catalogue, editions } = maker;
const form = listForm(editions) as ListForm;
const printed = printedTexts(form, catalogue);

async function listOf(rows: Rows | Uint8Array): Promise<StationList> {
  const facts = await openFile(rows instanceof Uint8Array ? rows : Buffer.from(csvOf(rows)));
  if (facts.kind !== "list") throw new Error(`read as ${facts.kind}`);
  return readList(facts, form, printed);
}

/** A sheet as reading would find it with these values in its fields. */
function asRead({ file, edition, values, list }: ListedSheet): Sheet {
  const fields = edition.fields.map(({ name }): ReadField => {
    const value = values[name] ?? "";
    return typeof value === "boolean"
      ? { name, kind: "tick", values: value ? ["Yes"] : [] }
      : { name, kind: "text", values: [value] };
  });
  const sheet = readSheet(fields, edition, { id: "1/2", file }, catalogue);
  return { ...sheet, unread: [...sheet.unread, ...list.unread] };
}

const sheetsIn = async (filling: Filling): Promise<Sheet[]> =>
  sheetsOfList(await listOf(rowsOf(filling)), form, catalogue).map(asRead);

/** What is made of a sheet, and nothing of what is empty. */
function made(sheet: Sheet) {
  const { kind, mark, gangs, finish, lettering, order, project, contact, billTo, shipSame, unread } = sheet;
  const device =
    sheet.kind === "device"
      ? { standing: sheet.standing, position: sheet.position, layouts: sheet.layouts, at: sheet.legendPlace }
      : {};
  const legends = sheet.legends
    .map(({ face, rows, plain }) => ({
      face,
      plain,
      rows: rows.slice(0, rows.findLastIndex((row) => row !== "") + 1),
    }))
    .filter(({ rows, plain }) => plain || rows.length > 0);
  const head = { order, project, contact, billTo, shipSame };
  return JSON.parse(
    JSON.stringify({ kind, mark, gangs, finish, lettering, ...head, ...device, legends, unread }),
  );
}

const devices = catalogue.finishes.filter((finish) => finish.devices);
const words = fc
  .string({ unit: fc.constantFrom(..."ABCXYZ019 =+-/.'\",;&"), maxLength: 7 })
  .map((text) => text.trim());
const anyLayout: fc.Arbitrary<Layout> = fc.constantFrom(...catalogue.layouts);
const anyDevice = anyLayout.chain((layout) =>
  fc.record({
    layout: fc.constant(layout),
    at: fc.constantFrom(...(layout.legend_places ?? [undefined])),
    faces: fc.array(
      fc.record({
        rows: fc.array(words, { minLength: layout.rows, maxLength: layout.rows }),
        plain: fc.boolean(),
      }),
      { minLength: buttonsOf(layout), maxLength: buttonsOf(layout) },
    ),
    finish: fc.constantFrom(...devices),
    lettering: fc.constantFrom(...catalogue.lettering),
    plate: fc.option(
      words.filter((text) => text !== ""),
      { nil: undefined },
    ),
    asCode: fc.boolean(),
  }),
);
const anyStation = fc
  .integer({ min: 1, max: 4 })
  .chain((gangs) => fc.array(anyDevice, { minLength: gangs, maxLength: gangs }));

type Device = typeof anyDevice extends fc.Arbitrary<infer D> ? D : never;

function devicesOf(stations: readonly (readonly Device[])[]): Record<string, string>[] {
  return stations.flatMap((station, s) =>
    station.map(({ layout, at, faces, finish, lettering, plate, asCode }, i) => ({
      "Station mark": `S-${s + 1}`,
      ...(station.length > 1 ? { Position: String(i + 1) } : {}),
      ...(station.length > 1 && i === station.length - 1
        ? { "Gangs of the plate": String(station.length) }
        : {}),
      Layout: asCode ? layout.code : layout.name.toUpperCase(),
      ...(at === undefined ? {} : { "One button: legend sits at": at }),
      Finish: asCode ? finish.code : finish.name,
      Lettering: asCode ? lettering.code : lettering.name,
      ...(plate === undefined ? {} : { "Plate legend, row 1": plate }),
      ...Object.fromEntries(
        faces.flatMap(({ rows, plain }, f) =>
          plain ? [] : rows.map((row, r) => [`Button ${f + 1}, row ${r + 1}`, row]),
        ),
      ),
      "Leave plain": [
        ...faces.flatMap(({ plain }, f) => (plain ? [f + 1] : [])),
        ...(plate === undefined ? ["plate"] : []),
      ].join(", "),
      "Plate: finish": i === 0 && station.length > 1 ? "Coal" : "",
      "Plate: lettering": i === 0 && station.length > 1 ? "Cream" : "",
    })),
  );
}

function ordered(stations: readonly (readonly Device[])[]) {
  const head = {
    order: "SA-118",
    project: "Sedgeholm Archive",
    contact: { name: "Ida Marlowe", email: "ida@sedgeholm.example", phone: "312-555-0117" },
    billTo: {
      name: "Sedgeholm Electric",
      street: "12 Tannery Lane",
      city: "Joliet",
      state: "IL",
      postcode: "60432",
    },
    shipSame: true,
  };
  const legendOf = (face: string, plain: boolean, rows: readonly string[]) => ({
    face,
    plain,
    rows: plain ? [] : rows.slice(0, rows.findLastIndex((row) => row !== "") + 1),
  });
  const some = (legends: ReturnType<typeof legendOf>[]) =>
    legends.filter(({ plain, rows }) => plain || rows.length > 0);
  const plateLegend = (face: string, plate: string | undefined) =>
    legendOf(face, plate === undefined, [plate ?? ""]);
  return stations.flatMap((station, s) => {
    const common = { mark: `S-${s + 1}`, ...head, unread: [] };
    const inPlate = station.length > 1;
    const plate = {
      kind: "plate",
      ...common,
      gangs: station.length,
      finish: "COAL",
      lettering: "CRM",
      legends: some(station.map((device, i) => plateLegend(String(i + 1), device.plate))),
    };
    return [
      ...(inPlate ? [plate] : []),
      ...station.map((device, i) => ({
        kind: "device",
        ...common,
        finish: device.finish.code,
        lettering: device.lettering.code,
        layouts: [device.layout.code],
        standing: inPlate ? "in-plate" : "alone",
        ...(inPlate ? { gangs: station.length, position: i + 1 } : {}),
        ...(device.at === undefined ? {} : { at: device.at }),
        legends: some([
          ...device.faces.map(({ rows, plain }, f) => legendOf(String(f + 1), plain, rows)),
          ...(inPlate ? [] : [plateLegend("plate", device.plate)]),
        ]),
      })),
    ];
  });
}

describe("any order, written as a list and filled in,", () => {
  test("is read from the sheets as it was ordered", async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(anyStation, { minLength: 1, maxLength: 3 }), async (stations) => {
        const read = await sheetsIn({ devices: devicesOf(stations) });
        expect(read.map(made)).toEqual(ordered(stations));
      }),
      { numRuns: Number(process.env["BURIN_RUNS"] ?? 150) },
    );
  });

  test("is the same in the PDFs", async () => {
    const [stations] = fc.sample(fc.array(anyStation, { minLength: 2, maxLength: 2 }), {
      numRuns: 1,
      seed: 7,
    });
    const listed = sheetsOfList(
      await listOf(rowsOf({ devices: devicesOf(stations ?? []) })),
      form,
      catalogue,
    );
    const read: unknown[] = [];
    for (const { file, edition, values } of listed) {
      const bytes = await fillSheet(await blankSheet(edition, catalogue), values);
      const { sheet } = judge(await openFile(bytes), { id: "1/2", file }, maker);
      read.push(sheet === undefined ? file : made(sheet));
    }
    expect(read).toEqual(ordered(stations ?? []));
  });
});

test("each sheet has a name of its own", async () => {
  const list = await listOf(
    rowsOf({
      devices: [...pair, alone, { ...alone, "Station mark": "../A 3" }, { ...alone, "Station mark": "" }],
    }),
  );
  expect(sheetsOfList(list, form, catalogue).map(({ file }) => file)).toEqual([
    "A-1 plate.pdf",
    "A-1 position 1.pdf",
    "A-1 position 2.pdf",
    "A-2.pdf",
    "A 3.pdf",
    "row 21.pdf",
  ]);
});

const told = async (
  devices: readonly Readonly<Record<string, string>>[],
  head: Readonly<Record<string, string>> = usualHead,
) => {
  const list = await listOf(rowsOf({ head, devices }));
  return sheetsOfList(list, form, catalogue).flatMap((sheet) =>
    sheet.list.unread.map(
      ({ place, typed, wants }) =>
        `${sheet.file}: ${place} ${sheet.list.cells[place]} “${typed}” wants ${wants}`,
    ),
  );
};

test.each([
  [
    [{ ...alone, Finish: "Pumise" }],
    "A-2.pdf: finish F17 “Pumise” wants Pumice, Coal, Barley, Plum, Mist, Moss, Honey or Madder",
  ],
  [
    [{ ...alone, Finish: "Raw zinc" }],
    "A-2.pdf: finish F17 “Raw zinc” wants Pumice, Coal, Barley, Plum, Mist, Moss, Honey or Madder",
  ],
  [
    [{ ...alone, "Leave plain": "9" }],
    "A-2.pdf: plain.1 Z17 “9” wants numbers of buttons, such as 2, 5, or plate",
  ],
  [[{ ...alone, Position: "2 of 4" }], "A-2.pdf: position C17 “2 of 4” wants a number such as 2"],
  [
    [{ ...alone, "Plate: finish": "Coal" }],
    "A-2.pdf: finish AC17 “Coal” wants nothing, or what the plate of this station has in its first row",
  ],
  [
    [{ ...alone, "Button 1, row 1": "TWO\nROWS" }],
    "A-2.pdf: row.1.1 I17 “TWO\nROWS” wants one row of the legend in a cell",
  ],
  [
    pair.map((one, i) => ({ ...one, Finish: i === 0 ? "Coal" : "" })),
    "A-1 plate.pdf: finish AC17 “Coal / Pumice” wants one choice under “Plate: finish”, since its devices differ",
  ],
])("what cannot stand on a sheet is told with its cell", async (devices, expected) => {
  expect(await told(devices)).toContain(expected);
});

test.each(["none", "No", "n/a", "-"])("who writes “%s” leaves no face plain", async (none) => {
  expect(await told([{ ...alone, "Plate legend, row 1": "ATTIC", "Leave plain": none }])).toEqual([]);
});

test.each([
  ["Station mark", { text: "2-Jan", odd: "remade" }, ["2-Jan plate.pdf: mark", "2-Jan position 1.pdf: mark"]],
  ["Notes", { text: "1/2/2026", odd: "remade" }, []],
  ["Finish", { text: "", odd: "formula" }, ["A-1 plate.pdf: finish", "A-1 position 1.pdf: finish"]],
  [
    "Gangs of the plate",
    { text: "", odd: "formula" },
    ["A-1 plate.pdf: gangs", "A-1 position 1.pdf: gangs", "A-1 position 2.pdf: gangs"],
  ],
  ["Leave plain", { text: "", odd: "formula" }, ["A-1 position 1.pdf: plain.1"]],
  ["Leave plain", { text: "plate", odd: "struck" }, ["A-1 position 1.pdf: plain.1"]],
  ["Leave plain", { text: "plate" }, []],
] as const)(
  "“%s” with %o is told where it shows otherwise than it is held",
  async (label, said, expected) => {
    const list = await listOf(rowsOf({ devices: pair }));
    const devices = list.devices.map((device, i) => ({
      ...device,
      said: new Map(
        [...device.said].map(([field, own]) => [
          field,
          i === 0 && field.label === label ? { ...said, at: own.at } : own,
        ]),
      ),
    }));
    const sheets = sheetsOfList({ ...list, devices }, form, catalogue);
    const unread = sheets.flatMap(({ file, list: { unread } }) =>
      unread.map(({ place }) => `${file}: ${place}`),
    );
    expect(unread).toEqual(expected);
    const [plate] = sheets.map(asRead);
    expect(plate?.legends.some(({ plain }) => plain)).toBe(label === "Leave plain" && !("odd" in said));
  },
);

test("a slip in the head is told on every sheet", async () => {
  expect(
    await told([alone, { ...alone, "Station mark": "A-3" }], {
      ...usualHead,
      "Ship to: same as bill-to": "maybe",
    }),
  ).toEqual([
    "A-2.pdf: ship.same B12 “maybe” wants yes or no",
    "A-3.pdf: ship.same B12 “maybe” wants yes or no",
  ]);
});

test("text where the list has no place for it, a label twice and a list without a device keep it from being taken", async () => {
  const rows = rowsOf({});
  const faultsOf = async (some: Rows): Promise<readonly unknown[]> => (await listOf(some)).faults;
  expect(
    await faultsOf([...rows.slice(0, 3), ["E-mail", "other@sedgeholm.example"], ...rows.slice(3)]),
  ).toEqual([{ what: "twice", where: "B4", text: "E-mail" }]);
  expect(await faultsOf([...rows.slice(0, 2), ["Deliver to", "the back door"], ...rows.slice(2)])).toEqual([
    { what: "unplaced", where: "A3", text: "Deliver to" },
    { what: "unplaced", where: "B3", text: "the back door" },
  ]);
  // A choice without a label, and one beside a hint, are nothing that we have printed there.
  const strays = [...rows.slice(0, 2), ["", "Coal"], ["Phone", "312-555-0117", "***"], ...rows.slice(4)];
  expect(await faultsOf(strays)).toEqual([
    { what: "unplaced", where: "B3", text: "Coal" },
    { what: "unplaced", where: "C4", text: "***" },
  ]);
  const far = rows.map((row, i) => (i === rows.length - 1 ? [...row, "engrave deep"] : row));
  expect(await faultsOf(far)).toEqual([{ what: "unplaced", where: "AE17", text: "engrave deep" }]);
  // "OFF" stands in the example, and has no meaning beside the rows all the same.
  const off = rows.map((row, i) => (i === rows.length - 1 ? [...row, "OFF"] : row));
  expect(await faultsOf(off)).toEqual([{ what: "unplaced", where: "AE17", text: "OFF" }]);
  const twice = rows.map((row, i) =>
    i > rows.length - 3 ? [...row, i === rows.length - 2 ? "Finish" : ""] : row,
  );
  expect(await faultsOf(twice)).toEqual([{ what: "twice", where: "AE16", text: "Finish" }]);
  expect(await faultsOf(rows.slice(0, -1))).toEqual([{ what: "empty", where: "" }]);
});

test.each([
  ["maker", maker],
  ["trade", trade],
])("the empty lists of the %s have no device and nothing that is not read", async (_, shop) => {
  const own = listForm(shop.editions) as ListForm;
  for (const bytes of [await listWorkbook(own, shop.catalogue), listCsv(own)]) {
    const facts = await openFile(bytes);
    if (facts.kind !== "list") throw new Error(`read as ${facts.kind}`);
    const { faults, devices } = readList(facts, own, printedTexts(own, shop.catalogue));
    expect(faults.map(({ what }) => what)).toEqual(["empty"]);
    expect(devices).toEqual([]);
  }
  expect(await listWorkbook(own, shop.catalogue)).toEqual(await listWorkbook(own, shop.catalogue));
});
