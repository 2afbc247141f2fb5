import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import type { SheetData } from "write-excel-file/universal";
import type { Catalogue } from "../../catalogue/catalogue.ts";
import { requiredPlaces } from "../../checks/required.ts";
import { lettersOf, listTitle } from "../../reading/list/list-facts.ts";
import type { ListForm } from "../../reading/list/list-form.ts";
import type { Place } from "../../trade/place.ts";
import { palette } from "../blank/canvas.ts";
import { roomOf } from "../blank/choices.ts";
import {
  exampleRows,
  exampleTitle,
  helpHeadings,
  helpLines,
  hintOf,
  roomLines,
  wordsFor,
} from "./list-words.ts";

/** The earliest time that an archive can hold. */
const noTime = "1980-01-01T00:00:00";

/** Rows that are drawn, and the last row that offers choices. */
const drawnRows = 60;
const lastRow = 1000;

const help = "How to fill in";

interface Sheet {
  readonly sheet: string;
  readonly data: SheetData;
  readonly columns: { readonly width: number }[];
  readonly stickyRowsCount?: number;
  readonly stickyColumnsCount?: number;
  readonly orientation: "landscape";
}

/**
 * The station list: an Excel workbook, empty but for what is known of its head. The same catalogue and editions always
 * make the same bytes.
 */
export async function listWorkbook(
  form: ListForm,
  catalogue: Catalogue,
  known: ReadonlyMap<Place, string> = new Map(),
): Promise<Uint8Array> {
  const explained = helpSheet(form, catalogue);
  const { default: writeWorkbook } = await import("write-excel-file/universal");
  const written = writeWorkbook([orderSheet(form, catalogue, known), stationsSheet(form), explained.sheet], {
    fontFamily: "Arial",
    fontSize: 10,
  });
  const parts = unzipSync(new Uint8Array(await (await written.toBlob()).arrayBuffer()));
  const change = (sheet: number, how: (xml: string) => string): void => {
    const name = `xl/worksheets/sheet${sheet}.xml`;
    parts[name] = strToU8(onePageWide(how(strFromU8(parts[name] ?? new Uint8Array()))));
  };
  const choice = (place: string, range: string): string[] => {
    const from = explained.choices.get(place);
    return from === undefined ? [] : [choiceOf(range, from)];
  };
  change(1, (xml) =>
    offering(
      xml,
      form.head.flatMap((field, i) => choice(keyOf(field), `B${i + 2}`)),
    ),
  );
  change(2, (xml) =>
    typedAsText(
      offering(
        xml,
        form.columns.flatMap((field, i) => {
          const range = `${lettersOf(i)}2:${lettersOf(i)}${lastRow}`;
          const most = roomOf(field.place, "device", catalogue);
          const isLegend = field.on === "device" && most !== undefined;
          return isLegend ? [lengthOf(range, most)] : choice(keyOf(field), range);
        }),
      ),
    ),
  );
  change(3, (xml) => xml);
  // The library puts the time of the clock on every file within.
  return zipSync(parts, { mtime: noTime });
}

const around = { borderStyle: "thin", borderColor: palette.line } as const;
const heading = { ...around, fontWeight: "bold", backgroundColor: palette.face, wrap: true } as const;
const middle = { alignVertical: "center" } as const;
const entry = { ...around, ...middle, type: String, format: "@" } as const;
const remark = { ...middle, textColor: palette.quiet, wrap: true } as const;

function valueAt(value?: string): SheetData[number][number] {
  return value === undefined ? { ...entry } : { ...entry, value };
}

function orderSheet({ head }: ListForm, catalogue: Catalogue, known: ReadonlyMap<Place, string>): Sheet {
  const required: readonly Place[] = requiredPlaces("device");
  return {
    sheet: "Order",
    orientation: "landscape",
    columns: [{ width: 30 }, { width: 40 }, { width: 62 }],
    stickyRowsCount: 1,
    data: [
      [
        { ...heading, ...middle, value: listTitle, fontSize: 14, height: 26 },
        { ...heading, ...middle, value: catalogue.maker.name },
        { ...heading, value: "" },
      ],
      ...head.map((field) => [
        {
          ...around,
          ...middle,
          value: required.includes(field.place) && field.on === "every" ? `${field.label} *` : field.label,
          height: 18,
        },
        valueAt(known.get(field.place)),
        { ...remark, value: hintOf(field, catalogue) },
      ]),
    ],
  };
}

function stationsSheet({ columns }: ListForm): Sheet {
  return {
    sheet: "Stations",
    orientation: "landscape",
    stickyRowsCount: 1,
    stickyColumnsCount: 1,
    columns: columns.map(({ place, on, label }) => ({
      width:
        place === "notes"
          ? 40
          : place.startsWith("row.") || on === "plain"
            ? 12
            : Math.max(14, label.length * 0.8),
    })),
    data: [
      columns.map(({ label }) => ({ ...heading, value: label, alignVertical: "top", height: 42 })),
      ...Array.from({ length: drawnRows }, () =>
        columns.map(({ place }) => ({
          ...entry,
          ...(isShaded(place) ? { backgroundColor: palette.panel } : {}),
        })),
      ),
    ],
  };
}

