import { html } from "hono/html";
import type { Act, Note } from "../../trade/note.ts";
import type { Markup } from "../page.ts";

/** A note of one of our own people is kept as JSON; no letter begins so. */
export function noteIn(bytes: Uint8Array): Note | undefined {
  if (bytes[0] !== 0x7b) return undefined;
  try {
    const note = JSON.parse(new TextDecoder().decode(bytes)) as Note;
    return Array.isArray(note.acts) ? note : undefined;
  } catch {
    return undefined;
  }
}

/** What one of our own people did, or the program by itself, in words. */
export function notePart({ by, why, acts }: Note): Markup {
  return html`<dl><dt>By</dt><dd>${by}</dd>
${why === "" ? "" : html`<dt>Reason</dt><dd>${why}</dd>`}</dl>
<ul>${acts.map((act) => html`<li>${wordsOfAct(act)}</li>`)}</ul>`;
}

/** An act in words. */
const actWords: { readonly [K in Act["kind"]]: (act: Extract<Act, { kind: K }>) => string } = {
  yes: ({ number }) => `Point ${number} is meant as it stands.`,
  no: ({ number }) => `Point ${number} is not meant so: a corrected sheet has to come.`,
  waive: ({ number }) => `Point ${number} is let stand.`,
  say: ({ number, words }) => `To the sender about point ${number}: “${words}”`,
  write: ({ words }) => `To the sender: “${words}”`,
  read: ({ letter }) => `What letter ${letter} said is dealt with.`,
  place: (act) => `Sheet ${act.sheet} belongs to ${placeWords(act)}.`,
  release: ({ on }) => `Released to engraving on ${on}.`,
  remind: ({ what }) =>
    what === "person" ? "Reminders came to nothing: somebody has to call." : "Its buyer is reminded.",
  summary: ({ of }) => `A manager is told of a week: ${of}.`,
  day: ({ to, first, last }) => `${to} is told how ${first === last ? first : `${first} to ${last}`} went.`,
  cut: ({ stations }) =>
    `Engraved: ${stations.length === 0 ? "all that was released" : stations.join(", ")}.`,
};

function wordsOfAct<K extends Act["kind"]>(act: Extract<Act, { kind: K }>): string {
  return actWords[act.kind](act);
}

function placeWords({ mark, position, order }: Extract<Act, { kind: "place" }>): string {
  return [
    ...(order === undefined ? [] : [`order ${order}`]),
    ...(mark === undefined ? [] : [`station ${mark}`]),
    ...(position === undefined ? [] : [`position ${position}`]),
  ].join(", ");
}
