import { readFileSync } from "node:fs";
import type { LetterFacts } from "../../src/reading/reply/tallies.ts";

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
        files: [],
        attached: [],
        plates: count("plates", 4),
        devices: count("devices", 12),
      },
    };
  });
}
