import { randomUUID } from "node:crypto";
import { takeNote } from "../intake/check-note.ts";
import type { Desk } from "../intake/desk.ts";
import { laneOf } from "../intake/take.ts";
import { orderKey } from "../judging/state.ts";
import type { By } from "../ports/store.ts";
import type { Act } from "../trade/note.ts";
import type { FileId } from "../trade/sheet.ts";
import { CannotRun, defineCommand } from "./command.ts";
import { configure, settingsOption } from "./configuration.ts";
import { openBackOffice } from "./wire.ts";

export const settle = defineCommand({
  name: "settle",
  takes: "[NUMBER POINT…]",
  words: [0, Number.POSITIVE_INFINITY],
  summary: "Settles points of an order, or a letter, for one of our own people.",
  details:
    "NUMBER is an order, each POINT a number of our answers about it. The order is judged again at once, and whoever\nwrote last about it is answered by the worker. With --letter it is about a letter: --let-in judges and answers one\nthat was held; --aside says that all it says is dealt with. With --sheet\na sheet is put at a station, at a position or into another order of its buyer; `burin order` shows ids of sheets.\nEnds with 1 when it cannot be done; it says why.",
  options: {
    yes: { type: "boolean", tells: "it is meant as it stands" },
    no: { type: "boolean", tells: "it is not: a corrected sheet has to come" },
    say: {
      type: "string",
      takes: "TEXT",
      tells: "write this to the sender about the points; they stay open",
    },
    waive: { type: "boolean", tells: "let stand what stops the order" },
    letter: { type: "string", takes: "N", tells: "a letter, by its number in the record" },
    "let-in": { type: "boolean", tells: "the letter counts as its sender's" },
    as: { type: "string", takes: "ADDRESS", tells: "with --let-in: it counts as a letter of this buyer" },
    aside: { type: "boolean", tells: "the letter is dealt with; if it was held, it is never answered" },
    sheet: { type: "string", takes: "ID", tells: "a sheet that stands, to be put elsewhere" },
    station: { type: "string", takes: "MARK", tells: "with --sheet: the mark of its station" },
    position: { type: "string", takes: "N", tells: "with --sheet: its position in the plate" },
    order: { type: "string", takes: "NUMBER", tells: "with --sheet: its order, one that its buyer has" },
    buyer: { type: "string", takes: "ADDRESS", tells: "whose order, where several have this number" },
    by: { type: "string", takes: "NAME", tells: "who you are; it goes into the record and the answer" },
    why: { type: "string", takes: "TEXT", tells: "the reason; it goes into the record and the answer" },
    ...settingsOption,
  },
  async run(words, { settings, by: name = "", why = "", ...options }, { out, err }) {
    if (name.trim() === "" || why.trim() === "")
      throw new CannotRun("say who you are with --by NAME, and the reason with --why TEXT");
    const by = { name: name.trim(), why: why.trim() };
    const { desk, close } = await openBackOffice(await configure(settings));
    try {
      const said =
        options.sheet !== undefined
          ? await settleSheet(desk, options.sheet, options, by)
          : options.letter === undefined
            ? await settleOrder(desk, words, options, by)
            : await settleLetter(desk, Number(options.letter), options, by);
      (said.done ? out : err)(said.words);
      return said.done ? 0 : 1;
    } finally {
      await close();
    }
  },
});

interface Said {
  readonly done: boolean;
  readonly words: string;
}

interface Chosen {
  readonly yes?: boolean;
  readonly no?: boolean;
  readonly say?: string;
  readonly waive?: boolean;
  readonly "let-in"?: boolean;
  readonly as?: string;
  readonly aside?: boolean;
  readonly buyer?: string;
  readonly station?: string;
  readonly position?: string;
  readonly order?: string;
}

async function settleOrder(
  desk: Desk,
  [number = "", ...points]: readonly string[],
  chosen: Chosen,
  by: By,
): Promise<Said> {
  const acts = points.flatMap((point) => actsOn(pointOf(point), chosen));
  if (number === "" || acts.length === 0)
    throw new CannotRun("name an order and its points, and one of --yes, --no, --waive and --say TEXT");
  if (acts.length > points.length) throw new CannotRun("choose one of --yes, --no, --waive and --say TEXT");
  const orders = await desk.store.orders.named(number);
  const own = orders.filter(({ buyer }) => chosen.buyer === undefined || buyer === chosen.buyer);
  const [order, ...others] = own;
  if (order === undefined) return { done: false, words: `No order “${number}” is known.` };
  if (others.length > 0)
    throw new CannotRun(
      `several buyers have an order ${number}: choose with --buyer (${own.map(({ buyer }) => buyer).join(", ")})`,
    );
  return noted(
    desk,
    { id: randomUUID(), buyer: order.buyer, order: order.number, by: by.name, why: by.why, acts },
    order.number,
  );
}

