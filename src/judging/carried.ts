import { nameOf, positionIn } from "../checks/named-place.ts";
import { fileStillUnread } from "../checks/order/file-still-unread.ts";
import { letterStillOpen } from "../checks/order/letter-still-open.ts";
import { isUnchanged } from "../orders/differences.ts";
import { gatherOrders } from "../orders/gather.ts";
import { letterOf } from "../orders/ids.ts";
import { plainText } from "../orders/keys.ts";
import { missingOf } from "../orders/missing.ts";
import type { Standing } from "../orders/stand.ts";
import { wallPlaceOf } from "../orders/wall-place.ts";
import type { Carried } from "../trade/carried.ts";
import type { Missing } from "../trade/order.ts";
import type { Problem } from "../trade/problem.ts";
import type { QuestionOf } from "../trade/question.ts";
import type { Sheet } from "../trade/sheet.ts";
import { type OrderState, orderKey } from "./state.ts";

/** Whether new sheets settle something that an earlier letter left open. */
export type IsSettled = (carried: Carried) => boolean;

/**
 * Which unreadable files of earlier letters new sheets settle. Only a sheet of an order in which the file stands open
 * does. It settles the file if it bears the file's name, if it is for the place that the name tells, or if it is for a
 * place that the order lacked. One that came again as it stood before the file came does not. A file that stands
 * open in several orders is settled in all of them.
 */
export function settledBy(
  sheets: readonly Sheet[],
  { replaced, late }: Pick<Standing, "replaced" | "late">,
  orders: readonly OrderState[],
): IsSettled {
  const open = orders.filter(({ carried }) => carried.some(({ what }) => what === "file"));
  const lacking = open.map((order) => ({ order, lacked: gatherOrders(order.sheets).flatMap(missingOf) }));
  const files = new Map(
    open.flatMap(({ carried }) =>
      carried.flatMap((one) => (one.what === "file" ? [[keyOf(one), one.text] as const] : [])),
    ),
  );
  const gave = new Set([...replaced, ...late].flatMap(({ old, now }) => [old.id, now.id]));
  const left = new Set(sheets);
  const settled = new Set<string>();
  const lackedBeside = (key: string) =>
    lacking.filter(({ order }) => order.carried.some((one) => keyOf(one) === key));
  const settle = (waysOf: (file: string, key: string) => (sheet: Sheet) => boolean): void => {
    for (const [key, file] of files) {
      if (left.size === 0) return;
      const came = settled.has(key) ? undefined : [...left].find(waysOf(file, key));
      if (came === undefined) continue;
      left.delete(came);
      settled.add(key);
    }
  };
  // Many sheets are called "device.pdf", so a sheet that only took the place of another settles no file by its name.
  const stood = new Map(
    replaced.filter(isUnchanged).map(({ old, now }) => [now.id, Number(letterOf(old.id))]),
  );
  const isInOrder = (key: string, { id, order = "" }: Sheet): boolean =>
    lackedBeside(key).some(({ order: { number, carried } }) => {
      const file = carried.find((one) => keyOf(one) === key);
      const isOld = (stood.get(id) ?? Infinity) < Number(file?.letter);
      return orderKey(number) === orderKey(order) && !isOld;
    });
  settle(
    (file, key) => (sheet) =>
      isInOrder(key, sheet) && (tellsPlaceOf(file, sheet) || (!gave.has(sheet.id) && isNamed(sheet, file))),
  );
  settle((file, key) => (sheet) => isInOrder(key, sheet) && sheet.list !== undefined && listNames.test(file));
  settle((file, key) => {
    const lacked = lackedBeside(key);
    const isLacked = (sheet: Sheet): boolean =>
      lacked.some(
        ({ order, lacked: some }) =>
          orderKey(order.number) === orderKey(sheet.order ?? "") &&
          some.some((missing) => fills(sheet, missing, file)),
      );
    return (sheet) => !gave.has(sheet.id) && isLacked(sheet);
  });
  return (one) => one.what === "file" && settled.has(keyOf(one));
}

