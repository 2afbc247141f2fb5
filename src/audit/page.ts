import { html, raw } from "hono/html";
import { darkStyle } from "../answer/dark.ts";
import { barChart } from "./chart.ts";
import type { Period } from "./period.ts";
import { type Section, sectionsOf } from "./rows.ts";
import { daysOf, lessonsOf } from "./text.ts";

// Mail programs drop style sheets and let little be inherited. So every element carries its own. Its colours are those
// of an answer, each with a counterpart where the reader has everything dark.
const font = "font:15px/22px Verdana,sans-serif;color:#1b1b1d";
const cell = `${font};text-align:left;vertical-align:top;padding:4px 12px 4px 0;border-bottom:1px solid #dcd9d0`;

type Markup = ReturnType<typeof html>;

/** A period as a page that loads nothing. A letter has no charts, since mail programs show none; tables say the same. */
export function periodPage(
  period: Period,
  {
    charts,
    above = [],
    below = [],
  }: { readonly charts: boolean; readonly above?: readonly string[]; readonly below?: readonly string[] },
): string {
  const title = `Days ${daysOf(period)}`.replace(/^Days (\S+)$/, "Day $1");
  const page = html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width,initial-scale=1">
<meta name="color-scheme" content="light dark">
<meta name="supported-color-schemes" content="light dark">
<style>
${raw(darkStyle())}
</style>
<title>${title}</title>
</head>
<body style="margin:0;padding:16px;background:#ffffff;max-width:820px">
<h1 style="${font};font-size:20px;margin:0">${title}</h1>
<p style="${font};margin:2px 0 0">${period.timeZone}; as the record stood when these days ended.</p>
${above.map(paragraph)}
${lessonsOf(period).map(
  ({ title: heading, says }) => html`${headed(heading)}<ul style="${font};margin:6px 0 0;padding:0 0 0 20px">
${says.map((one) => html`<li style="margin:0 0 4px">${one}</li>\n`)}</ul>`,
)}
${sectionsOf(period).map((section) => sectionMarkup(section, charts))}
${below.map(paragraph)}
</body>
</html>
`;
  if (page instanceof Promise) throw new Error("a page has a part that comes later");
  return page.toString();
}

function sectionMarkup({ title, lines, note, isDrawn }: Section, charts: boolean): Markup {
  const [head = [], ...rows] = lines;
  return html`${headed(title)}
${charts && isDrawn ? raw(barsOf(title, rows)) : ""}
<table style="border-collapse:collapse;margin:4px 0 0">
<tr>${head.map((one) => html`<th scope="col" style="${cell};font-weight:bold">${one}</th>`)}</tr>
${rows.map((row) => html`<tr>${row.map((one) => html`<td style="${cell};overflow-wrap:anywhere">${one}</td>`)}</tr>\n`)}</table>
${note === undefined ? "" : html`<p style="${font};font-size:13px;margin:4px 0 0">${note}</p>`}`;
}

/** Bars of the second column of a table. */
export function barsOf(title: string, rows: readonly (readonly string[])[]): string {
  return barChart(
    title,
    rows.map(([name = "", value]) => ({ name, value: Number(value) })),
  );
}

function paragraph(line: string): Markup {
  return html`<p style="${font};margin:12px 0 0">${line}</p>`;
}

function headed(title: string): Markup {
  return html`<h2 style="${font};font-size:16px;font-weight:bold;margin:22px 0 4px;border-bottom:2px solid #1b1b1d">${title}</h2>`;
}
