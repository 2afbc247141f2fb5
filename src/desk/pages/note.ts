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
<ul>${acts.map((act) => html`<li>${actWords(act)}</li>`)}</ul>`;
}

function actWords(act: Act): string {
  switch (act.kind) {
    case "yes":
      return `Point ${act.number} is meant as it stands.`;
    case "no":
      return `Point ${act.number} is not meant so: a corrected sheet has to come.`;
    case "waive":
      return `Point ${act.number} is let stand.`;
    case "say":
      return `To the sender about point ${act.number}: “${act.words}”`;
    case "write":
      return `To the sender: “${act.words}”`;
    case "read":
      return `What letter ${act.letter} said is dealt with.`;
    case "place":
      return `Sheet ${act.sheet} belongs to ${placeWords(act)}.`;
    case "release":
      return `Released to engraving on ${act.on}.`;
    case "remind":
      return act.what === "person"
        ? "Reminders came to nothing: somebody has to call."
        : "Its buyer is reminded.";
    case "summary":
      return `A manager is told of a week: ${act.of}.`;
    case "day":
      return `${act.to} is told how ${act.first === act.last ? act.first : `${act.first} to ${act.last}`} went.`;
    case "cut":
      return `Engraved: ${act.stations.length === 0 ? "all that was released" : act.stations.join(", ")}.`;
  }
}

function placeWords({ mark, position, order }: Extract<Act, { kind: "place" }>): string {
  return [
    ...(order === undefined ? [] : [`order ${order}`]),
    ...(mark === undefined ? [] : [`station ${mark}`]),
    ...(position === undefined ? [] : [`position ${position}`]),
  ].join(", ");
}