async function settleSheet(desk: Desk, sheet: FileId, chosen: Chosen, by: By): Promise<Said> {
  const { station, position, order } = chosen;
  if (station === undefined && position === undefined && order === undefined)
    throw new CannotRun("say where the sheet belongs with --station MARK, --position N or --order NUMBER");
  if (position !== undefined && !/^[1-9]\d?$/.test(position))
    throw new CannotRun(`“${position}” is not a position in a plate`);
  const holding = await desk.store.orders.holding(sheet);
  if (holding === undefined)
    return { done: false, words: `No sheet ${sheet} stands in any order: see burin order NUMBER.` };
  const act = {
    kind: "place",
    sheet,
    ...(station === undefined ? {} : { mark: station.trim() }),
    ...(position === undefined ? {} : { position: Number(position) }),
    ...(order === undefined ? {} : { order }),
  } as const;
  const { buyer, number } = holding;
  const note = { id: randomUUID(), buyer, order: number, by: by.name, why: by.why, acts: [act] };
  const said = await noted(desk, note, number);
  if (!said.done || order === undefined || orderKey(order) === orderKey(number)) return said;
  const target = (await desk.store.orders.named(order)).find((one) => one.buyer === buyer);
  return { done: true, words: `${said.words}\nOrder ${target?.number ?? order}: ${target?.verdict ?? ""}.` };
}

/** Keeps a note, and tells how its order stands then. */
async function noted(desk: Desk, note: Parameters<typeof takeNote>[1], number: string): Promise<Said> {
  const taken = await takeNote(desk, note);
  if (taken.kind === "wrong") return { done: false, words: `Nothing is settled: ${taken.why}.` };
  if (taken.kind === "waits")
    return {
      done: true,
      words: `Kept as letter ${taken.letter}. It is judged once the letters before it are.`,
    };
  const { verdict, why, state } = await desk.store.letters.read(taken.letter);
  if (state === "held") return { done: false, words: `Nothing is settled: ${why ?? ""}.` };
  const answered = state === "ready" ? "The worker sends the answer." : "Nobody is answered.";
  return { done: true, words: `Order ${number}: ${verdict ?? ""}. ${answered}` };
}

function actsOn(number: number, { yes, no, say, waive }: Chosen): Act[] {
  return [
    ...(yes ? [{ kind: "yes", number } as const] : []),
    ...(no ? [{ kind: "no", number } as const] : []),
    ...(waive ? [{ kind: "waive", number } as const] : []),
    ...(say === undefined ? [] : [{ kind: "say", number, words: say } as const]),
  ];
}

function pointOf(text: string): number {
  if (!/^\d{1,4}$/.test(text)) throw new CannotRun(`“${text}” is not the number of a point`);
  return Number(text);
}

async function settleLetter(desk: Desk, letter: number, chosen: Chosen, by: By): Promise<Said> {
  const { store, clock } = desk;
  const record = Number.isSafeInteger(letter)
    ? await store.letters.read(letter).catch(() => undefined)
    : undefined;
  if (record === undefined) return { done: false, words: "No such letter is in the record." };
  if (chosen["let-in"]) {
    const sender = chosen.as ?? record.from;
    if (record.why === undefined && record.state !== "held")
      return { done: false, words: `Letter ${letter} was taken; there is nothing to let in.` };
    if (sender === undefined)
      throw new CannotRun("the letter has no single sender: say whose it is with --as ADDRESS");
    const lane = laneOf(sender, desk.rules.sharedDomains);
    const copy = await store.letters.letIn(
      letter,
      { sender, ...(lane === undefined ? {} : { lane }) },
      by,
      clock.now(),
    );
    return copy === undefined
      ? { done: false, words: `Letter ${letter} was let in before.` }
      : { done: true, words: `Let in as letter ${copy} of ${sender}. The worker judges and answers it.` };
  }
  if (!chosen.aside) throw new CannotRun("choose one of --let-in and --aside");
  // An order that still carries what the letter said is judged again without it.
  const orders = (await Promise.all(record.orders.map((number) => store.orders.named(number)))).flat();
  const open = orders.filter(({ carried }) => carried.some((one) => one.letter === String(letter)));
  const acts = [{ kind: "read", letter } as const];
  const said: Said[] = [];
  for (const { buyer, number } of open)
    said.push(
      await noted(desk, { id: randomUUID(), buyer, order: number, by: by.name, why: by.why, acts }, number),
    );
  if (open.length === 0) await store.letters.putAside(letter, by, clock.now());
  return {
    done: said.every(({ done }) => done),
    words: said.length === 0 ? `Letter ${letter} is dealt with.` : said.map(({ words }) => words).join("\n"),
  };
}
