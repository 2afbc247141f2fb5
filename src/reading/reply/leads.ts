import { speaksAgainst } from "./doubt.ts";
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
  if (/^(?:-{3,}[^-]{3,60}-{3,}|[-_]{5,})$/u.test(line)) {
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
  }
  return undefined;
}

export function isMarked(line: string): boolean {
  return line.trimStart().startsWith(">");
}

/** What mail programs write between hyphens. */
const knownRule =
  /^-+\s*(?:original message|forwarded message|ursprüngliche nachricht|weitergeleitete nachricht|message d['’]origine|message original|message transféré|mensaje original|mensaje reenviado)\s*-+$/iu;

/** A lead in words begins with a day: "On Mon, Nov 9", "Am 09.11.2026", "El lun, 9 nov". */
const begins =
  /^\S+\s+(?:(?:mon|tue|wed|thu|fri|sat|sun|jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec|mo|di|mi|do|fr|sa|so|mär|mai|okt|dez|lun|mer|jeu|ven|sam|dim|fév|avr|juin|juil|aoû|déc|mié|jue|vie|sáb|dom|ene|abr|ago|dic|ma|wo|vr|za|zo|mrt|mei|tis|ons|tor|lör|sön|man|gio|sab|gen|mag|giu|lug|set|ott)\p{L}*[.,]*\s+){0,2}\d/iu;
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

/** The fields of a header as Outlook quotes it, if one begins here: "From: …", "Sent: …" and so on. */
function headerAt(lines: readonly string[], at: number): Field[] {
  const fields: Field[] = [];
  if (!/^\s*\*?(?:from|von|de|da|van|från|fra)\s?:/iu.test(lines[at] ?? "")) return fields;
  for (let next = at; next < lines.length; next++) {
    const [, name, value] =
      /^\s*\*?(from|sent|date|to|cc|subject|von|gesendet|datum|an|betreff|de|envoyé|à|objet|enviado|fecha|para|asunto|da|inviato|data|a|oggetto|van|verzonden|aan|onderwerp|från|skickat|till|ämne|fra|sendt|til|emne)\s?:\*?(.*)$/iu.exec(
        lines[next] ?? "",
      ) ?? [];
    if (name === undefined || value === undefined) break;
    fields.push({ name, value });
  }
  return fields;
}

/** Whether fields are a header that the letter with that subject would have. */
function isHeader(fields: readonly Field[], fewest: number, subject: string): boolean {
  const names = new Set(fields.map(({ name }) => name.toLowerCase()));
  return (
    names.size === fields.length &&
    names.size >= fewest &&
    fields.every(({ name, value }) =>
      /^(?:subject|betreff|objet|asunto|oggetto|onderwerp|ämne|emne)$/iu.test(name)
        ? isSubject(value, subject)
        : !asks(value),
    )
  );
}

/** Whether a subject is the other one with what mail programs and servers add in front, or the beginning of that. */
function isSubject(given: string, subject: string): boolean {
  const bare = given.replace(
    /^(?:\s*(?:re|fwd?|aw|wg|tr|rv|sv|vs|r|antw|ext|external)\s*:|\s*\[ext(?:ern|ernal|erne|erno)?\]:?)+/iu,
    "",
  );
  const own = tokensOf(subject);
  return tokensOf(bare).every((token, i) => token === own[i]);
}
