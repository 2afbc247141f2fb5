import type { Desk } from "../../src/intake/desk.ts";
import { takeLetter } from "../../src/intake/take.ts";
import type { Reader } from "../../src/ports/reader.ts";
import { readHeader } from "../../src/reading/letter/letter.ts";
import type { LetterRecord } from "../../src/trade/record.ts";
import { editions } from "./config.ts";
import { formFacts } from "./facts.ts";
import { directReader } from "./reader.ts";

/** A sheet of a quick letter: what is typed in its fields, by their names. */
export interface QuickSheet {
  readonly file: string;
  readonly edition: "device-26c" | "plate-26c";
  readonly values: Readonly<Record<string, string>>;
}

/** A letter whose sheets are known without a PDF: thousands of them can be judged in a test. */
export interface QuickLetter {
  readonly id: string;
  readonly from?: string;
  /** What its Date field says. */
  readonly dated: Date;
  readonly receivedAt: Date;
  readonly sheets?: readonly QuickSheet[];
  /** Files that are scans. */
  readonly scans?: readonly string[];
  readonly text?: string;
  readonly inReplyTo?: string;
}

const header = {
  contact_name: "Ines Calloway",
  contact_email: "ines@brightwire.example",
  contact_phone: "312-555-0117",
  project: "Larkspur Library",
  order_number: "BW-2207",
  bill_name: "Brightwire Electric",
  bill_street: "48 Foundry Row",
  bill_city: "Chicago",
  bill_state: "IL",
  bill_postcode: "60607",
  ship_same: "Yes",
  finish: "OAT",
  lettering: "INK",
};

/** A good device sheet in a plate of so many gangs, with this word on its first button. */
export function deviceIn(
  mark: string,
  position: number,
  gangs: number,
  word: string,
  more: Readonly<Record<string, string>> = {},
): QuickSheet {
  return {
    file: `${mark} pos ${position}.pdf`,
    edition: "device-26c",
    values: {
      ...header,
      edition: "device-26c",
      station_mark: mark,
      standing: "in-plate",
      position: String(position),
      gangs: String(gangs),
      layout: "D2",
      button1_row1: word,
      button2_row1: "OFF",
      ...more,
    },
  };
}

export function plateOf(
  mark: string,
  gangs: number,
  more: Readonly<Record<string, string>> = {},
): QuickSheet {
  const plain = Array.from({ length: gangs }, (_, i) => [`gang${i + 1}_plain`, "Yes"]);
  return {
    file: `${mark} plate.pdf`,
    edition: "plate-26c",
    values: {
      ...header,
      edition: "plate-26c",
      station_mark: mark,
      gangs: String(gangs),
      ...Object.fromEntries(plain),
      ...more,
    },
  };
}

/** A good sheet of a device that stands alone. */
export function aloneAt(mark: string, word: string, more: Readonly<Record<string, string>> = {}): QuickSheet {
  const { position: _, gangs: _gangs, ...values } = deviceIn(mark, 1, 1, word).values;
  return {
    file: `${mark}.pdf`,
    edition: "device-26c",
    values: { ...values, standing: "alone", plate_plain: "Yes", ...more },
  };
}

/** The bytes of a quick letter; only `quickReader` makes anything of them. */
export function quickBytes(letter: QuickLetter): Uint8Array {
  const { id, from = "Ines Calloway <ines@brightwire.example>", dated, inReplyTo } = letter;
  const lines = [
    `From: ${from}`,
    "To: orders@quillgate.example",
    `Date: ${dated.toUTCString()}`,
    `Message-ID: <${id}@brightwire.example>`,
    ...(inReplyTo === undefined ? [] : [`In-Reply-To: ${inReplyTo}`]),
    "Subject: Stations",
    "",
    JSON.stringify(letter),
  ];
  return new TextEncoder().encode(lines.join("\r\n"));
}

const bytesOf = (value: unknown): Uint8Array => new TextEncoder().encode(JSON.stringify(value));
const valueOf = (bytes: Uint8Array): unknown => JSON.parse(new TextDecoder().decode(bytes));

export const quickReader: Reader = {
  ...directReader,
  letter: async (bytes) => {
    const [, body = ""] = new TextDecoder().decode(bytes).split("\r\n\r\n");
    // Answers of ours are letters as any other.
    if (!body.startsWith("{")) return directReader.letter(bytes);
    const { sheets = [], scans = [], text = "" } = JSON.parse(body) as QuickLetter;
    const parts = [
      ...sheets.map((sheet) => ({ name: sheet.file, bytes: bytesOf(sheet), looks: false })),
      ...scans.map((name) => ({ name, bytes: bytesOf({ file: name }), looks: false })),
    ];
    return { ok: true, value: { ...(await readHeader(bytes)), text, parts, links: [] } };
  },
  file: (bytes) => {
    const { edition, values } = valueOf(bytes) as Partial<QuickSheet>;
    const found = editions.find(({ name }) => name === edition);
    if (found === undefined || values === undefined)
      return Promise.resolve({ ok: true, value: { kind: "damaged-pdf" } });
    return Promise.resolve({ ok: true, value: formFacts(found, values) });
  },
  mark: () => Promise.resolve({ ok: true, value: {} }),
  page: () => Promise.resolve({ ok: true, value: { pages: 0 } }),
};

/** Has a desk take a quick letter; gives what became of it. */
export async function takeQuick(desk: Desk, letter: QuickLetter): Promise<LetterRecord> {
  const { letter: id } = await takeLetter(desk, quickBytes(letter), letter.receivedAt);
  return desk.store.letters.read(id);
}
