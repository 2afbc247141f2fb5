import type { Words } from "../answer/message.ts";
import { counted, oneLine } from "../answer/one-line.ts";
import { signatureOf } from "../answer/phrases.ts";
import type { Catalogue } from "../catalogue/catalogue.ts";
import { periodPage } from "./page.ts";
import type { Period } from "./period.ts";
import { daysOf, periodText } from "./text.ts";

/** What somebody is told of some days: the tables, and what has changed. */
export function composeDay(name: string, period: Period, catalogue: Catalogue): Words {
  const { first, last, figures } = period;
  const greeting = `${oneLine(name, 60)}, this is how ${daysOf(period)} went.`;
  const dates = first === last ? first : `--from ${first} --to ${last}`;
  const more = `With charts: “burin day ${dates} --html FILE”, or Day on the desk's page.`;
  const signature = signatureOf(catalogue);
  return {
    subject: `${daysOf(period)}: ${counted(figures.letters, "letter")}, ${counted(figures.slips, "slip")}`,
    text: [greeting, periodText(period), more, signature.join("\n"), ""].join("\n\n"),
    html: periodPage(period, { charts: false, above: [greeting], below: [more, ...signature] }),
  };
}
