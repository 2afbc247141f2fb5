import { speaksAgainst } from "./doubt.ts";
import { mayTurn } from "./other-tongues.ts";
import { isSubject } from "./prefixes.ts";
import { tokensOf } from "./word-bag.ts";

/** Lines that introduce a quotation in a reply. */
export interface Lead {
  /** How many lines they are; none if lines are marked. */
  readonly lines: number;
  /** A mail program wrote them. Other leads may be the sender's own words. */
  readonly sure: boolean;
}

/** A longer text is no lead. */
const longestLead = 400;

/**
 * The lead that begins at a line, or undefined. `subject` is that of the letter that may be quoted. What only looks
 * like a lead is one too: nothing after it may be taken for the sender's own words.
 */
export function leadAt(lines: readonly string[], at: number, subject: string): Lead | undefined {
  const line = (lines[at] ?? "").trim();
  if (isMarked(line)) return { lines: 0, sure: true };
  // "-----Original Message-----" in any language; rules of hyphens or underscores.
  if (/^(?:-{3,}(?=[^-]*\p{L})[^-]{3,60}-{3,}|[-_]{5,})$/u.test(line)) {
    const blank = lines.slice(at + 1, at + 4).findIndex((next) => next.trim() !== "");
    const from = at + 1 + Math.max(blank, 0);
    const header = headerAt(lines, from);
    const fewest = knownRule.test(line) ? 0 : 2;
    return { lines: from - at + header.length, sure: isHeader(header, fewest, subject) };
  }
  const header = headerAt(lines, at);
  if (header.length > 1) return { lines: header.length, sure: isHeader(header, 3, subject) };
  for (const long of [1, 2, 3]) {
    const lead = lines
      .slice(at, at + long)
      .join(" ")
      .trim();
    if (lead.length > longestLead) break;
    // "On … wrote:" in seven languages, perhaps broken over three lines.
    if (
      /^(?:on|am|le|el|op|den|il|il giorno)\s.*\s(?:wrote|schrieb|a écrit|escribió|schreef|skrev|ha scritto).*:$/iu.test(
        lead,
      )
    )
      return { lines: long, sure: begins.test(lead) && isDated.test(lead) && !asks(lead) };
    if (isLeadElsewhere(lead)) return introducesAt(lines, at, long) ? { lines: long, sure: true } : undefined;
  }
  return undefined;
}

/** Whether those lines alone are a lead in another language, and a quotation follows. */
function introducesAt(lines: readonly string[], at: number, long: number): boolean {
  const own = lines.slice(at, at + long).map((line) => line.trim());
  const next = lines.slice(at + long, at + long + 4).find((line) => line.trim() !== "") ?? "";
  const beginsLater = own.some((_, i) => isLeadElsewhere(own.slice(i + 1).join(" ")));
  return !own.includes("") && !beginsLater && (isMarked(next) || beginsAnswer.test(next));
}

/** How an answer of this desk begins. */
export const beginsAnswer = /^\s*(?:PASS|FAIL|CONFIRM|WAITING|WITHDRAWN|A PERSON WILL LOOK AT THIS)\b/;

const addressed = /[<(]+(?:mailto:)?[^\s<>()@]{1,64}@[^\s<>()@]{1,255}[>)]+/gu;
const wrote =
  /(?<!\p{L})(?:escreveu|napisał|napisała|pisze|kirjoitti|írta|napsal|napísal|scris|yazdı|έγραψε|писал|написал|пишет|пише|написав|napisao|napisala|napisal|rakstīja|rašė|kirjutas|schreef|scrive|escribe)(?!\p{L})/iu;
const mostWords = 16;

/**
 * Whether words introduce a quotation in another language: "wt., 17 lis 2026 o 09:12 Dana <dana@…> napisał(a):". They
 * have the day, the time, and the address or a verb that means "wrote", and no word that may bind anything.
 */
function isLeadElsewhere(lead: string): boolean {
  const words = lead.replace(addressed, " ");
  const addresses = [...lead.matchAll(addressed)].length;
  return (
    /[:：]$/u.test(lead) &&
    /(?<!\d)\d{1,2}[:.h]\d\d(?!\d)/u.test(words) &&
    /(?<!\d)(?:20\d\d|\d{1,2}[./-]\d{1,2}[./-]\d\d)(?!\d)/u.test(words) &&
    (addresses === 1 || (addresses === 0 && wrote.test(words))) &&
    tokensOf(words).filter((token) => /\p{L}/u.test(token)).length <= mostWords &&
    !mayTurn(words.replace(/^no dia\b|\d/giu, ""))
  );
}