/** Every second button is shaded, so that rows of one legend are seen together. */
function isShaded(place: Place): boolean {
  const [what, face] = place.split(".");
  return what === "row" && Number(face) % 2 === 1;
}

/** What the third sheet explains, and where on it the choices of each field stand. */
function helpSheet(
  form: ListForm,
  catalogue: Catalogue,
): { readonly sheet: Sheet; readonly choices: ReadonlyMap<string, string> } {
  const [title = "", ...lines] = helpLines(form, catalogue);
  const [names = [], ...rows] = exampleRows(form, catalogue);
  const line = (label: string, ...rest: SheetData[number]): SheetData[number] => [
    { value: label, ...around },
    ...rest,
  ];
  const fields = [...form.columns, ...form.head];
  const data: SheetData = [
    [{ value: title, fontSize: 14, fontWeight: "bold", height: 26 }],
    ...lines.map((value) => [{ value, height: 16 }]),
    [],
    [{ value: exampleTitle, fontWeight: "bold", height: 18 }],
    names.map((value) => ({ ...heading, value, height: 30, alignVertical: "top" as const })),
    ...rows.map((row) => row.map((value) => ({ ...around, value, type: String, format: "@" }))),
    [],
    [{ value: helpHeadings.hint, fontWeight: "bold", height: 18 }],
    ...form.columns.flatMap((field) => {
      const hint = field.place.startsWith("row.") ? "" : hintOf(field, catalogue);
      return hint === "" ? [] : [line(field.label, { value: hint })];
    }),
    ...roomLines(catalogue).map(([label, room]) => line(label, { value: room })),
    [],
    [{ value: helpHeadings.words, fontWeight: "bold", height: 18 }],
  ];
  const choices = new Map<string, string>();
  for (const field of fields) {
    const words = wordsFor(field, form, catalogue) ?? [];
    if (words.length === 0 || choices.has(keyOf(field))) continue;
    data.push(line(field.label, ...words.map((value) => ({ ...around, value, type: String, format: "@" }))));
    choices.set(keyOf(field), `'${help}'!$B$${data.length}:$${lettersOf(words.length)}$${data.length}`);
  }
  return {
    sheet: {
      sheet: help,
      orientation: "landscape",
      columns: [{ width: 24 }, ...Array.from({ length: 12 }, () => ({ width: 13 }))],
      data,
    },
    choices,
  };
}

function keyOf({ place, on }: { readonly place: Place; readonly on: string }): string {
  return on === "plate" ? `plate ${place}` : place;
}

/** ECMA-376-1 §18.3.1.32 and §18.3.1.33: what may be typed into cells. */
function choiceOf(range: string, from: string): string {
  return validation(
    range,
    'type="list" errorStyle="stop" errorTitle="Please choose" error="Choose one of the list."',
    from,
  );
}

function lengthOf(range: string, most: number): string {
  const told = `errorTitle="Too long" error="There is room for ${most} characters in this row of the legend."`;
  return validation(
    range,
    `type="textLength" operator="lessThanOrEqual" errorStyle="warning" ${told}`,
    String(most),
  );
}

function validation(range: string, rule: string, formula: string): string {
  return `<dataValidation ${rule} allowBlank="1" showErrorMessage="1" sqref="${range}"><formula1>${formula}</formula1></dataValidation>`;
}

function offering(xml: string, rules: readonly string[]): string {
  const all = `<dataValidations count="${rules.length}">${rules.join("")}</dataValidations>`;
  return rules.length === 0 ? xml : xml.replace("<pageMargins", `${all}<pageMargins`);
}

/** ECMA-376-1 §18.3.1.63 and §18.3.1.65: Letter paper (1), as wide as one page and as long as need be. */
function onePageWide(xml: string): string {
  return xml
    .replace(/<worksheet\b[^>]*>/, '$&<sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>')
    .replace(/<pageSetup\b[^>]*\/>/, "")
    .replace(
      /<pageMargins\b[^>]*\/>/,
      '$&<pageSetup paperSize="1" orientation="landscape" fitToWidth="1" fitToHeight="0"/>',
    );
}

/** Gives whole columns the format of their first empty cell, so that text stays text in every row. */
function typedAsText(xml: string): string {
  const styles = [
    ...(/<row r="2"[^>]*>(.*?)<\/row>/s.exec(xml)?.[1] ?? "").matchAll(/<c r="[A-Z]+2" s="(\d+)"/g),
  ];
  let column = 0;
  return xml.replaceAll("<col ", () => `<col style="${styles[column++]?.[1] ?? 0}" `);
}
