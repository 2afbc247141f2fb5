import { createHash } from "node:crypto";
import { releaseOrder } from "../intake/release.ts";
import { sendAgain } from "../intake/send-again.ts";
import { letIn, putAside, recordCut, type Said, settleOrder, settleSheet } from "../intake/settle.ts";
import type { By } from "../ports/store.ts";
import { PackageThere } from "../store/package-folder.ts";
import type { Act } from "../trade/note.ts";
import type { OrderRecord } from "../trade/record.ts";
import type { Fields } from "./asked.ts";
import { type Ask, type Front, Refused, visitorOf } from "./front.ts";
import { lastNo } from "./last-no.ts";

/** Who acts, and why. */
export function byOf(c: Ask, why: string): By {
  if (why === "") throw new Refused(400, "Say why: it goes into the record.");
  return { name: visitorOf(c).account.name, why };
}

/** Settles one point of an order, as its form says. */
export async function settlePoint(c: Ask, { desk }: Front, number: string, field: Fields): Promise<Said> {
  const order = await orderOf({ desk }, number, field("buyer"));
  const point = Number(field("number"));
  if (!Number.isSafeInteger(point) || point < 1) throw new Refused(400, "Which point is meant?");
  const by = byOf(c, field("why"));
  const no = lastNo(order, point);
  if (field("act") === "yes" && no !== undefined && no.letter > Number(field("no"))) {
    // The list of people does not show who has said NO; the order's page, which comes now, does.
    const since =
      field("no") === "" ? "; see the order here before you decide" : " since this page was opened";
    return {
      done: false,
      words: `Nothing is settled: letter ${no.letter} has answered ${point} with NO${since}.`,
    };
  }
  const act = actOf(field("act"), point, by.why);
  return settleOrder(desk, order, [act], by, onceOf(c, field, [field("act"), by.why, `${point}`]));
}

/** The name of an act: that of its form and of what is typed there. So the same form sent twice is one act. */
function onceOf(c: Ask, field: Fields, typed: readonly string[]): string | undefined {
  if (field("once") === "") return undefined;
  const named = JSON.stringify([visitorOf(c).account.user, c.req.path, field("once"), ...typed]);
  return createHash("sha256").update(named).digest("hex");
}

function actOf(act: string, number: number, words: string): Act {
  if (act === "yes" || act === "no" || act === "waive") return { kind: act, number };
  if (act === "say") return { kind: "say", number, words };
  throw new Refused(400, "What is to be done about it?");
}

/** Writes to whoever wrote last about an order. */
export async function write(c: Ask, { desk }: Front, number: string, field: Fields): Promise<Said> {
  const order = await orderOf({ desk }, number, field("buyer"));
  const words = field("words");
  if (words === "") throw new Refused(400, "Write something first.");
  const by = byOf(c, "a letter of ours");
  return settleOrder(desk, order, [{ kind: "write", words }], by, onceOf(c, field, [words]));
}

/** Puts a sheet where it belongs. */
export async function place(c: Ask, { desk }: Front, field: Fields): Promise<Said> {
  const [mark, position, order] = [field("mark"), field("position"), field("order")];
  if (mark + position + order === "") throw new Refused(400, "Say a station, a position or an order.");
  if (position !== "" && !/^[1-9]\d?$/.test(position))
    throw new Refused(400, `“${position}” is not a position in a plate.`);
  const where = {
    ...(mark === "" ? {} : { mark }),
    ...(position === "" ? {} : { position: Number(position) }),
    ...(order === "" ? {} : { order }),
  };
  return settleSheet(desk, field("sheet"), where, byOf(c, field("why")));
}

/** Whoever acts on all of an order has seen it as it is. */
function againstSeen({ number, revision }: OrderRecord, field: Fields): Said | undefined {
  if (field("revision") === "" || field("revision") === `${revision}`) return undefined;
  return {
    done: false,
    words: `Nothing is done: order ${number} has changed since this page was opened. Here it is as it stands now.`,
  };
}

/** Hands an order to engraving. */
export async function release(c: Ask, { desk, put }: Front, number: string, field: Fields): Promise<Said> {
  if (put === undefined)
    throw new Refused(400, "The settings name no folder for what is released (release.folder).");
  const order = await orderOf({ desk }, number, field("buyer"));
  const against = againstSeen(order, field);
  if (against !== undefined) return against;
  try {
    const released = await releaseOrder(desk, number, visitorOf(c).account.name, put, order.buyer);
    return released.ok
      ? { done: true, words: `Released: ${released.path}` }
      : { done: false, words: `Not released: ${released.why.join("; ")}.` };
  } catch (cause) {
    // Packages are written once the record has the release.
    if (cause instanceof PackageThere)
      return { done: false, words: `Released; its package was not written: ${cause.message}.` };
    throw cause;
  }
}

/** Records what is engraved. */
export async function cut(c: Ask, { desk }: Front, number: string, field: Fields): Promise<Said> {
  const order = await orderOf({ desk }, number, field("buyer"));
  const against = againstSeen(order, field);
  if (against !== undefined) return against;
  const stations = field("stations")
    .split(",")
    .map((one) => one.trim())
    .filter((one) => one !== "");
  return recordCut(desk, order, stations, visitorOf(c).account.name);
}

/** Lets a letter in, puts it aside, or has its answer sent again. */
export async function actOnLetter(
  c: Ask,
  { desk }: Front,
  letter: number,
  what: string,
  field: Fields,
): Promise<Said> {
  const by = byOf(c, field("why"));
  if (what === "let-in") return letIn(desk, letter, by, field("as") || undefined);
  if (what === "aside") return putAside(desk, letter, by);
  return sendAgain(desk, letter, by);
}

async function orderOf({ desk }: Pick<Front, "desk">, number: string, buyer: string) {
  const orders = await desk.store.orders.named(number);
  const own = orders.filter((one) => buyer === "" || one.buyer === buyer);
  const [order] = own;
  if (order === undefined) throw new Refused(404, `No order “${number}” is known.`);
  if (own.length > 1) throw new Refused(400, `Several buyers have an order ${number}; act on its own page.`);
  return order;
}
