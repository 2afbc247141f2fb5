import { lastNo } from "../desk/last-no.ts";
import type { Desk } from "../intake/desk.ts";
import { letIn, putAside, type Said, settleOrder, settleSheet } from "../intake/settle.ts";
import type { By } from "../ports/store.ts";
import type { PointAct } from "../trade/note.ts";
import type { FileId } from "../trade/sheet.ts";
import { buyerOption, chosenOrder } from "./chosen-order.ts";
import { CannotRun, defineCommand } from "./command.ts";
import { configure, settingsOption } from "./configuration.ts";
import { openBackOffice } from "./wire.ts";

export const settle = defineCommand({
  name: "settle",
  words: [0, Number.POSITIVE_INFINITY],
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
    "despite-no": { type: "boolean", tells: "with --yes: though somebody has answered the point with NO" },
    waive: { type: "boolean", tells: "let stand what stops the order" },
    letter: { type: "string", takes: "N", tells: "a letter, by its number in the record" },
    "let-in": { type: "boolean", tells: "the letter counts as its sender's" },
    as: { type: "string", takes: "ADDRESS", tells: "with --let-in: it counts as a letter of this buyer" },
    aside: { type: "boolean", tells: "the letter is dealt with; if it was held, it is never answered" },
    sheet: { type: "string", takes: "ID", tells: "a sheet that stands, to be put elsewhere" },
    station: { type: "string", takes: "MARK", tells: "with --sheet: the mark of its station" },
    position: { type: "string", takes: "N", tells: "with --sheet: its position in the plate" },
    order: { type: "string", takes: "NUMBER", tells: "with --sheet: its order, one that its buyer has" },
    ...buyerOption,
    by: { type: "string", takes: "NAME", tells: "who you are; it goes into the record and the answer" },
    why: { type: "string", takes: "TEXT", tells: "the reason; it goes into the record and the answer" },
    ...settingsOption,
  },
  async run(words, { settings, by: name = "", why = "", ...options }, { out, err }) {
    if (name.trim() === "" || why.trim() === "")
      throw new CannotRun("say who you are with --by NAME, and the reason with --why TEXT");
    const chosen = [words.length > 0, options.letter !== undefined, options.sheet !== undefined];
    if (chosen.filter(Boolean).length > 1)
      throw new CannotRun("name an order and its points, a letter or a sheet, one of them at a time");
    if (options.say?.trim() === "") throw new CannotRun("say what to write with --say TEXT");
    const by = { name: name.trim(), why: why.trim() };
    const { desk, close } = await openBackOffice(await configure(settings));
    try {
      const said =
        options.sheet !== undefined
          ? await sheetPlace(desk, options.sheet, options, by)
          : options.letter === undefined
            ? await orderPoints(desk, words, options, by)
            : await letterAct(desk, letterNumber(options.letter), options, by);
      (said.done ? out : err)(said.words);
      return said.done ? 0 : 1;
    } finally {
      await close();
    }
  },
});

interface Chosen {
  readonly yes?: boolean;
  readonly no?: boolean;
  readonly say?: string;
  readonly "despite-no"?: boolean;
  readonly waive?: boolean;
  readonly "let-in"?: boolean;
  readonly as?: string;
  readonly aside?: boolean;
  readonly buyer?: string;
  readonly station?: string;
  readonly position?: string;
  readonly order?: string;
}

async function orderPoints(
  desk: Desk,
  [number = "", ...points]: readonly string[],
  chosen: Chosen,
  by: By,
): Promise<Said> {
  const acts = points.flatMap((point) => actsOn(pointOf(point), chosen));
  if (number === "" || acts.length === 0)
    throw new CannotRun("name an order and its points, and one of --yes, --no, --waive and --say TEXT");
  if (acts.length > points.length) throw new CannotRun("choose one of --yes, --no, --waive and --say TEXT");
  const order = await chosenOrder(desk, number, chosen.buyer);
  if (order === undefined) return { done: false, words: `No order “${number}” is known.` };
  const denied = acts.flatMap(({ kind, number: point }) => {
    const no = kind === "yes" ? lastNo(order, point) : undefined;
    return no === undefined ? [] : [`letter ${no.letter} has answered ${point} with NO`];
  });
  if (denied.length === 0) return settleOrder(desk, order, acts, by);
  const despite = denied.join(", ");
  if (chosen["despite-no"] !== true)
    return {
      done: false,
      words: `Nothing is settled: ${despite}. If it is meant so all the same, add --despite-no.`,
    };
  const said = await settleOrder(desk, order, acts, by);
  return { ...said, words: said.done ? `${said.words} That is despite a NO: ${despite}.` : said.words };
}

async function sheetPlace(desk: Desk, sheet: FileId, chosen: Chosen, by: By): Promise<Said> {
  const { station, position, order } = chosen;
  if (station === undefined && position === undefined && order === undefined)
    throw new CannotRun("say where the sheet belongs with --station MARK, --position N or --order NUMBER");
  if (position !== undefined && !/^[1-9]\d?$/.test(position))
    throw new CannotRun(`“${position}” is not a position in a plate`);
  const where = {
    ...(station === undefined ? {} : { mark: station.trim() }),
    ...(position === undefined ? {} : { position: Number(position) }),
    ...(order === undefined ? {} : { order }),
  };
  return settleSheet(desk, sheet, where, by);
}

function actsOn(number: number, { yes, no, say, waive }: Chosen): PointAct[] {
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

function letterNumber(text: string): number {
  if (!/^\d{1,15}$/.test(text)) throw new CannotRun(`“${text}” is not the number of a letter`);
  return Number(text);
}

async function letterAct(desk: Desk, letter: number, chosen: Chosen, by: By): Promise<Said> {
  if ((chosen["let-in"] ?? false) === (chosen.aside ?? false))
    throw new CannotRun("choose one of --let-in and --aside");
  return chosen.aside ? putAside(desk, letter, by) : letIn(desk, letter, by, chosen.as);
}
