import { simpleParser } from "mailparser";
import { builder } from "../../src/demo/build.ts";
import { composeLetter } from "../../src/demo/letter.ts";
import type { Desk } from "../../src/intake/desk.ts";
import { takeLetter } from "../../src/intake/take.ts";
import type { LetterRecord } from "../../src/trade/record.ts";
import { sheets, trade } from "./config.ts";

const build = builder({ ...trade, sheets, raw: () => Promise.reject(new Error("no raw file here")) });

/** A sheet with a legend on its first face: a device that stands alone, if `fill` says nothing else. */
export interface Sent {
  readonly mark: string;
  readonly legend: readonly string[];
  readonly kind?: "plate";
  readonly fill?: Readonly<Record<string, string>>;
}

export interface Written {
  readonly from?: string;
  readonly subject?: string;
  /** The letter's own date, as ISO 8601. */
  readonly date?: string;
  readonly text?: string;
  readonly sheets?: readonly Sent[];
  readonly files?: readonly { readonly file: string; readonly bytes: Uint8Array }[];
  /** The letter whose answer this one replies to. */
  readonly to?: LetterRecord;
}

function fill({ mark, legend, kind, fill }: Sent): Promise<Uint8Array> {
  const sheet = { file: "", like: "fallowmere", plain: [] };
  if (kind === "plate")
    return build({
      ...sheet,
      edition: "plate-26c",
      fill: { mark, ...fill },
      legends: { "1": [...legend], "2": ["POOL"] },
    });
  const plate: Record<string, string[]> = fill?.["standing"] === "in-plate" ? {} : { plate: ["POOL"] };
  return build({
    ...sheet,
    fill: { mark, standing: "alone", layout: "D2", ...fill },
    legends: { "1": [...legend], "2": ["OFF"], ...plate },
  });
}

let written = 0;

/** A letter as it would come, with its sheets filled in. */
export async function letterOf({
  from = "Greta Sorley <greta@fallowmere.example>",
  subject = "Stations",
  text = "",
  date = "2026-11-09T14:00:00Z",
  ...mail
}: Written): Promise<Uint8Array> {
  const sheets = await Promise.all(
    (mail.sheets ?? []).map(async (sheet) => ({ file: `${sheet.mark}.pdf`, bytes: await fill(sheet) })),
  );
  const described = {
    name: `letter-${++written}`,
    date,
    subject,
    logo: false,
  };
  const inReplyTo = mail.to?.answer?.messageId;
  return composeLetter(
    { ...described, from, text },
    {
      to: "orders@quillgate.example",
      attachments: [...sheets, ...(mail.files ?? [])],
      ...(inReplyTo === undefined ? {} : { inReplyTo }),
    },
  );
}

/** Has a desk take a letter; gives what became of it. */
export async function post(desk: Desk, mail: Written): Promise<LetterRecord> {
  const { letter } = await takeLetter(desk, await letterOf(mail), desk.clock.now());
  return desk.store.letters.read(letter);
}

/** The text of the answer that a letter got. */
export async function answerTo(desk: Desk, { letter }: LetterRecord): Promise<string> {
  const answer = await simpleParser(Buffer.from((await desk.store.answers.of(letter))?.bytes ?? ""));
  return answer.text ?? "";
}

/** The same answer as the page that mail programs show. */
export async function pageTo(desk: Desk, { letter }: LetterRecord): Promise<string> {
  const answer = await simpleParser(Buffer.from((await desk.store.answers.of(letter))?.bytes ?? ""));
  return answer.html === false ? "" : (answer.html ?? "");
}
