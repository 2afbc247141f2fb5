import { expect } from "vitest";
import { takeDue } from "../../../src/intake/take.ts";
import type { Act } from "../../../src/trade/note.ts";
import {
  asksWord,
  dealtWith,
  enter,
  isReleasedPiece,
  type Number,
  numbers,
  people,
  type Spot,
  settle,
  type Typed,
  type Who,
} from "./ledger.ts";
import { cut, type ReleaseStep, release } from "./releases.ts";
import { lastAnswered, note, post, recordOf, type Story, sheetOf } from "./world.ts";

export type Step =
  | {
      readonly kind: "send";
      readonly who: Who;
      readonly order: Number;
      readonly sheets: readonly Typed[];
      readonly scan: boolean;
      readonly words: boolean;
      readonly inReply: boolean;
    }
  | {
      readonly kind: "answer";
      readonly who: Who;
      readonly order: Number;
      readonly pick: number;
      readonly says: "YES" | "NO";
    }
  | {
      readonly kind: "cancel";
      readonly who: Who;
      readonly order: Number;
      readonly what: Spot | "S-1" | "K-40" | "order";
    }
  | {
      readonly kind: "settle";
      readonly order: Number;
      readonly pick: number;
      readonly does: "yes" | "no" | "waive" | "say";
    }
  | { readonly kind: "read"; readonly pick: number }
  | {
      readonly kind: "place";
      readonly order: Number;
      readonly pick: number;
      readonly spot: Spot;
      readonly to: Number;
    }
  | ReleaseStep
  | { readonly kind: "let in"; readonly pick: number }
  | { readonly kind: "put aside"; readonly pick: number };

export async function send(story: Story, step: Extract<Step, { kind: "send" }>): Promise<void> {
  const { desk, ledger } = story;
  const { who, order, scan, inReply } = step;
  const n = ledger.sent.length;
  const typed = [...new Map(step.sheets.map((one) => [one.spot, one])).values()];
  const words = step.words || (typed.length === 0 && !scan);
  const [hasScan, scanName] = [scan && typed.length > 0, `scan ${n % 3}.pdf`];
  const to = inReply ? await lastAnswered(desk, order) : undefined;
  const text = words ? `Order ${order}: please engrave number ${n} in red.` : "";
  const { letter, quick } = await post(story, who, {
    sheets: typed.map((one, i) => {
      const sheet = sheetOf(one, order);
      return { ...sheet, file: `${n}-${i} ${sheet.file}` };
    }),
    scans: hasScan ? [scanName] : [],
    text,
    to,
  });
  if (who === "stranger") {
    if (typed.length > 0) ledger.held.set(letter, { letter: quick, step: { ...step, sheets: typed } });
    return;
  }
  enter(ledger, order, typed, quick);
  if (words) ledger.words.set(letter, { order, text });
  if (hasScan) ledger.scans.set(letter, { order, text: scanName });
}

export async function answer(
  story: Story,
  { who, order, pick, says }: Extract<Step, { kind: "answer" }>,
): Promise<void> {
  const { desk, ledger } = story;
  const [record, to] = [await recordOf(desk, order), await lastAnswered(desk, order)];
  const question = record?.questions[pick % record.questions.length];
  if (record === undefined || question === undefined || to === undefined) return;
  const { number } = question;
  const same = record.questions.filter((one) => one.number === number);
  await post(story, who, { text: `${number} ${says}`, to });
  if (who === "stranger" || says === "NO" || same.some(({ problem }) => problem.check !== asksWord)) return;
  settle(ledger, record, same);
}

export async function cancel(
  story: Story,
  { who, order, what }: Extract<Step, { kind: "cancel" }>,
): Promise<void> {
  const { desk, ledger } = story;
  const to = await lastAnswered(desk, order);
  if (to === undefined) return;
  const [mark, place] = what.split(" ");
  const words =
    what === "order"
      ? `order ${order}`
      : place === "1" || place === "2"
        ? `${mark} position ${place}`
        : `${mark}`;
  const { letter } = await post(story, who, { text: `CANCEL ${words}`, to });
  if (who === "stranger") return;
  // An answer about two orders lets its reply name the sheets of both.
  const about = numbers.filter((number) => number === order || to.orders.includes(number));
  const gone = about.flatMap((number) =>
    [...ledger.orders[number].keys()]
      .filter((spot) =>
        what === "order" ? number === order : spot.startsWith(words.replace(" position", "")),
      )
      .map((spot) => ({ number, spot })),
  );
  const isReleased = gone.some(({ number, spot }) => {
    const sheet = ledger.orders[number].get(spot);
    if (sheet !== undefined && isReleasedPiece(ledger, number, sheet)) return true;
    // Nor all that is left of what was released.
    const some = gone.filter((one) => one.number === number);
    return ledger.released[number] !== undefined && some.length === ledger.orders[number].size;
  });
  // Nobody knows which is meant of two stations of one mark.
  const named = about.filter((number) =>
    [...ledger.orders[number].keys()].some((spot) => spot.startsWith(`${mark} `)),
  );
  const isEither = what !== "order" && named.length > 1;
  // Nobody outside takes back what is released.
  if (gone.length === 0 || isReleased || isEither) {
    ledger.words.set(letter, { order, text: `CANCEL ${words}` });
    return;
  }
  for (const { number, spot } of gone) {
    ledger.withdrawn[number].push(ledger.orders[number].get(spot)?.file ?? "");
    ledger.orders[number].delete(spot);
  }
}

