import type { Makes } from "../choices.ts";
import type { Guess, Guesses } from "./guess.ts";
import { type Line, linesOf, unknown } from "./holes-of-names.ts";

/** What the skeleton of an edition is written from. */
export interface Drafted extends Guesses {
  /** The name of the edition. */
  readonly name: string;
  readonly title: string;
  /** Where the form is, as seen from the edition's file. */
  readonly blank: string;
  /** Places that the form should ask for, and that no field was found for. */
  readonly never: readonly string[];
}

/** The mark of what nobody has confirmed yet. */
export const guessMark = "# a guess";

/** The text of an edition, as far as it can be guessed: every field of the form, each guess marked as one. */
export function skeletonOf(drafted: Drafted, makes: Makes): string {
  const { name, title, form, blank, guesses, never } = drafted;
  const lines = linesOf(guesses, form, makes);
  const open = lines.filter(({ means }) => means === unknown);
  return [
    "# The skeleton of an edition, written from the fields of a form. Look at every guess, take its mark away, say what",
    `# “${unknown}” is (\`burin settings --places\` lists what there is; \`nothing\` is for what says nothing of the order),`,
    "# and put this file and the form into the folder of editions. `burin settings` then says what is still wrong.",
    `edition: ${scalar(name)}`,
    `title: ${scalar(title)}`,
    `form: ${form}   ${guessMark}: its fields fit a ${form} sheet best`,
    `blank: ${scalar(blank)}`,
    ...(never.length === 0
      ? ["# Every place that such a sheet has to ask for is mapped."]
      : [`# Such a sheet has to ask for these too, and no field was found: ${never.join(", ")}.`]),
    ...(open.length === 0
      ? ["# Every field is mapped."]
      : [`# Mapped to nothing yet: ${comment(open.map((line) => line.name).join(", "))}.`]),
    "fields:",
    ...lines.flatMap(linesOfField),
    "",
  ].join("\n");
}

function linesOfField(line: Line): string[] {
  const [guess, ...others] = line.guesses;
  const of = others.length === 0 ? "" : `${line.guesses.length} fields, the first: `;
  return [
    `  # ${comment(of + factsOf(guess))}`,
    ...(line.means === unknown
      ? [`  # ${comment(whyOpen(guess))}`]
      : [`  ${guessMark}: ${comment(guess.why ?? "")}`]),
    `  ${scalar(line.name)}: ${meaningOf(line)}`,
  ];
}

function meaningOf({ means, label, guesses: [{ ticked, values }] }: Line): string {
  const parts = [
    `means: ${scalar(means)}`,
    `label: ${scalar(label)}`,
    ...(ticked === undefined ? [] : [`ticked: ${scalar(ticked)}`]),
    ...(values === undefined
      ? []
      : [
          `values: { ${values.map(([value, code]) => `${scalar(value)}: ${scalar(code ?? unknown)}`).join(", ")} }`,
        ]),
  ];
  return `{ ${parts.join(", ")} }`;
}

const kinds = { text: "text", tick: "a box", choice: "a list", signature: "", button: "" } as const;

/** What the form says of a field: its kind, where it stands, what it takes. */
function factsOf({ field: { kind, frames, choices, most, manyLines } }: Guess): string {
  const [first] = frames;
  const offered =
    choices?.map(({ value, shown }) => (shown === value ? value : `${shown} (${value})`)) ??
    (frames.length > 1 ? frames.flatMap(({ on }) => on ?? []) : []);
  return [
    frames.length > 1 && kind === "tick" ? `${frames.length} buttons` : kinds[kind],
    ...(manyLines === undefined ? [] : ["several lines"]),
    ...(most === undefined ? [] : [`at most ${most} characters`]),
    first === undefined ? "on no page" : `page ${first.page} at ${first.box.map(Math.round).join(" ")}`,
    ...(offered.length === 0 ? [] : [`choices: ${offered.filter(Boolean).join(" | ")}`]),
  ].join("; ");
}

function whyOpen({ label, field, taken }: Guess): string {
  if (taken !== undefined) return `looks like ${taken.place} too, which ${taken.by} fills`;
  return label === field.name ? "nothing tells what it means" : `“${label}” tells nothing of what it means`;
}

/** Words that YAML would take for something else. */
const reserved = /^(?:true|false|null|yes|no|on|off|y|n|~)$/i;

/** A text as YAML, in quotes where it needs any. */
function scalar(text: string): string {
  return /^\p{L}[\p{L}\p{N}_./() -]*$/u.test(text) && !reserved.test(text) && text.trim() === text
    ? text
    : JSON.stringify(text).replace(
        /[\u007f-\u009f\u2028\u2029\ufeff]/g,
        (one) => `\\u${one.charCodeAt(0).toString(16).padStart(4, "0")}`,
      );
}

/** A form's own words in a comment, which ends with its line. */
function comment(text: string): string {
  return text.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, "·");
}
