import type { Sent, Written } from "../../make/thread.ts";

/** Something that happens in the week: a letter, a machine's letter, or what one of our own people does. */
export type Step = {
  /** When it comes, where the desk is. Its answer goes out `after` seconds later, twenty if nothing is said. */
  readonly at: string;
  readonly after?: number;
} & (
  | { readonly letter: string; readonly mail: Omit<Written, "to"> & { readonly replyTo?: string } }
  | { readonly letter: string; readonly absent: string }
  | { readonly release: string }
  | { readonly yes: string }
  | { readonly letIn: string; readonly as: string }
);

const greta = "Greta Sorley <greta@fallowmere.example>";
const jo = "Jo Linden <jo@oakmoor.example>";
const nell = "Nell Orr <nell@brackenholt.example>";
const ray = "Ray Dunmore <ray@ishcombe.example>";
const mia = "Mia Kest <mia@marrowby.example>";
const ana = "Ana Reyes <ana@quillgate.example>";

/** A device that stands alone. Each order is for a project of its own. */
function alone(order: string, mark: string, legend: string): Sent {
  return { mark, legend: [legend], fill: { order, project: `Project of ${order}` } };
}

function device(order: string, position: string, legend: string): Sent {
  const { mark, ...rest } = alone(order, "B-1", legend);
  return { mark, ...rest, fill: { ...rest.fill, standing: "in-plate", gangs: "2", position } };
}

function plate(order: string): Sent {
  const { fill } = alone(order, "B-1", "");
  return { mark: "B-1", kind: "plate", legend: ["SPA"], fill: { ...fill, gangs: "2" } };
}

/** A Cyrillic letter stops a sheet; words that no dictionary has are asked about. */
const uncut = "P\u041EOL";
const [unknown, slip] = ["SALONA", "KICHEN"];

/** The week from Monday, the 16th, to Friday, the 20th of November 2026; and a question of the week before. */
export const week: readonly Step[] = [
  { at: "12 10:00", letter: "old", mail: { from: ray, sheets: [alone("IS-900", "T-1", slip)] } },

  { at: "16 09:00", letter: "m1", mail: { from: greta, sheets: [alone("FM-1001", "T-1", "POOL")] } },
  { at: "16 09:30", letter: "m2", mail: { from: greta, sheets: [alone("FM-2002", "T-1", unknown)] } },
  { at: "16 10:00", letter: "m3", mail: { from: jo, sheets: [alone("OM-11", "T-1", uncut)] } },
  {
    at: "16 11:00",
    letter: "m4",
    mail: { from: jo, replyTo: "m3", sheets: [alone("OM-11", "T-1", "POOL")] },
  },
  {
    at: "16 13:00",
    letter: "m5",
    mail: { from: nell, sheets: [plate("BH-21"), device("BH-21", "1", "GYM")] },
  },
  {
    at: "16 15:00",
    letter: "m6",
    mail: { from: "Dale <dale@stranger.example>", sheets: [alone("FM-1001", "T-2", "POOL")] },
  },
  {
    at: "16 23:30",
    after: 600,
    letter: "m7",
    mail: { from: ray, sheets: [alone("IS-31", "T-1", slip), alone("IS-31", "T-2", unknown)] },
  },
  { at: "16 23:59", after: 120, letter: "m8", mail: { from: jo, sheets: [alone("OM-52", "T-1", "POOL")] } },

  { at: "17 08:00", letter: "t1", mail: { from: greta, replyTo: "m2", text: "1 YES" } },
  { at: "17 09:00", letter: "t2", mail: { from: nell, sheets: [device("BH-21", "2", "SAUNA")] } },
  { at: "17 10:00", letter: "t3", mail: { from: ray, replyTo: "m7", text: "CANCEL T-2" } },
  { at: "17 10:30", letter: "t4", mail: { from: ray, sheets: [alone("IS-31", "T-1", slip)] } },
  {
    at: "17 11:00",
    letter: "t5",
    mail: { from: greta, sheets: [alone("FM-3003", "T-1", "POOL"), alone("FM-3003", "T-2", uncut)] },
  },
  { at: "17 13:00", letter: "t6", mail: { from: mia, sheets: [alone("MB-61", "T-1", "POOL")] } },
  { at: "17 15:00", letter: "t7", mail: { from: ana, replyTo: "t6", text: "1 YES" } },
  { at: "17 16:00", release: "FM-1001" },
  {
    at: "17 17:00",
    letter: "t8",
    mail: { from: "Fallowmere <no-reply@fallowmere.example>", sheets: [alone("FM-4004", "T-1", "POOL")] },
  },

  { at: "18 09:00", letter: "w1", mail: { from: ray, sheets: [alone("IS-31", "T-1", "KITCHEN")] } },
  { at: "18 09:30", letter: "w2", mail: { from: greta, replyTo: "t5", text: "CANCEL order FM-3003" } },
  { at: "18 10:00", letter: "w3", mail: { from: jo, sheets: [plate("OM-73"), device("OM-73", "1", "GYM")] } },
  { at: "18 11:00", letter: "w4", mail: { from: jo, sheets: [device("OM-73", "2", uncut)] } },
  { at: "18 15:00", letter: "w5", absent: "greta@fallowmere.example" },

  { at: "19 10:00", letter: "h1", mail: { from: jo, replyTo: "w4", sheets: [device("OM-73", "2", "POOL")] } },
  { at: "19 10:30", letter: "h2", mail: { from: nell, sheets: [alone("BH-82", "T-1", slip)] } },
  { at: "19 11:30", yes: "BH-82" },
  { at: "19 13:00", letter: "h3", mail: { from: greta, sheets: [alone("FM-1001", "T-1", "GYM")] } },
  { at: "19 16:00", letter: "h4", mail: { from: ray, sheets: [alone("IS-93", "T-1", "POOL")] } },
  { at: "19 17:00", letIn: "t8", as: "greta@fallowmere.example" },

  { at: "20 09:00", letter: "f1", mail: { from: greta, sheets: [alone("FM-5505", "T-1", unknown)] } },
  { at: "20 10:00", letter: "f2", mail: { from: mia, sheets: [alone("MB-72", "T-1", uncut)] } },
  {
    at: "20 12:00",
    letter: "f3",
    mail: { from: mia, replyTo: "f2", sheets: [alone("MB-72", "T-1", "POOL")] },
  },
  {
    at: "20 13:00",
    letter: "f4",
    mail: { from: jo, sheets: [alone("OM-84", "T-1", "POOL"), alone("OM-95", "T-1", "POOL")] },
  },
  { at: "20 14:00", letter: "f5", mail: { from: jo, text: "Please have OM-84 packed in two crates." } },
  {
    at: "20 16:00",
    letter: "f6",
    mail: {
      from: nell,
      sheets: [alone("BH-93", "T-1", uncut), alone("BH-93", "T-2", slip), alone("BH-93", "T-3", "POOL")],
    },
  },
];

/** What comes in the week after, and ends what the week left open. */
export const afterwards: readonly Step[] = [
  { at: "23 09:00", letter: "a1", mail: { from: greta, replyTo: "f1", text: "1 YES" } },
  { at: "23 10:00", letter: "a2", mail: { from: ray, sheets: [alone("IS-900", "T-1", "KITCHEN")] } },
  { at: "23 11:00", letter: "a3", mail: { from: ana, replyTo: "f3", text: "2 YES" } },
  { at: "23 12:00", letter: "a4", mail: { from: nell, replyTo: "f6", text: "CANCEL T-1\nCANCEL T-2" } },
  { at: "23 13:00", letIn: "m6", as: "greta@fallowmere.example" },
];
