import { dateIn } from "../calendar/dates.ts";
import { takeNote } from "../intake/check-note.ts";
import type { Desk } from "../intake/desk.ts";
import { takeDue } from "../intake/take.ts";
import type { Act } from "../trade/note.ts";
import type { NoteDescription } from "./describe.ts";

/** Has a desk take what one of our own people does. `letterOf` tells the number of a letter by its name. */
export async function playNote(
  desk: Desk,
  note: NoteDescription,
  letterOf: (name: string) => number,
): Promise<void> {
  const by = { name: note.by, why: note.why };
  const now = desk.clock.now();
  if (!("letter" in note)) await noted(desk, note, note.order, actsOf(desk, note));
  else if (note.does === "aside") await putAside(desk, note, letterOf(note.letter));
  else {
    const { from = "" } = await desk.store.letters.read(letterOf(note.letter));
    await desk.store.letters.letIn(letterOf(note.letter), { sender: from }, by, now);
  }
  while (await takeDue(desk));
}

function actsOf({ clock, timeZone }: Desk, note: Extract<NoteDescription, { order: string }>): Act[] {
  if (note.does === "release") return [{ kind: "release", on: dateIn(clock.now(), timeZone) }];
  if (note.does === "cut") return [{ kind: "cut", stations: note.stations }];
  const { does } = note;
  return note.points.map((number) => ({ kind: does, number }));
}

async function putAside(desk: Desk, note: NoteDescription, letter: number): Promise<void> {
  const { orders } = await desk.store.letters.read(letter);
  for (const number of orders) await noted(desk, note, number, [{ kind: "read", letter }]);
  if (orders.length === 0)
    await desk.store.letters.putAside(letter, { name: note.by, why: note.why }, desk.clock.now());
}

async function noted(
  desk: Desk,
  { by, why, date }: NoteDescription,
  number: string,
  acts: readonly Act[],
): Promise<void> {
  const [order] = await desk.store.orders.named(number);
  const id = `${date} ${number}`;
  const taken = await takeNote(desk, { id, buyer: order?.buyer ?? "", order: number, by, why, acts });
  const record = taken.kind === "wrong" ? taken : await desk.store.letters.read(taken.letter);
  if (taken.kind !== "judged" || record.why?.startsWith("the order has not") === true)
    throw new Error(`${by} on ${date}: ${record.why ?? taken.kind}`);
}
