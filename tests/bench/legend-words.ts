/**
 * How well the checks of words do on legends written for this project: what they catch, and how often they ask
 * about a legend that is right. Half of the legends was set aside before anything was tuned.
 *
 *     node tests/bench/legend-words.ts [--misses]
 */
import { readFileSync } from "node:fs";
import type { Catalogue } from "../../src/catalogue/catalogue.ts";
import type { SheetCheck } from "../../src/checks/check.ts";
import { device, plate } from "../../src/checks/sample.ts";
import { lookAlikeLetter } from "../../src/checks/sheet/look-alike-letter.ts";
import { rowMaybeCutOff } from "../../src/checks/sheet/row-maybe-cut-off.ts";
import { spelling } from "../../src/checks/sheet/spelling.ts";
import { wordSlip } from "../../src/checks/sheet/word-slip.ts";
import { makeWords } from "../../src/lettering/words.ts";
import { catalogue, dictionary, glossary } from "../make/config.ts";

const asking: readonly SheetCheck[] = [rowMaybeCutOff, spelling, wordSlip, lookAlikeLetter];
const kinds = ["right", "misspelt", "cut", "slipped"] as const;
type Kind = (typeof kinds)[number];

interface Legend {
  readonly rows: readonly string[];
  readonly kind: Kind;
  readonly aside: boolean;
}

/** `RECEPTOIN > RECEPTION`: a legend and what was meant; "right" stands for a trap that is right as it is. */
const legends: Legend[] = kinds.flatMap((kind) =>
  readFileSync(`tests/bench/legends/${kind}.txt`, "utf8")
    .split("\n")
    .filter((line) => line !== "")
    .map((line) => {
      const [typed = "", meant] = line.split(" > ");
      // The fixed rule: the parity of the sum of the characters says which half.
      const aside = [...typed].reduce((sum, letter) => sum + letter.charCodeAt(0), 0) % 2 === 1;
      return { rows: typed.split("/"), kind: meant === "right" ? "right" : kind, aside };
    }),
);

/** Which checks ask about a legend, on a button, or above a gang if it is too long for a button. */
function asked({ rows }: Legend, words: Catalogue): string[] {
  const make = rows.some((row) => row.length > 8) ? plate : device;
  const sheet = make({ project: "Bench", legends: [{ face: "1", rows, plain: false }] });
  return asking.filter((check) => [...check.find(sheet, words)].length > 0).map(({ id }) => id);
}

const { words } = catalogue;
const methods: Readonly<Record<string, Catalogue>> = {
  "dictionary alone": {
    ...catalogue,
    words: makeWords({ words: new Map(), abbreviations: new Map(), projects: new Map() }, dictionary),
  },
  "dictionary and glossary": {
    ...catalogue,
    words: { ...words, likelier: () => undefined, isOfLegends: () => true },
  },
  "the same, and words weighed by how common they are": catalogue,
  // Both lists are by one author; this tells how much is owed to that.
  "the last, with every second entry of the glossary taken out": {
    ...catalogue,
    words: makeWords(
      {
        words: everySecond(glossary.words),
        abbreviations: everySecond(glossary.abbreviations),
        projects: new Map(),
      },
      dictionary,
    ),
  },
};

function everySecond<K, V>(all: ReadonlyMap<K, V>): Map<K, V> {
  return new Map([...all].filter((_, i) => i % 2 === 0));
}

const share = (some: number, all: number): string => `${some}/${all} ${((100 * some) / all).toFixed(1)} %`;

for (const [method, known] of Object.entries(methods)) {
  console.log(`\n${method}`);
  for (const aside of [false, true]) {
    const half = legends.filter((legend) => legend.aside === aside);
    const seen = half.map((legend) => ({ ...legend, by: asked(legend, known) }));
    console.log(aside ? "  half set aside" : "  half tuned on");
    for (const kind of kinds) {
      const all = seen.filter((legend) => legend.kind === kind);
      const by = asking
        .map(({ id }) => `${id} ${all.filter((legend) => legend.by.includes(id)).length}`)
        .join(", ");
      const some = all.filter((legend) => legend.by.length > 0);
      console.log(`    ${kind.padEnd(9)} asked about ${share(some.length, all.length).padEnd(15)} (${by})`);
      const wrong = all.filter((legend) => legend.by.length > 0 === (kind === "right"));
      if (process.argv.includes("--misses") && !aside)
        console.log(
          `      ${wrong.map(({ rows, by: ids }) => `${rows.join("/")} ${ids.join()}`).join("; ")}`,
        );
    }
  }
}