/** Which of an order's open words and files one of our own people now says are dealt with. */
export function decidedIn({ number, questions }: OrderState, decides: readonly QuestionOf[]): IsSettled {
  const keys = new Set(
    decides.filter(({ order }) => orderKey(order) === orderKey(number)).map(({ key }) => key),
  );
  const said = new Set(
    questions.flatMap(({ key, problem }) => (keys.has(key) ? (carriedIn(problem) ?? []) : [])),
  );
  return (one) => said.has(saidAs(one));
}

/** What a letter has left open, as one text. The same words of two people are two. */
export function saidAs({ what, text, ...one }: Carried): string {
  return what === "words" && "by" in one ? `${what} of ${one.by}: ${text}` : `${what} ${text}`;
}

/** Which words or file of an earlier letter a problem is about. The same may come again, and is asked about anew. */
export function carriedIn({ check, facts }: Problem): string | undefined {
  if (check === letterStillOpen.id) {
    const { words, by } = facts;
    return saidAs({
      letter: "",
      what: "words",
      text: String(words),
      ...(by === undefined ? {} : { by: String(by) }),
    });
  }
  return check === fileStillUnread.id ? `file ${String(facts["file"])}` : undefined;
}

function keyOf({ letter, text }: Carried): string {
  return `${letter} ${text}`;
}

/** Tables that stop an order are lists that were not taken; any list that is taken later comes in their place. */
const listNames = /\.(?:xlsx|csv)$/i;

/** Words that people add to a file's name when they send it again. */
const onceMore = new Set(
  "AGAIN COPY CORRECTED CORRECTION FILLABLE FILLED FINAL FIXED FORM MARKED NEW RESENT REVISED SCAN SCANNED SHEET SIGNED TYPED".split(
    " ",
  ),
);

/**
 * A station mark at the beginning of a file's name: "T-7 scan". Cameras and scanners number their pictures without a
 * hyphen.
 */
const markInFront = /^\p{L}{1,3}-\d{1,4}(?![\p{L}\p{N}])/u;

/** Whether a sheet bears the name of a file. A second file of one name bears a number that we have added. */
function isNamed(sheet: Sheet, file: string): boolean {
  const name = plainText(nameOf(sheet));
  return [file, file.replace(/ \(\d+\)(?=\.\w+$)/, "")].some(
    (one) => plainText(nameOf({ file: one })) === name,
  );
}

/**
 * Whether the name of a file tells the place of a sheet, or the same place as the sheet's own file, and nothing else.
 */
function tellsPlaceOf(file: string, sheet: Sheet): boolean {
  const [told, own] = [nameOf({ file }), nameOf(sheet)].map(placeIn);
  const { kind, mark = "" } = sheet;
  const position =
    sheet.kind === "device" && sheet.standing !== "alone" ? (sheet.position ?? "?") : undefined;
  const usual = [mark, kind === "plate" ? "PLATE" : position === undefined ? "" : `POS ${position}`];
  return told !== undefined && (told === own || told === placeIn(usual.join(" ")));
}

/**
 * The place in a file's name: "T-7 scan (2)" and "T-7" are "T 7". A name without a digit, such as "device", tells no
 * place.
 */
function placeIn(name: string): string | undefined {
  const words =
    name
      .toUpperCase()
      .replace(/\(\d+\)\s*$/, "")
      .match(/\p{L}+|\p{N}+/gu) ?? [];
  const place = words.filter((word) => !onceMore.has(word)).join(" ");
  return /\d/.test(place) ? place : undefined;
}

/** Whether a sheet is for a place that was lacking, and the name of the file tells no other place. */
function fills(sheet: Sheet, { station, kind, position }: Missing, file: string): boolean {
  const name = nameOf({ file });
  const [mark = station] = markInFront.exec(name) ?? [];
  const told = positionIn(name);
  return (
    sheet.kind === kind &&
    wallPlaceOf(sheet) !== undefined &&
    plainText(sheet.mark ?? "") === plainText(station) &&
    plainText(mark) === plainText(station) &&
    (sheet.kind === "plate" || (sheet.position === position && (told ?? position) === position))
  );
}
