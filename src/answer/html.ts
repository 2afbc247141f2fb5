import { html, raw } from "hono/html";
import type { Verdict } from "../trade/problem.ts";
import { columns } from "./columns.ts";
import { darkStyle } from "./dark.ts";
import { cidOf } from "./message.ts";
import {
  type Chapter,
  type Group,
  headings,
  type Item,
  type ItemPicture,
  type Outline,
  type Proof,
  type ProofsOfOrder,
  type Row,
  type Section,
  type Withdrawal,
} from "./outline.ts";

/**
 * Colours that have a contrast of at least 4.5 to 1 with white (WCAG 2.2, 1.4.3), whichever of the two is the ground.
 */
const colours = {
  fail: "#9c2a1f",
  confirm: "#84560b",
  person: "#59417a",
  waiting: "#1f5673",
  pass: "#2b6238",
} as const satisfies Record<Verdict, string>;

// Mail programs drop style sheets and let little be inherited. So every element carries its own font. If the colour
// is not inherited either, it is black.
const font = "font:15px/22px Verdana,sans-serif";
const ink = "#1b1b1d";
const large = "font-size:17px;line-height:25px;font-weight:bold";
const quiet = "color:#55595f";
const strip = "background:#f3f1ea";
/** What was typed keeps its blanks. It breaks anywhere rather than widen the page. */
const typed = "white-space:pre-wrap;overflow-wrap:anywhere";
const cell = `${font};vertical-align:top`;
const line = "border-bottom:1px solid #dcd9d0";

type Markup = ReturnType<typeof html>;

