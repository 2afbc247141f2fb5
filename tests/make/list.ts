import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import writeWorkbook from "write-excel-file/universal";
import { utils, write } from "xlsx";
import { listForm } from "../../src/reading/list/list-form.ts";
import { maker, type Shop } from "./config.ts";

/** A station list as rows of cells. */
export type Rows = readonly (readonly string[])[];

/** What is filled in, by the label beside it; and a row for each device, by its headings. */
export interface Filling {
  readonly head?: Readonly<Record<string, string>>;
  readonly devices?: readonly Readonly<Record<string, string>>[];
}

/** What a head says if nothing else is given. */
export const usualHead = {
  "Contact name": "Ida Marlowe",
  "E-mail": "ida@sedgeholm.example",
  Phone: "312-555-0117",
  "Project name": "Sedgeholm Archive",
  "Order number": "SA-118",
  "Bill to: company": "Sedgeholm Electric",
  "Bill to: street": "12 Tannery Lane",
  "Bill to: city": "Joliet",
  "Bill to: state": "IL",
  "Bill to: ZIP or postal code": "60432",
  "Ship to: same as bill-to": "yes",
  Finish: "Pumice",
  Lettering: "Sepia",
} as const;

/** A device alone with three buttons. */
export const alone = {
  "Station mark": "A-2",
  Layout: "Three buttons",
  "Button 1, row 1": "BRIGHT",
  "Button 2, row 1": "DIM",
  "Button 3, row 1": "OFF",
  "Leave plain": "plate",
} as const;

/** Both devices of a plate of two gangs. */
export const pair = ["STACKS", "READING"].map((legend, i) => ({
  ...alone,
  "Station mark": "A-1",
  "Gangs of the plate": i === 0 ? "2" : "",
  Position: String(i + 1),
  "Plate legend, row 1": legend,
  "Leave plain": "",
}));

/** The rows of a list: its head line by line, and its devices under their headings. */
export function rowsOf({ head = usualHead, devices = [alone] }: Filling, shop: Shop = maker): string[][] {
  const columns = (listForm(shop.editions)?.columns ?? []).map(({ label }) => label);
  return [
    ["Station list"],
    ...Object.entries(head).map(([label, value]) => [label, value]),
    [],
    columns,
    ...devices.map((device) => columns.map((label) => device[label] ?? "")),
  ];
}

/** Rows as CSV. */
export function csvOf(rows: Rows, separator = ","): string {
  const quoted = (cell: string): string =>
    cell.includes(separator) || /["\n\r]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
  return rows.map((row) => row.map(quoted).join(separator)).join("\r\n");
}

/** Rows as a workbook of one sheet, by two programs. */
export const writers = {
  "write-excel-file": async (rows: Rows): Promise<Uint8Array> => {
    const data = rows.map((row) => row.map((value) => ({ value, type: String, format: "@" })));
    return new Uint8Array(await (await writeWorkbook(data).toBlob()).arrayBuffer());
  },
  xlsx: (rows: Rows): Promise<Uint8Array> => {
    const book = utils.book_new();
    utils.book_append_sheet(book, utils.aoa_to_sheet(rows.map((row) => [...row])), "Stations");
    return Promise.resolve(new Uint8Array(write(book, { type: "buffer", bookType: "xlsx" }) as Buffer));
  },
} as const;

/** A workbook with some of its parts changed, or put in. */
export function changed(
  bytes: Uint8Array,
  parts: Readonly<Record<string, (xml: string) => string>>,
): Uint8Array {
  const all = unzipSync(bytes);
  for (const [name, change] of Object.entries(parts))
    all[name] = strToU8(change(strFromU8(all[name] ?? new Uint8Array())));
  return zipSync(all);
}
