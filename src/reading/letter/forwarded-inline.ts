import { fromIn, isMarked, quotedSubject } from "../reply/leads.ts";
import { isForwarding } from "../reply/prefixes.ts";
import { type QuotedTime, quotedTime } from "./quoted-time.ts";

/** A letter that somebody forwards in the text of his own. */
export interface ForwardedInline {
  /** The address in its From, in small letters; absent where it names none, or several. */
  readonly from?: string;
  /** When it was written, as its header says. */
  readonly written?: QuotedTime;
  /** What its sender wrote. */
  readonly text: string;
  /** What whoever forwards it wrote above. */
  readonly above: string;
  /** Nothing but a header stands above it, as above what a reply quotes, and the subject says that it is forwarded. */
  readonly bySubject?: true;
}

/** What mail programs write above a letter that they forward in the text. */
const rules =
  "forwarded message|forwarded by [^-]{1,60}|weitergeleitete nachricht|message transféré|mensaje reenviado|messaggio inoltrato|mensagem (?:re)?encaminhada|doorgestuurd bericht";
const begins =
  "begin forwarded message|(?:anfang|beginn) der weitergeleiteten (?:nachricht|e-?mail)|début du message (?:réexpédié|transféré)|inicio del mensaje reenviado|inizio messaggio inoltrato|início da mensagem (?:re)?encaminhada|begin doorgestuurd bericht";
const lead = new RegExp(`^\\s*(?:-{3,}\\s*(?:${rules})\\s*-{3,}|(?:${begins})\\s?:)\\s*$`, "iu");

/** A line between words and a header: "-----Original Message-----", or a rule. */
const rule = /^\s*(?:[-_]{5,}|-{3,}[^-]{3,60}-{3,})\s*$/u;

/** A header has so many lines at most, and one that stands alone so many at least. */
const longestHeader = 16;
const shortestHeader = 3;

/** A field of a header: "Sent: Monday, November 9". */
const field = /^\s*\*?\p{L}[\p{L} ]{0,15}\s?[:：]/u;

/**
 * The letters that are forwarded in a text, outermost first. Under a subject that says so, what stands below a quoted
 * header is one too, and its own quotations are part of it.
 */
export function forwardedInline(text: string, subject: string): readonly ForwardedInline[] {
  const lines = text.split(/\r\n|\r|\n/);
  const led = ledIn(lines);
  if (led.length > 0 || !isForwarding(subject)) return led;
  const bare = lines.map((line) => (isMarked(line) ? line.replace(/^(?:\s*>)+ ?/, "") : line));
  const marked = ledIn(bare);
  if (marked.length > 0) return marked;
  const at = bare.findIndex((_, i) => isHeaderAt(bare, i));
  if (at < 0) return [];
  const above = bare
    .slice(0, at)
    .join("\n")
    .replace(/[-_]{5,}\s*$|-{3,}[^-\n]{3,60}-{3,}\s*$/u, "");
  return [{ ...letterIn(bare.slice(at)), above: above.trim(), bySubject: true }];
}

/** The letters below what mail programs write above them. */
function ledIn(lines: readonly string[]): ForwardedInline[] {
  const leads = lines.flatMap((line, at) => (lead.test(line) ? [at] : []));
  const above = lines.slice(0, leads[0]).join("\n").trim();
  return leads.map((at, i) => ({ ...letterIn(lines.slice(at + 1, leads[i + 1] ?? lines.length)), above }));
}

/** A header, and the words below it. */
function letterIn(block: readonly string[]): Pick<ForwardedInline, "from" | "written" | "text"> {
  const begin = Math.max(
    0,
    block.findIndex((line) => line.trim() !== ""),
  );
  const end = headerEnd(block, begin);
  const header = block.slice(begin, end);
  const senders = header.flatMap((line) => addressesIn(fromIn(line) ?? ""));
  const [from, ...others] = new Set(senders);
  const written = header.map(quotedTime).find((time) => time !== undefined);
  return {
    ...(from === undefined || others.length > 0 ? {} : { from }),
    ...(written === undefined ? {} : { written }),
    text: block.slice(end).join("\n").trim(),
  };
}

function headerEnd(lines: readonly string[], begin: number): number {
  const blank = lines.findIndex((line, n) => n > begin && line.trim() === "");
  return Math.min(blank < 0 ? lines.length : blank, begin + longestHeader);
}

/** Whether a header that stands alone begins at a line: one sender, one subject, and something more. */
function isHeaderAt(lines: readonly string[], at: number): boolean {
  const before = lines[at - 1] ?? "";
  if (!field.test(lines[at] ?? "") || !(before.trim() === "" || rule.test(before))) return false;
  const header = lines.slice(at, headerEnd(lines, at));
  return (
    header.filter((line) => field.test(line)).length >= shortestHeader &&
    header.filter((line) => fromIn(line) !== undefined).length === 1 &&
    header.filter((line) => quotedSubject(line) !== undefined).length === 1
  );
}

function addressesIn(text: string): string[] {
  return (text.match(/[^\s<>()[\]\\,;:"@]+@[^\s<>()[\]\\,;:"@]+/gu) ?? []).map((one) => one.toLowerCase());
}
