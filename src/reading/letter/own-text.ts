/** The text of a reply, taken apart; lines are trimmed, blank ones left out. */
export interface ReplyText {
  /** What its sender wrote above what they quote, without the signature. */
  readonly own: readonly string[];
  /** What is quoted without a mark at each line: words of the sender's own may be hidden in it. */
  readonly quoted: readonly string[];
  /** Lines of the sender's own stand among or below quoted lines that are marked. */
  readonly between: boolean;
}

/** Takes the text of a reply apart where it begins to quote. */
export function takeApart(text: string): ReplyText {
  const lines = text.split(/\r\n|\r|\n/);
  let at = 0;
  while (at < lines.length && leadAt(lines, at) === undefined) at += 1;
  const rest = lines.slice(at + (leadAt(lines, at) ?? 0)).filter((line) => line.trim() !== "");
  const marked = isMarked(rest[0] ?? "");
  return {
    own: unsigned(lines.slice(0, at)),
    quoted: marked ? [] : rest.map((line) => line.trim()),
    between: marked && unsigned(rest.filter((line) => !isMarked(line))).length > 0,
  };
}

/** Longer leads than this are none. */
const longestLead = 400;

/** How many lines lead in what is quoted from here on; undefined where nothing is. */
function leadAt(lines: readonly string[], at: number): number | undefined {
  const line = (lines[at] ?? "").trim();
  if (isMarked(line)) return 0;
  // "-----Original Message-----" in any language; rules of hyphens or underscores.
  if (/^(?:-{3,}[^-]{3,60}-{3,}|[-_]{5,})$/u.test(line)) {
    const blank = lines.slice(at + 1, at + 4).findIndex((next) => next.trim() !== "");
    return 1 + Math.max(blank, 0) + headerAt(lines, at + 1 + Math.max(blank, 0));
  }
  const header = headerAt(lines, at);
  if (header > 1) return header;
  // "On … wrote:" in four languages, which may be broken over three lines.
  for (const long of [1, 2, 3]) {
    const lead = lines
      .slice(at, at + long)
      .join(" ")
      .trim();
    if (lead.length > longestLead) break;
    if (/^(?:on|am|le|el)\s.*\s(?:wrote|schrieb|a écrit|escribió).*:$/iu.test(lead)) return long;
  }
  return undefined;
}

/** Lines of a header that begins here as Outlook quotes it: "From: …", "Sent: …" and so on. */
function headerAt(lines: readonly string[], at: number): number {
  if (!/^\s*\*?(?:from|von|de)\s?:/iu.test(lines[at] ?? "")) return 0;
  const field =
    /^\s*\*?(?:from|sent|date|to|cc|subject|von|gesendet|datum|an|betreff|de|envoyé|à|objet|enviado|fecha|para|asunto)\s?:/iu;
  const end = lines.findIndex((line, i) => i >= at && !field.test(line));
  return (end < 0 ? lines.length : end) - at;
}

function isMarked(line: string): boolean {
  return line.trimStart().startsWith(">");
}

/** Lines with something in them, up to the signature. RFC 3676 §4.3: it stands under "-- ". */
function unsigned(lines: readonly string[]): string[] {
  const end = lines.indexOf("-- ");
  return lines
    .slice(0, end < 0 ? lines.length : end)
    .map((line) => line.trim())
    .filter((line) => line !== "");
}
