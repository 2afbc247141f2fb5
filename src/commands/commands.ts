import type { Command } from "./command.ts";

/** A command as `burin --help` and README list it. */
export interface Listed {
  readonly name: string;
  /** What follows the name on the command line: "PATH…". */
  readonly takes: string;
  readonly summary: string;
  /** Commands are loaded when they are wanted, since all together take a second. */
  readonly load: () => Promise<Command>;
}

/** Every command, in the order of the table. */
export const commands: readonly Listed[] = [
  {
    name: "demo",
    takes: "[DIR]",
    summary: "Plays a mailbox of three weeks: builds the letters, answers each, shows where everything lies.",
    load: async () => (await import("./demo.ts")).demo,
  },
  {
    name: "check",
    takes: "PATH…",
    summary: "Checks PDFs, letters or folders as one submission and prints the report.",
    load: async () => (await import("./check.ts")).check,
  },
  {
    name: "proof",
    takes: "PATH…|NUMBER",
    summary: "Draws at true scale what would be cut.",
    load: async () => (await import("./proof.ts")).proof,
  },
  {
    name: "work",
    takes: "",
    summary: "Reads the mailboxes and answers every letter once.",
    load: async () => (await import("./work.ts")).work,
  },
  {
    name: "blank",
    takes: "DIR",
    summary: "Writes the blank sheets and the station list, to be filled in and sent back.",
    load: async () => (await import("./blank.ts")).blank,
  },
  {
    name: "fill",
    takes: "LIST",
    summary: "Fills in the order sheets of a station list.",
    load: async () => (await import("./fill.ts")).fill,
  },
  {
    name: "edition",
    takes: "FORM.pdf",
    summary: "Writes the skeleton of an edition from the fields of your own form.",
    load: async () => (await import("./edition.ts")).edition,
  },
  {
    name: "order",
    takes: "NUMBER",
    summary: "Shows an order: its stations, its sheets, what stands in its way, its letters.",
    load: async () => (await import("./order.ts")).order,
  },
  {
    name: "people",
    takes: "",
    summary: "Lists what waits for somebody, first things first.",
    load: async () => (await import("./people.ts")).people,
  },
  {
    name: "settle",
    takes: "[NUMBER POINT…]",
    summary: "Settles points of an order, or a letter, for one of our own people.",
    load: async () => (await import("./settle.ts")).settle,
  },
  {
    name: "release",
    takes: "NUMBER",
    summary: "Hands an order that has passed to the engraving room.",
    load: async () => (await import("./release.ts")).release,
  },
  {
    name: "cut",
    takes: "[NUMBER [STATION…]]",
    summary: "Records what of a released order is engraved.",
    load: async () => (await import("./cut.ts")).cut,
  },
  {
    name: "day",
    takes: "[YYYY-MM-DD]",
    summary:
      "Audits a day, or the days from one to another: letters, orders, slips, questions, and what they teach.",
    load: async () => (await import("./day.ts")).day,
  },
  {
    name: "desk",
    takes: "",
    summary: "Serves the page for customer service, without the worker.",
    load: async () => (await import("./desk.ts")).desk,
  },
  {
    name: "user",
    takes: "[USER]",
    summary: "Lets somebody in to the desk's page, or lists who may come in.",
    load: async () => (await import("./user.ts")).user,
  },
  {
    name: "erase",
    takes: "[ADDRESS]",
    summary: "Erases a person's letters and orders, or all that is old enough; figures stay.",
    load: async () => (await import("./erase.ts")).erase,
  },
  {
    name: "backup",
    takes: "FILE",
    summary: "Writes the whole record into one file, while the worker goes on.",
    load: async () => (await import("./backup.ts")).backup,
  },
  {
    name: "restore",
    takes: "FILE",
    summary: "Makes a record of a backup, where there is none.",
    load: async () => (await import("./restore.ts")).restore,
  },
  {
    name: "move",
    takes: "RECORD",
    summary: "Copies the whole record into another, on this machine or on a PostgreSQL server.",
    load: async () => (await import("./move.ts")).move,
  },
  {
    name: "explain",
    takes: "[ID]",
    summary: "Lists every check, or explains one with its reason, source and examples.",
    load: async () => (await import("./explain.ts")).explain,
  },
  {
    name: "settings",
    takes: "",
    summary: "Reads and proves settings, catalogue, glossary and editions, and says what they come to.",
    load: async () => (await import("./settings.ts")).settings,
  },
];
