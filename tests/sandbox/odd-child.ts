import { writeFileSync } from "node:fs";
import type { FileFacts, PdfFacts } from "../../src/reading/facts.ts";
import { type Openers, serve } from "../../src/sandbox/serve.ts";

/** A reader process that does what its file tells it to: everything a damaged or hostile file may bring about. */

const fields: PdfFacts = {
  kind: "pdf",
  fields: [{ name: "Order no", kind: "text", values: ["BW-2207"] }],
  widgets: [],
  pageCount: 1,
  dynamic: false,
  portfolio: false,
  recovered: false,
};

/** Larger than what a pipe takes at once. */
const manyFields: PdfFacts = {
  ...fields,
  fields: Array.from({ length: 20_000 }, (_, i) => ({
    name: `${i}`,
    kind: "text",
    values: ["x".repeat(50)],
  })),
};

/** Facts that carry numbers. */
function said(...numbers: readonly number[]): FileFacts {
  return { kind: "archive", files: [], left: numbers.map((n) => ({ name: String(n), kind: "damaged" })) };
}

type Early = (answer: FileFacts) => Promise<void>;

const deeds: Readonly<Record<string, (early: Early) => unknown>> = {
  answer: () => ({ ...fields, pages: [] }),
  "say who": () => said(process.pid),
  "say when": async () => {
    const began = Date.now();
    await new Promise((resolve) => setTimeout(resolve, 500));
    return said(began, Date.now());
  },
  work: () => {
    const taken = ({ user, system }: NodeJS.CpuUsage): number => user + system;
    const begun = process.cpuUsage();
    while (taken(process.cpuUsage(begun)) < 500_000);
    return { kind: "other" };
  },
  "never end": endless,
  "never resolve": () => new Promise(() => undefined),
  die: () => process.exit(0),
  throw: () => Promise.reject(new Error("broken")),
  "throw elsewhere": () => {
    setTimeout(() => {
      throw new Error("broken");
    });
    return new Promise(() => undefined);
  },
  "leave a rejection behind": () => {
    void Promise.reject(new Error("nobody holds this"));
    return new Promise((resolve) => setTimeout(resolve, 20, { kind: "other" }));
  },
  "fill buffers": async () => {
    const kept: Buffer[] = [];
    for (;;) {
      kept.push(Buffer.alloc(10_000_000, 1));
      await new Promise(setImmediate);
    }
  },
  "fill the heap": () => {
    const kept: unknown[] = [];
    for (;;) kept.push(Array.from({ length: 10_000 }, () => 0.5));
  },
  "keep much": () => {
    keep.push(Buffer.alloc(200_000_000, 1));
    return { kind: "other" };
  },
  "talk nonsense": () => ({ kind: "pdf", fields: "none" }),
  "be ended by others": () => process.kill(process.pid, "SIGTERM") && { kind: "other" },
  write: () => {
    writeFileSync("written-by-a-sheet", "x");
    return { kind: "other" };
  },
  "early, then never end": async (early) => {
    await early(manyFields);
    endless();
  },
  "early, then die": async (early) => {
    await early(fields);
    process.exit(1);
  },
  "early, then fill buffers": async (early) => {
    await early(fields);
    await deeds["fill buffers"]?.(early);
  },
};

const keep: Buffer[] = [];

function endless(): never {
  for (;;);
}

/** Forms take it a while, as long as a slow file. */
async function prepare(): Promise<void> {
  await deeds["work"]?.(() => Promise.resolve());
  await deeds["work"]?.(() => Promise.resolve());
}

const openers: Openers = {
  letter: () => Promise.reject(new Error("no letters here")),
  sender: () => new Promise(() => undefined),
  mark: () => Promise.reject(new Error("no marks here")),
  page: () => Promise.reject(new Error("no pages here")),
  outline: () => Promise.reject(new Error("no outlines here")),
  file: async (bytes, early) => (await deeds[Buffer.from(bytes).toString()]?.(early)) as FileFacts,
};

serve(openers, prepare);