export async function settleByUs(
  story: Story,
  { order, pick, does }: Extract<Step, { kind: "settle" }>,
): Promise<void> {
  const record = await recordOf(story.desk, order);
  const question = record?.questions[pick % record.questions.length];
  if (record === undefined || question === undefined) return;
  const { number } = question;
  const act: Act = does === "say" ? { kind: "say", number, words: "Which?" } : { kind: does, number };
  const done = await note(story, order, act);
  const settles = done && (does === "yes" || does === "waive");
  if (settles)
    settle(
      story.ledger,
      record,
      record.questions.filter((one) => one.number === number),
    );
}

/** One of our own people has dealt with all that a letter said. */
export async function read(story: Story, { pick }: Extract<Step, { kind: "read" }>): Promise<void> {
  const { desk, ledger } = story;
  const open = [...new Set([...ledger.words.keys(), ...ledger.scans.keys()])];
  const letter = open[pick % open.length];
  if (letter === undefined) return;
  const records = await Promise.all(numbers.map((number) => recordOf(desk, number)));
  const carry = records.flatMap((one) =>
    one?.carried.some((said) => said.letter === String(letter)) ? one : [],
  );
  for (const { number } of carry) await note(story, number as Number, { kind: "read", letter });
  if (carry.length === 0)
    await desk.store.letters.putAside(letter, { name: "Rosa Imhoff", why: "read" }, desk.clock.now());
  for (const open of [ledger.words, ledger.scans]) {
    const said = open.get(letter);
    if (said !== undefined) dealtWith(open, said);
  }
}

export async function place(
  story: Story,
  { order, pick, spot, to }: Extract<Step, { kind: "place" }>,
): Promise<void> {
  const { desk, ledger } = story;
  const standing = [...ledger.orders[order].values()];
  const sheet = standing[pick % standing.length];
  const record = await recordOf(desk, order);
  const id = record?.sheets.find(({ file }) => file === sheet?.file)?.id;
  if (sheet === undefined) return;
  if (id === undefined) throw new Error(`${sheet.file} does not stand in ${order}`);
  const [[mark = "", what = ""], [, was = ""]] = [spot.split(" "), sheet.spot.split(" ")];
  const fits = /\d/.test(what) ? /\d/.test(was) : what === was;
  const position = /\d/.test(what) ? { position: Number(what) } : {};
  // A device in a plate cannot be made one that stands alone by its place.
  if (!fits && !/\d/.test(what)) return;
  const done = await note(story, order, { kind: "place", sheet: id, mark, ...position, order: to });
  const isLast = ledger.released[order] !== undefined && standing.length === 1;
  const isCutHere = order !== to && (isLast || isReleasedPiece(ledger, order, sheet));
  expect(done).toBe(fits && !isCutHere && !ledger.orders[to].has(spot));
  if (!done) return;
  ledger.orders[order].delete(sheet.spot);
  ledger.withdrawn[order].push(sheet.file);
  ledger.orders[to].set(spot, { ...sheet, spot, came: desk.clock.now().getTime() });
}

export async function letIn(
  { desk, ledger }: Story,
  { pick }: Extract<Step, { kind: "let in" }>,
): Promise<void> {
  const held = [...ledger.held][pick % ledger.held.size];
  if (held === undefined) return;
  const [letter, { letter: quick, step }] = held;
  const copy = await desk.store.letters.letIn(
    letter,
    { sender: people.stranger, lane: "stranger.example" },
    { name: "Rosa Imhoff", why: "Eve works for Ines" },
    desk.clock.now(),
  );
  while (await takeDue(desk));
  ledger.held.delete(letter);
  enter(ledger, step.order, step.sheets, quick);
  if (step.words) ledger.words.set(copy ?? 0, { order: step.order, text: quick.text ?? "" });
  if (step.scan) ledger.scans.set(copy ?? 0, { order: step.order, text: quick.scans?.[0] ?? "" });
}

export async function putAside(
  { desk, ledger }: Story,
  { pick }: Extract<Step, { kind: "put aside" }>,
): Promise<void> {
  const letter = [...ledger.held.keys()][pick % ledger.held.size];
  if (letter === undefined) return;
  await desk.store.letters.putAside(letter, { name: "Rosa Imhoff", why: "a stranger" }, desk.clock.now());
  ledger.held.delete(letter);
}

export async function take(story: Story, step: Step): Promise<void> {
  story.ledger.minute++;
  if (step.kind === "send") return send(story, step);
  if (step.kind === "answer") return answer(story, step);
  if (step.kind === "cancel") return cancel(story, step);
  if (step.kind === "settle") return settleByUs(story, step);
  if (step.kind === "read") return read(story, step);
  if (step.kind === "place") return place(story, step);
  if (step.kind === "release") return release(story, step);
  if (step.kind === "cut") return cut(story, step);
  if (step.kind === "let in") return letIn(story, step);
  return putAside(story, step);
}