export function isMarked(line: string): boolean {
  return line.trimStart().startsWith(">");
}

/** What mail programs write between hyphens. */
const knownRule =
  /-\s*(?:original message|forwarded message|ursprüngliche nachricht|weitergeleitete nachricht|message d['’]origine|message original|message transféré|mensaje original|mensaje reenviado)\s*-/iu;

/** A lead in words begins with a day: "On Mon, Nov 9", "Am 09.11.2026", "El lun, 9 nov". */
const begins =
  /^\S+\s+(?:(?:mon|tue|wed|thu|fri|sat|sun|jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec|mo|di|mi|do|fr|sa|so|mär|mai|okt|dez|lun|mer|jeu|ven|sam|dim|fév|avr|juin|juil|aoû|déc|mié|jue|vie|sáb|dom|ene|abr|ago|dic|ma|wo|vr|za|zo|mrt|mei|maj|tir|tirs|tis|ons|tor|tors|lør|lör|søn|sön|man|gio|sab|gen|mag|giu|lug|set|ott)\p{L}*[.,]*\s+){0,2}\d/iu;
/** It also has the time, the whole date, or an address. */
const isDated = /\d[:.h]\d\d|\b\d{4}\b|\d[./-]\d{1,2}[./-]\d|\S@\S/u;

/** Words that no mail program puts into a lead. */
function asks(words: string): boolean {
  return speaksAgainst(words) || /\b(?:keep|please)\b/i.test(words);
}

interface Field {
  readonly name: string;
  readonly value: string;
}

/** What the fields of a header are called, in the languages of mail programs. */
const named = {
  from: "from|von|de|da|van|från|fra|od|lähettäjä|feladó|de la|kimden|gönderen|από|от|від|expéditeur|remitente|mittente|afzender|avsändare|avsender|odesílatel|šalje|差出人|发件人|寄件者",
  sent: "sent|date|gesendet|datum|envoyé|enviado|enviada|enviada em|enviado em|enviado el|fecha|data|inviato|verzonden|skickat|sendt|dato|wysłano|wysłane|lähetetty|päivämäärä|elküldve|dátum|trimis|gönderildi|tarih|odesláno|odoslané|poslano|poslané|στάλθηκε|ημερομηνία|отправлено|дата|надіслано|送信日時|发送时间|寄件日期",
  to: "to|an|à|para|a|aan|till|til|do|vastaanottaja|címzett|către|kime|alıcı|komu|pre|za|prema|προς|кому|宛先|收件人|cc|dw|kopia|kopio|copie|copia|kopie|bcc",
  subject:
    "subject|betreff|objet|asunto|assunto|oggetto|onderwerp|ämne|emne|temat|aihe|tárgy|subiect|konu|předmět|predmet|zadeva|θέμα|тема|件名|主题|主旨",
};
const from = new RegExp(`^\\s*\\*?(?:${named.from})\\s?[:：]`, "iu");
const field = new RegExp(`^\\s*\\*?(${Object.values(named).join("|")})\\s?[:：]\\*?(.*)$`, "iu");
const isNamedSubject = new RegExp(`^(?:${named.subject})$`, "iu");

/** The name and the value of a line of a header, as mail programs quote it. */
function fieldIn(line: string): Field | undefined {
  const [, name, value] = field.exec(line) ?? [];
  return name === undefined || value === undefined ? undefined : { name, value };
}

/** The subject in a line of a quoted header. */
export function quotedSubject(line: string): string | undefined {
  const found = fieldIn(line);
  return found !== undefined && isNamedSubject.test(found.name) ? found.value : undefined;
}

/** Whom a line of a quoted header names as its writer. */
export function fromIn(line: string): string | undefined {
  return from.test(line) ? fieldIn(line)?.value : undefined;
}

/** The fields of a header as Outlook quotes it, if one begins here: "From: …", "Sent: …" and so on. */
function headerAt(lines: readonly string[], at: number): Field[] {
  const fields: Field[] = [];
  if (!from.test(lines[at] ?? "")) return fields;
  for (let next = at; next < lines.length; next++) {
    const found = fieldIn(lines[next] ?? "");
    if (found === undefined) break;
    fields.push(found);
  }
  return fields;
}

/** Whether fields are a header that the letter with that subject would have. */
function isHeader(fields: readonly Field[], fewest: number, subject: string): boolean {
  const names = new Set(fields.map(({ name }) => name.toLowerCase()));
  return (
    names.size === fields.length &&
    names.size >= fewest &&
    fields.every(({ name, value }) => (isNamedSubject.test(name) ? isSubject(value, subject) : !asks(value)))
  );
}
