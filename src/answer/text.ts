import { columns } from "./columns.ts";
import {
  type Chapter,
  headings,
  type Item,
  type Outline,
  type Proof,
  type ProofsOfOrder,
} from "./outline.ts";

/** Lines break here, short enough not to be broken again when a reply quotes them (RFC 5322 §2.1.1: 78). */
const width = 74;

/** An answer as plain text. */
export function answerText(outline: Outline): string {
  const { word, headline, todo, lead, withdrawn, chapters, howToOrder, next, proofs, cautions, signature } =
    outline;
  const blocks = [
    wrap(`${word}: ${headline}`),
    ...(todo === undefined ? [] : [wrap(todo)]),
    ...(lead.length === 0 ? [] : [lead.map((line) => wrap(line)).join("\n")]),
    ...withdrawn.map(({ says, sheets, undo }) =>
      [wrap(says), ...sheets.map((sheet) => wrap(`- ${sheet}`, "  ")), wrap(undo)].join("\n"),
    ),
    ...chapters.flatMap(chapterBlocks),
    ...listBlocks(headings.howToOrder, howToOrder),
    ...listBlocks(headings.next, next),
    ...(proofs.length === 0 ? [] : [headings.proofs.toUpperCase(), ...proofs.flatMap(proofBlocks)]),
    cautions.map((caution) => wrap(caution)).join("\n"),
    `-- \n${signature.join("\n")}`,
  ];
  return `${blocks.join("\n\n")}\n`;
}

function chapterBlocks(chapter: Chapter): string[] {
  const { title, status, received, changed = [], sections, rows, alsoRight } = chapter;
  const head = [...(title === undefined ? [] : titleLines(title)), status, received].filter(
    (line) => line !== undefined,
  );
  const table = columns(rows.map(({ state, what, file }) => [state, what, file])).map((line) => `  ${line}`);
  return [
    ...(head.length === 0 ? [] : [head.map((line) => wrap(line)).join("\n")]),
    ...sections.flatMap((section) => [
      section.title.toUpperCase(),
      ...section.groups.map(({ heading, hint, items }) =>
        [wrap(heading), ...(hint === undefined ? [] : [wrap(hint)]), ...items.map(itemLines)].join("\n"),
      ),
    ]),
    ...listBlocks(headings.changed, changed),
    ...(rows.length === 0 && alsoRight === undefined
      ? []
      : [
          headings.sheets.toUpperCase(),
          [...table, ...(alsoRight === undefined ? [] : [alsoRight])].join("\n"),
        ]),
  ];
}

function titleLines(title: string): string[] {
  return [title, "=".repeat(Math.min(title.length, width))];
}

function itemLines({ number, says, fix, reply, where, pictures = [] }: Item): string {
  const indent = "     ";
  const [first, ...more] = [
    says,
    fix,
    ...(reply === undefined ? [] : [reply]),
    ...(where === undefined ? [] : [where]),
    ...picturesLine(pictures),
  ];
  return [
    wrap(`${`${number}.`.padStart(4)} ${first}`, indent),
    ...more.map((line) => wrap(`${indent}${line}`, indent)),
  ].join("\n");
}

function picturesLine(pictures: NonNullable<Item["pictures"]>): string[] {
  return pictures.length === 0 ? [] : [`What the page shows: ${pictures.map(({ file }) => file).join(", ")}`];
}

function proofBlocks({ title, sheets, rest }: ProofsOfOrder): string[] {
  return [
    ...(title === undefined ? [] : [titleLines(title).join("\n")]),
    ...sheets.map(proofLines),
    ...(rest === undefined ? [] : [wrap(rest)]),
  ];
}

function proofLines({ heading, hint, faces }: Proof): string {
  return [wrap(heading), wrap(hint), ...columns(faces).map((line) => `  ${line}`)].join("\n");
}

function listBlocks(title: string, lines: readonly string[]): string[] {
  return lines.length === 0
    ? []
    : [title.toUpperCase(), lines.map((line) => wrap(`- ${line}`, "  ")).join("\n")];
}

/** Breaks a line at single blanks; typed double blanks stay together. `indent` stands before the lines that follow. */
export function wrap(line: string, indent = ""): string {
  const [first = "", ...words] = line.split(/(?<=\S) (?=\S)/);
  const lines = [first];
  for (const word of words) {
    const last = lines.at(-1) ?? "";
    if (last.length + 1 + word.length > width) lines.push(`${indent}${word}`);
    else lines[lines.length - 1] = `${last} ${word}`;
  }
  return lines.join("\n");
}
