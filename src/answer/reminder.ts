import type { Catalogue } from "../catalogue/catalogue.ts";
import { wordsOutside } from "../checks/run.ts";
import type { Due, WaitingOrder } from "../judging/reminders.ts";
import { isNoNumber } from "../orders/no-number.ts";
import type { Missing } from "../trade/order.ts";
import { type MissingSheets, missingWords } from "./missing-sheets.ts";
import { listed, oneLine } from "./one-line.ts";
import { signatureOf } from "./phrases.ts";
import { replyLine } from "./reply-line.ts";
import { tallyWords } from "./tally.ts";

/** So many points are told one by one. Of more only the number is told. */
const most = 12;

/** A reminder that goes to a buyer. */
type Reminder = Exclude<Due, { readonly what: "person" }>;

/**
 * What a buyer is told of an order that waits for him. It asks for nothing that the answer has not asked for, and
 * encloses the sheets still to come as that did.
 */
export function composeReminder(
  due: Reminder,
  catalogue: Catalogue,
  missing: MissingSheets = { sheets: [], more: 0 },
): { subject: string; text: string } {
  const { order, what } = due;
  const parts = [
    section("PLEASE FIX", fixesOf(order)),
    section("PLEASE CONFIRM", questionsOf(order)),
    section("STILL TO COME", missingOf(order.missing)),
  ].filter((part) => part !== "");
  return {
    subject: `${what === "last" ? "Last reminder" : "Reminder"}: ${nameOf(order)}, ${awaited(order)}`,
    text: [
      `${capital(nameOf(order))}${order.project === undefined ? "" : `, ${oneLine(order.project, 80)},`} waits for you: ${awaited(order)}. Nothing of it is cut until then.`,
      ...parts,
      howToAnswer(order, catalogue).join("\n"),
      ...missingWords(missing),
      whatComesNext(due, catalogue),
      signatureOf(catalogue).join("\n"),
      "",
    ].join("\n\n"),
  };
}

function nameOf({ number }: WaitingOrder): string {
  return isNoNumber(number) ? "your order" : `order ${oneLine(number, 40)}`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function stopping({ problems }: WaitingOrder): WaitingOrder["problems"] {
  return problems.filter(({ severity }) => severity === "stops");
}

/** What the buyer is waited for: "1 question, 2 sheets to come". */
function awaited(order: WaitingOrder): string {
  const [fail, confirm, waiting] = [stopping(order).length, order.questions.length, order.missing.length];
  return tallyWords("waiting", { fail, confirm, person: 0, waiting, pass: 0 });
}

function section(title: string, points: readonly string[]): string {
  if (points.length === 0) return "";
  const more = points.length - most;
  return [
    title,
    ...points.slice(0, most),
    ...(more > 0 ? [`  … and ${more} more, as in our last answer.`] : []),
  ].join("\n");
}

function fixesOf(order: WaitingOrder): string[] {
  const names = new Map(order.sheets.map(({ id, file }) => [id, oneLine(file, 60)]));
  const told = stopping(order).map((problem) => {
    const { says, fix } = wordsOutside(problem);
    const files = [...new Set(problem.spots.flatMap(({ file }) => names.get(file) ?? []))];
    const where = files.length === 0 ? "" : `${listed(files, 3)}: `;
    return `  - ${where}${oneLine(says, 300)}\n    ${oneLine(fix, 300)}`;
  });
  return [...new Set(told)];
}

function questionsOf({ questions }: WaitingOrder): string[] {
  return questions
    .toSorted((one, other) => one.number - other.number)
    .map(({ number, problem, station, position }) => {
      const where = [
        ...(station === undefined ? [] : [`station ${oneLine(station, 40)}`]),
        ...(position === undefined ? [] : [`position ${position}`]),
      ];
      const at = where.length === 0 ? "" : `${capital(where.join(", "))}: `;
      const { says, fix } = wordsOutside(problem);
      const lines = [`${at}${oneLine(says, 300)}`, oneLine(fix, 300), replyLine(number, [problem])];
      return `  ${number}. ${lines.join("\n     ")}`;
    });
}

/** "Station S-104: device sheets for positions 2, 3 and 4", a line a station. */
function missingOf(missing: readonly Missing[]): string[] {
  return [...Map.groupBy(missing, ({ station }) => station)].map(([station, some]) => {
    const positions = some.flatMap(({ kind, position }) =>
      kind === "device" && position !== undefined ? [`${position}`] : [],
    );
    const sheets = [
      ...(some.some(({ kind }) => kind === "plate") ? ["the plate sheet"] : []),
      ...(positions.length === 0
        ? []
        : [
            positions.length === 1
              ? `the device sheet for position ${positions[0]}`
              : `the device sheets for positions ${listed(positions, 12)}`,
          ]),
    ];
    return `  - Station ${oneLine(station, 40)}: ${listed(sheets, 2)}`;
  });
}

function howToAnswer(order: WaitingOrder, { maker }: Catalogue): string[] {
  const attached = [
    ...(stopping(order).length > 0 ? ["the corrected sheets"] : []),
    ...(order.missing.length > 0 ? ["the missing sheets"] : []),
  ];
  return [
    "Reply to this letter.",
    ...(order.questions.length === 0 ? [] : ["Answer each question by its number."]),
    ...(attached.length === 0
      ? []
      : [`Attach ${listed(attached, 2)}. All others are kept; do not send them again.`]),
    `If you need more time or no longer want the order, say so in a sentence, or call ${maker.phone}.`,
  ];
}

function whatComesNext(due: Reminder, { maker }: Catalogue): string {
  if (due.what === "last")
    return `This is our last reminder. If we hear nothing, a person at ${maker.name} gets in touch with you.`;
  const on = due.lastOn === undefined ? "later" : `on ${dayInWords(due.lastOn)}`;
  return `If we hear nothing, the last reminder comes ${on}.`;
}

/** "Monday, November 9". */
function dayInWords(date: string): string {
  const day = new Date(`${date}T00:00:00Z`);
  return new Intl.DateTimeFormat("en-US", {
    weekday: "long",
    month: "long",
    day: "numeric",
    timeZone: "UTC",
  }).format(day);
}