/** An answer as a page for mail programs: one column, tables for the old ones, nothing loaded from outside. */
export function answerHtml(outline: Outline): string {
  const { lead, withdrawn, chapters, howToOrder, next, link, proofs, cautions, signature } = outline;
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
<title>${outline.subject}</title>
</head>
<body style="margin:0;padding:0;background:#ffffff">
<div role="main">
<table role="presentation" width="100%" cellpadding="0" cellspacing="0" border="0" style="max-width:640px;margin:0 auto">
<tr><td style="${font};color:${ink};padding:16px">
${banner(outline)}
${when(lead.length > 0, () => paragraph("margin:12px 0 0", broken(lead)))}
${withdrawn.map(withdrawalMarkup)}
${chapters.map(chapterMarkup)}
${listMarkup(headings.howToOrder, howToOrder)}
${listMarkup(
  headings.next,
  next.map((step) => linked(step, link, link)),
)}
${when(proofs.length > 0, () => html`${heading(headings.proofs, "h2")}${proofs.map(proofsMarkup)}`)}
${paragraph("margin:24px 0 0;padding:12px 0 0;border-top:1px solid #c9c6bd", broken(cautions))}
${paragraph(`margin:16px 0 0;${quiet}`, broken(signature))}
</td></tr>
</table>
</div>
</body>
</html>
`;
  if (page instanceof Promise) throw new Error("an answer has a part that comes later");
  return page.toString();
}

function banner({ verdict, word, headline, todo }: Outline): Markup {
  const colour = colours[verdict];
  const sentence = `${headline.charAt(0).toUpperCase()}${headline.slice(1)}`;
  return table(
    html`<tr><td bgcolor="${colour}" style="${font};color:#ffffff;background:${colour};padding:6px 10px;font-weight:bold;letter-spacing:2px">${word}</td></tr>
<tr><td style="${cell};${large};${typed};padding:9px 10px"><span role="heading" aria-level="1">${sentence}</span></td></tr>
${when(todo, (words) => html`<tr><td style="${cell};padding:0 10px 9px">${words}</td></tr>`)}`,
    `border:2px solid ${colour}`,
  );
}

function withdrawalMarkup({ says, sheets, undo }: Withdrawal): Markup {
  return html`${paragraph("margin:12px 0 0;font-weight:bold", says)}${listOf(sheets)}${paragraph("", undo)}`;
}

function chapterMarkup({
  title,
  verdict,
  status,
  received,
  changed = [],
  sections,
  rows,
  alsoRight,
}: Chapter): Markup {
  // Under the title of its chapter a heading is one step lower.
  const level = title === undefined ? "h2" : "h3";
  return html`${when(title, (words) => titleMarkup(words, "h2"))}
${when(status, (words) => paragraph(`font-weight:bold;color:${colours[verdict]}`, words))}
${when(received, (words) => paragraph("", words))}
${sections.map((section) => sectionMarkup(section, level))}
${listMarkup(headings.changed, changed, level)}
${when(rows.length > 0 || alsoRight !== undefined, () => heading(headings.sheets, level))}
${when(rows.length > 0, () => table(rows.map(rowMarkup), "margin:4px 0 0"))}
${when(alsoRight, (words) => paragraph("margin:8px 0 0", words))}`;
}

function titleMarkup(title: string, level: Level): Markup {
  const style = `${font};${large};${strip};${typed};margin:24px 0 6px;padding:6px 10px`;
  return headingOf(level, style, title);
}

function sectionMarkup({ kind, title, groups }: Section, level: Level): Markup {
  return html`${heading(title, level, colours[kind])}${groups.map((group) => groupMarkup(group, kind))}`;
}

function groupMarkup({ heading, hint, items }: Group, kind: Verdict): Markup {
  return html`${headed(heading, hint)}${table(items.map((item) => itemMarkup(item, kind)))}`;
}

function itemMarkup({ number, says, fix, reply, letter, where, pictures = [] }: Item, kind: Verdict): Markup {
  return html`<tr><td width="34" style="${cell};padding:6px 0 0;font-weight:bold;color:${colours[kind]}">${number}.</td><td style="${cell};${typed};padding:6px 0 0">${
    kind === "pass" ? says : html`<strong>${says}</strong>`
  }<br>${fix}${when(reply, (words) => html`<br>${linked(words, letter?.words, letter?.link)}`)}${when(where, (words) => html`<br><span style="${quiet}">${words}</span>`)}${pictures.map(pictureMarkup)}</td></tr>
`;
}

/** A picture is a part of the letter (RFC 2392), since mail programs fetch nothing from elsewhere. */
function pictureMarkup({ name }: ItemPicture): Markup {
  return html`<br><img src="cid:${cidOf(name)}" alt="What the page shows there" style="display:block;max-width:100%;height:auto;margin:6px 0 2px;border:1px solid #c9c6bd">`;
}

function rowMarkup({ kind, state, what, file }: Row): Markup {
  return html`<tr><td width="100" style="${cell};${line};padding:5px 8px 5px 0;font-weight:bold;color:${colours[kind]}">${state}</td><td style="${cell};${line};${typed};padding:5px 0">${what}<br><span style="${quiet}">${file}</span></td></tr>
`;
}

function proofsMarkup({ title, sheets, rest }: ProofsOfOrder): Markup {
  return html`${when(title, (words) => titleMarkup(words, "h3"))}${sheets.map(proofMarkup)}${when(rest, (words) => paragraph("margin:8px 0 0", words))}`;
}

function proofMarkup({ heading, hint, faces }: Proof): Markup {
  return html`${headed(heading, hint)}
<pre style="font:15px/21px Courier New,monospace;${strip};${typed};margin:4px 0 0;padding:6px 10px">${columns(faces).join("\n")}</pre>
`;
}

/** A line in which these words lead somewhere. Links lead to our own page, or begin a letter to us; no others do. */
function linked(line: string, words: string | undefined, link: string | undefined): string | Markup {
  const at = words === undefined ? -1 : line.indexOf(words);
  if (words === undefined || link === undefined || at < 0) return line;
  return html`${line.slice(0, at)}<a href="${link}">${words}</a>${line.slice(at + words.length)}`;
}

function listMarkup(title: string, items: readonly (string | Markup)[], level: Level = "h2"): Markup {
  return when(items.length > 0, () => html`${heading(title, level)}${listOf(items)}`);
}

function listOf(items: readonly (string | Markup)[]): Markup {
  const list = items.map((item) => html`<li style="margin:0 0 4px">${item}</li>`);
  return html`<ul style="${font};margin:6px 0 0;padding:0 0 0 20px">${list}</ul>`;
}

/**
 * Who hears a page goes by its headings: the verdict is the first, no level is left out. That one is no h1, which
 * programs that make text of a page set apart in capitals, so that a reply would quote it as words of its own.
 */
type Level = "h2" | "h3";

function heading(title: string, level: Level, colour = ink): Markup {
  const style = `${font};font-size:16px;font-weight:bold;margin:22px 0 0;padding:0 0 2px;color:${colour};border-bottom:2px solid ${colour}`;
  return headingOf(level, style, title);
}

function headingOf(level: Level, style: string, title: string): Markup {
  return level === "h2"
    ? html`<h2 style="${style}">${title}</h2>
`
    : html`<h3 style="${style}">${title}</h3>
`;
}

function headed(name: string, hint: string | undefined): Markup {
  const below = when(hint, (words) => html`<br><span style="${quiet}">${words}</span>`);
  return paragraph(`margin:10px 0 0;${typed}`, html`<strong>${name}</strong>${below}`);
}

function paragraph(style: string, content: Markup | string): Markup {
  return html`<p style="${font};margin:2px 0 0;${style}">${content}</p>
`;
}

function table(rows: Markup | readonly Markup[], style = ""): Markup {
  return html`<table role="presentation" width="100%" cellpadding="0" cellspacing="0" border="0" style="${style}">
${rows}</table>
`;
}

function broken(lines: readonly string[]): Markup {
  return html`${lines.map((words, i) => (i === 0 ? html`${words}` : html`<br>${words}`))}`;
}

/** Shows a value; shows nothing if it is absent or false. */
function when<T>(value: T | false | undefined, show: (value: T) => Markup): Markup {
  return value === undefined || value === false ? html`` : show(value);
}
