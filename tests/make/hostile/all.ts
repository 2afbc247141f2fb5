import { containers } from "./containers.ts";
import { hostileLetters } from "./letters.ts";
import { hostileLists } from "./lists.ts";
import { pageBombs } from "./page-bombs.ts";
import { pdfBombs } from "./pdf-bombs.ts";
import { pdfMazes } from "./pdf-mazes.ts";

export interface Hostile {
  readonly name: string;
  readonly op: "letter" | "file";
  /** Its fields can be read, whatever its pages hold. */
  readonly fields?: true;
  readonly make: () => Uint8Array;
}

/** Everything that is made to bring its reader down. Made when asked for, since much of it is large. */
export const hostile: readonly Hostile[] = [
  ...Object.entries(pageBombs).map(([name, make]): Hostile => ({ name, op: "file", fields: true, make })),
  ...Object.entries({ ...pdfBombs, ...pdfMazes, ...containers, ...hostileLists }).map(
    ([name, make]): Hostile => ({ name, op: "file", make }),
  ),
  ...Object.entries(hostileLetters).map(([name, make]): Hostile => ({ name, op: "letter", make })),
];
