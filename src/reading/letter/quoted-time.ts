/** When a quoted letter was written, where its writer was. */
export interface QuotedTime {
  /** "2026-11-09". */
  readonly date: string;
  /** "08:30". */
  readonly time: string;
}

/** The field of a quoted header that says when. */
const field =
  /^\s*\*?(?:sent|date|gesendet|datum|envoyé|enviad[oa](?: e[ml])?|fecha|data|inviato|verzonden|skickat|sendt|dato)\s?[:：]\*?(.*)$/iu;

/** How the months begin, in the languages of mail programs. */
const months = [
  "jan|ene|gen",
  "feb|fév|fev",
  "mar|mär|maa|mrt",
  "apr|avr|abr",
  "may|mai|maj|mei|mag",
  "jun|juin|giu",
  "jul|juil|lug",
  "aug|aoû|ago",
  "sep|set",
  "oct|okt|ott|out",
  "nov",
  "dec|déc|dez|dic|des",
].map((names) => new RegExp(`^(?:${names})`, "iu"));

/** The time in a line of a quoted header; undefined if it has none, or if it could be read in two ways. */
export function quotedTime(line: string): QuotedTime | undefined {
  const [, value = ""] = field.exec(line) ?? [];
  const date = dateIn(value);
  const [, hour = "", minute = "", half = ""] =
    /(?<![\d.:-])(\d{1,2})[:.h](\d\d)(?::\d\d)?(?![\d.])\s*([ap]\.?m\b)?/iu.exec(value) ?? [];
  if (date === undefined || hour === "" || Number(hour) > 23 || Number(minute) > 59) return undefined;
  const hours = half === "" ? Number(hour) : (Number(hour) % 12) + (/^p/i.test(half) ? 12 : 0);
  return { date, time: `${String(hours).padStart(2, "0")}:${minute}` };
}

function dateIn(value: string): string | undefined {
  const [, year = "", month = "", day = ""] = /(?<!\d)(20\d\d)-(\d\d)-(\d\d)(?!\d)/.exec(value) ?? [];
  if (year !== "") return dateOf(year, Number(month), day);
  const dotted = /(?<!\d)(\d{1,2})\.(\d{1,2})\.(20\d\d)/.exec(value);
  if (dotted !== null) return dateOf(dotted[3], Number(dotted[2]), dotted[1]);
  const words =
    /(?<!\d)(?<day>\d{1,2})(?:\.|er|º)?\s(?:de\s)?(?<month>\p{L}{3,12})\.?,?\s(?:de\s)?(?<year>20\d\d)/u.exec(
      value,
    ) ??
    /(?<!\p{L})(?<month>\p{L}{3,12})\.?\s(?<day>\d{1,2})(?:st|nd|rd|th)?,?\s(?<year>20\d\d)/u.exec(value);
  const named = words?.groups?.["month"] ?? "";
  return dateOf(
    words?.groups?.["year"],
    months.findIndex((one) => one.test(named)) + 1,
    words?.groups?.["day"],
  );
}

/** Undefined where there is no such day. */
function dateOf(year = "", month = 0, day = ""): string | undefined {
  const date = `${year}-${String(month).padStart(2, "0")}-${day.padStart(2, "0")}`;
  const time = Date.parse(`${date}T00:00:00Z`);
  return !Number.isNaN(time) && new Date(time).toISOString().startsWith(date) ? date : undefined;
}
