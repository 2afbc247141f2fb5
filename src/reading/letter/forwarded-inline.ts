/** A letter that somebody forwards in the text of his own. */
export interface ForwardedInline {
  /** The address in its From, in small letters; absent where it names none, or several. */
  readonly from?: string;
  /** What its sender wrote, and what whoever forwards it wrote above. */
  readonly text: string;
}

/** What mail programs write above a letter that they forward in the text. */
const lead =
  /^\s*(?:-{3,}\s*(?:forwarded message|forwarded by [^-]{1,60})\s*-{3,}|begin forwarded message:)\s*$/i;

/** The field of its header that names its sender. A header has so many lines at most. */
const sender = /^\s*\*?from\s*:\*?(.*)$/i;
const longestHeader = 16;

/** The letters that are forwarded in a text, outermost first. */
export function forwardedInline(text: string): readonly ForwardedInline[] {
  const lines = text.split(/\r\n|\r|\n/);
  const leads = lines.flatMap((line, at) => (lead.test(line) ? [at] : []));
  return leads.map((at, i) => {
    const block = lines.slice(at + 1, leads[i + 1] ?? lines.length);
    const begin = Math.max(
      0,
      block.findIndex((line) => line.trim() !== ""),
    );
    const blank = block.findIndex((line, n) => n > begin && line.trim() === "");
    const end = Math.min(blank < 0 ? block.length : blank, begin + longestHeader);
    const senders = block.slice(begin, end).flatMap((line) => addressesIn(sender.exec(line)?.[1] ?? ""));
    const [from, ...others] = new Set(senders);
    const above = lines.slice(0, leads[0]);
    return {
      ...(from === undefined || others.length > 0 ? {} : { from }),
      text: [...above, ...block.slice(end)].join("\n").trim(),
    };
  });
}

function addressesIn(text: string): string[] {
  return (text.match(/[^\s<>()[\]\\,;:"@]+@[^\s<>()[\]\\,;:"@]+/gu) ?? []).map((one) => one.toLowerCase());
}
