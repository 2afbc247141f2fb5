import { readFileSync } from "node:fs";
import { statementsIn } from "../../src/reading/reply/statements.ts";
import type { LetterFacts } from "../../src/reading/reply/tallies.ts";
import type { Count } from "../../src/trade/count.ts";
import { catalogue } from "../make/config.ts";

/** A letter beside clean sheets, and what came with it. */
export interface Note {
  readonly subject: string;
  readonly text: string;
  readonly facts: LetterFacts;
  /** Set aside before anything was tuned: every second one. */
  readonly aside: boolean;
}

/** Notes of a file. Each begins with a line such as `=== from: Rosa Imhoff | subject: EL-100 | devices: 2`. */
export function notesIn(file: string): Note[] {
  const notes = readFileSync(`tests/bench/notes/${file}.txt`, "utf8").split(/^=== /m).slice(1);
  return notes.map((note, i) => {
    const [head = "", ...lines] = note.split("\n");
    const said = new Map(head.split(" | ").map((field) => field.split(/: (.*)/) as [string, string]));
    const count = (name: string, usual: number): number[] => [Number(said.get(name) ?? usual)];
    return {
      subject: said.get("subject") ?? "",
      text: lines.join("\n").trim(),
      aside: i % 2 === 1,
      facts: {
        numbers: ["EL-100"],
        projects: ["Larkspur Library"],
        marks: (said.get("marks") ?? "S-101 S-102 S-103 S-104").split(" "),
        names: [said.get("from") ?? "Dana Whitlock"],
        finishes: ["Oat", "Ink"],
        otherFinishes: ["Chalk", "Soot", "Slate", "Milk", "Fern"],
        called: new Map(),
        sheets: [],
        earlier: [],
        files: [],
        attached: [],
        plates: count("plates", 4),
        devices: count("devices", 12),
      },
    };
  });
}

/** A sentence as it stands beside complete sheets, and whether a good clerk has to do something for it. */
export interface Sentence {
  readonly text: string;
  readonly label: "pass" | "person";
}

const read = (file: "sentences" | "beside"): Sentence[] => {
  const lines = readFileSync(`tests/bench/notes/${file}.jsonl`, "utf8").trim().split("\n");
  return lines.map((line) => JSON.parse(line) as Sentence);
};

export const sentencesIn = (): Sentence[] => read("sentences");

/** Short letters as they come in a working day. Every second one of a label was set aside. */
export const lettersIn = (label: Sentence["label"], aside: boolean): Note[] =>
  read("beside")
    .filter((one) => one.label === label)
    .filter((_, i) => (i % 2 === 1) === aside)
    .map(({ text }) => noteOf(text));

/** Sentences that sound like talk and are none, one a line. */
export function talesIn(): string[] {
  return readFileSync("tests/bench/notes/tales.txt", "utf8").trim().split("\n");
}

/**
 * Notes of a sentence or three, one a line: facts after which nothing may be made ("undone"), or talk ("at-ease").
 * Every second one was set aside.
 */
export function factsIn(file: "undone" | "at-ease", aside: boolean): string[] {
  const lines = readFileSync(`tests/bench/notes/${file}.txt`, "utf8").trim().split("\n");
  return lines.filter((_, i) => (i % 2 === 1) === aside);
}

/** A letter of this text, beside the sheets that most letters here come with. */
function noteOf(text: string): Note {
  const [{ facts } = { facts: undefined }] = notesIn("cover");
  if (facts === undefined) throw new Error("no notes");
  return { subject: "EL-100", text, facts, aside: false };
}

/** Whether the sentence is told in a short letter. */
export function isToldBeside(sentence: string): boolean {
  return toldIn(noteOf(`Hi,\n\nSheets attached.\n\n${sentence}\n\nThanks,\nDana`)).length > 0;
}

/** Names of files, one a line, as "honest" or "wishes" that speak against their sheets. */
export function namesIn(file: "honest" | "wishes", aside: boolean): string[] {
  const names = readFileSync(`tests/bench/notes/names-${file}.txt`, "utf8").split("\n");
  return names.filter((name, i) => name !== "" && (i % 2 === 1) === aside);
}

/** What a note says that its sheets do not: words for a person, and counts that are wrong. */
export function toldIn({ subject, text, facts }: Note): readonly string[] {
  const letter = { subject, text };
  const known = {
    facts,
    goods: catalogue,
    furniture: new Set<string>(),
    quoted: [],
    understood: new Set<string>(),
  };
  return statementsIn(letter, known).flatMap((one) => {
    if (one.kind === "counts" && one.counts.every((count) => isRight(count, facts))) return [];
    return "words" in one ? `${one.kind}: ${one.words}` : one.kind;
  });
}

/** Whether a count is that of the sheets that came. Of their layouts and sizes the notes here say nothing. */
function isRight(
  { of, number, layout, gangs }: Count,
  { devices, plates, attached }: Note["facts"],
): boolean {
  if (layout !== undefined || gangs !== undefined) return false;
  const all = plates.flatMap((some) => devices.map((others) => some + others));
  const right =
    of === "device" ? devices : of === "plate" ? plates : [...all, ...plates, ...devices, ...attached];
  return right.includes(number);
}
