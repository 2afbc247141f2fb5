import type { LetterRecord } from "../trade/record.ts";
import { oneLine } from "./one-line.ts";

/** So many letters are told of one by one. Of more only the number is told. */
const most = 40;

/** What customer service is told of letters that wait for a person. */
export function composeNotice(letters: readonly LetterRecord[]): { subject: string; text: string } {
  const count = letters.length === 1 ? "1 letter needs" : `${letters.length} letters need`;
  const told = letters
    .slice(0, most)
    .map(({ letter, receivedAt, from, subject, orders, why, verdict, state }) =>
      [
        `Letter ${letter}: ${oneLine(reason(state, why, verdict), 200)}`,
        `  ${from ?? "no single sender"}, “${oneLine(subject, 80)}”, received ${receivedAt.toISOString().slice(0, 16).replace("T", " ")} UTC`,
        ...(orders.length === 0 ? [] : [`  order ${orders.map((order) => oneLine(order, 40)).join(", ")}`]),
      ].join("\n"),
    );
  return {
    subject: `${count} a person`,
    text: [
      `${count} a person since you were last told.`,
      ...told,
      ...(letters.length > most ? [`… and ${letters.length - most} more.`] : []),
      "You are told of each of them once, and once an hour at most.",
      "",
    ].join("\n\n"),
  };
}

function reason(state: LetterRecord["state"], why = "", verdict?: LetterRecord["verdict"]): string {
  if (state === "held") return `not answered, ${why}`;
  if (state === "refused") return "the answer could not be delivered";
  if (state === "unknown") return "nobody can see whether its answer went out";
  if (why !== "") return `answered, ${why}`;
  return verdict === "confirm"
    ? "answered with questions that the sender has to confirm"
    : "answered, and one of you has to look at its sheets";
}
