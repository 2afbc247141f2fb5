import { listTitle } from "../../reading/list/list-facts.ts";
import type { ListForm } from "../../reading/list/list-form.ts";

/** The station list, empty, as CSV in UTF-8: the head line by line, then the headings. RFC 4180 */
export function listCsv({ head, columns }: ListForm): Uint8Array {
  const lines = [[listTitle], ...head.map(({ label }) => [label, ""]), [], columns.map(({ label }) => label)];
  // The mark at the beginning tells spreadsheets the encoding.
  return Buffer.from(`\uFEFF${lines.map((line) => line.map(quoted).join(",")).join("\r\n")}\r\n`);
}

function quoted(text: string): string {
  return /[",\r\n;]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
