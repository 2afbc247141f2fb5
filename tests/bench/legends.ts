import { readFileSync } from "node:fs";

/** What was done to a legend; right ones are as they should be. */
export const kinds = ["right", "misspelt", "cut", "slipped"] as const;

export interface Legend {
  readonly rows: readonly string[];
  readonly kind: string;
  /** The word that was meant, where one is wrong. */
  readonly meant?: string;
  /** Set aside before anything was tuned. */
  readonly aside: boolean;
}

/** The fixed rule: the parity of the sum of the characters says which half. */
export function isAside(typed: string): boolean {
  return [...typed].reduce((sum, letter) => sum + letter.charCodeAt(0), 0) % 2 === 1;
}

/** Legends of a file: `RECEPTOIN > RECEPTION` is one and what was meant; "right" stands for a trap that is right as it is. */
export function legendsIn(file: string, kind: string): Legend[] {
  const lines = readFileSync(`tests/bench/legends/${file}.txt`, "utf8").split("\n").filter(Boolean);
  return lines.map((line) => {
    const [typed = "", meant] = line.split(" > ");
    const isRight = meant === undefined || meant === "right";
    return {
      rows: typed.split("/"),
      aside: isAside(typed),
      ...(isRight ? { kind: "right" } : { kind, meant }),
    };
  });
}

/** Characters that look like others: confusables by Unicode Technical Standard #39, and the full-width forms of Unicode. */
const twins: Readonly<Record<string, (letter: string) => string | undefined>> = {
  Cyrillic: (letter) => ({ A: "\u0410", C: "\u0421", H: "\u041D", J: "\u0408", S: "\u0405" })[letter],
  Greek: (letter) => ({ A: "\u0391", H: "\u0397" })[letter],
  "full-width": (letter) =>
    /[!-~]/.test(letter) ? String.fromCodePoint(letter.charCodeAt(0) + 0xfee0) : undefined,
  "digit for letter": (letter) => ({ O: "0", I: "1" })[letter],
  "letter for digit": (letter) => ({ "0": "O", "1": "I" })[letter],
};

/** Of every right legend one with a look-alike for the first character that has one; by the sort of look-alike. */
export function lookAlikes(right: readonly Legend[]): Legend[] {
  return Object.entries(twins).flatMap(([kind, twin]) =>
    right.flatMap(({ rows, aside }) => {
      const text = rows.join("/");
      const place = [...text].findIndex((letter) => letter !== "/" && twin(letter) !== undefined);
      if (place < 0) return [];
      const typed = text.slice(0, place) + twin(text.charAt(place)) + text.slice(place + 1);
      return [{ rows: typed.split("/"), kind, aside }];
    }),
  );
}
