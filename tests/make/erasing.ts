import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { DatabaseSync } from "node:sqlite";
import { readPeriod } from "../../src/audit/period.ts";
import { calendarOf } from "../../src/calendar/business-days.ts";
import type { Desk } from "../../src/intake/desk.ts";
import { aloneAt, type QuickLetter } from "./quick.ts";

/** Another buyer, who has nothing to do with the first and shares no word with him. */
export const mara = {
  address: "mara@oakmoor.example",
  letter: (n: number, at: Date): QuickLetter => ({
    id: `mara-${n}`,
    from: "Mara Ellis <mara@oakmoor.example>",
    dated: at,
    receivedAt: at,
    sheets: [
      aloneAt(`Q-${n % 3}`, n % 2 === 0 ? "VAULT" : "LOUNJA", {
        contact_name: "Mara Ellis",
        contact_email: "mara@oakmoor.example",
        contact_phone: "312-555-0133",
        project: "Quarry School",
        order_number: "OM-9",
        bill_name: "Oakmoor Joinery",
        bill_street: "9 Quarry Lane",
      }),
    ],
  }),
} as const;

/** What only the people of Brightwire have typed: names, addresses, numbers, a telephone, legends. */
export const brightwire = [
  "brightwire",
  "Calloway",
  "Foundry",
  "Larkspur",
  "555-0117",
  "5550117",
  "BW-2207",
  "BW2207",
  "KF-31",
  "SALONA",
  "MAIN SW",
  "MAINSW",
  "please engrave",
] as const;

/** Where any of some words stands, in any file of a folder, in whatever capitals. */
export function foundIn(folder: string, words: readonly string[]): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((one) => one.isFile())
    .flatMap((one) => {
      const text = readFileSync(join(one.parentPath, one.name), "latin1").toLowerCase();
      return words.filter((word) => text.includes(word.toLowerCase())).map((word) => `${one.name}: ${word}`);
    });
}

/** The figures of days, each as one text, with names put in the place of others. */
export async function figuresOn(
  desk: Desk,
  days: readonly string[],
  names: ReadonlyMap<string, string> = new Map(),
): Promise<string[]> {
  const calendar = calendarOf({ timeZone: desk.timeZone });
  const named = (name: string): string => {
    const [, order = "", check = ""] = /^order (.*): (.*)$/.exec(name) ?? [];
    return order === "" ? (names.get(name) ?? name) : `order ${names.get(order) ?? order}: ${check}`;
  };
  const told: string[] = [];
  for (const day of days) {
    const { figures, before } = await readPeriod(desk.store.audited, { first: day, last: day }, calendar);
    told.push(
      JSON.stringify(
        [figures, before].map((some) => ({
          ...some,
          byBuyer: some.byBuyer.map((one) => JSON.stringify({ ...one, name: named(one.name) })).toSorted(),
          forPerson: some.forPerson
            .map((one) => JSON.stringify({ ...one, name: named(one.name) }))
            .toSorted(),
        })),
      ),
    );
  }
  return told;
}

/** All rows of a record that hang on letters and orders other than these. */
export function rowsBeside(
  path: string,
  letters: readonly number[],
  buyers: readonly string[],
): Record<string, unknown[]> {
  const db = new DatabaseSync(path, { readOnly: true });
  const gone = `(${letters.join(", ")})`;
  const whose = `(${buyers.map((one) => `'${one}'`).join(", ")})`;
  const others = `(SELECT id FROM orders WHERE buyer NOT IN ${whose} AND buyer NOT LIKE 'erased-%')`;
  const all = (sql: string): unknown[] => db.prepare(sql).all();
  const rows = {
    ...Object.fromEntries(
      ["attachments", "answers", "sheets", "problems", "kept_words"].map((table) => [
        table,
        all(`SELECT * FROM ${table} WHERE letter NOT IN ${gone} ORDER BY 1, 2`),
      ]),
    ),
    ...Object.fromEntries(
      ["revisions", "questions", "order_letters", "order_terms", "reminders"].map((table) => [
        table,
        all(`SELECT * FROM ${table} WHERE order_id IN ${others} ORDER BY 1, 2`),
      ]),
    ),
    letters: all(`SELECT * FROM letters WHERE id NOT IN ${gone} ORDER BY id`),
    orders: all(`SELECT * FROM orders WHERE id IN ${others} ORDER BY id`),
    numbers: all(`SELECT * FROM numbers WHERE buyer NOT IN ${whose} ORDER BY key`),
    events: all(
      `SELECT * FROM events WHERE NOT (subject = 'letter' AND subject_id IN ${gone}) AND subject != 'person' ORDER BY id`,
    ),
  };
  db.close();
  return rows;
}
