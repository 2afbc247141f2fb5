/**
 * How well the checks of words do on legends written for this project: what they catch, how often they ask about a
 * legend that is right, and whether the word that they suggest first is the one that was meant. Half of the English
 * legends was set aside before anything was tuned; of the French and Spanish ones both halves have been looked at.
 *
 *     npx node tests/bench/legend-words.ts [--misses]
 */
import type { Words } from "../../src/catalogue/words.ts";
import { type Glossary, readGlossary } from "../../src/lettering/glossary.ts";
import { makeWords } from "../../src/lettering/words.ts";
import { dictionary, glossary, must } from "../make/config.ts";
import { askedOf, asking } from "./judged.ts";
import { kinds, type Legend, legendsIn, lookAlikes } from "./legends.ts";
import { bySlipsAlone, noisyChannel } from "./weighings.ts";

const english = kinds.flatMap((kind) => legendsIn(kind, kind));
const american = { "en-US": dictionary("dictionary-en") };
const all = { ...american, fr: dictionary("dictionary-fr"), es: dictionary("dictionary-es") };
const emptied = must(readGlossary("", "empty"));
const words = makeWords(glossary, american);
// Glossary and legends are by one author; this tells how much is owed to that.
const everySecond = <K, V>(entries: ReadonlyMap<K, V>) => new Map([...entries].filter((_, i) => i % 2 === 0));
const half: Glossary = {
  words: everySecond(glossary.words),
  abbreviations: everySecond(glossary.abbreviations),
  lettered: new Set([...glossary.lettered].filter((_, i) => i % 2 === 0)),
  followers: everySecond(glossary.followers),
  phrases: everySecond(glossary.phrases),
  company: glossary.company.filter((_, i) => i % 2 === 0),
  odd: new Set([...glossary.odd].filter((_, i) => i % 2 === 0)),
  foreign: glossary.foreign,
  names: glossary.names,
  never: everySecond(glossary.never),
  confused: everySecond(glossary.confused),
  projects: new Map(),
};

const everyone = makeWords(glossary, all);
const [french, spanish] = [legendsIn("french", "misspelt"), legendsIn("spanish", "misspelt")];
const trials: readonly (readonly [method: string, words: Words, legends: readonly Legend[]])[] = [
  ["dictionary alone", makeWords(emptied, american), english],
  [
    "dictionary and glossary, not weighed by how common words are",
    { ...words, likelier: () => undefined, isOfLegends: () => true },
    english,
  ],
  ["as it is", words, english],
  ["as it is, every second entry of the glossary taken out", makeWords(half, american), english],
  ["as it is, French and Spanish named as well", everyone, english],
  ["the same, French legends", everyone, french],
  ["the same, Spanish legends", everyone, spanish],
  ["as it is, look-alikes", words, lookAlikes(english.filter(({ kind }) => kind === "right"))],
];

/** What the checks say of a legend. */
function judged(legend: Legend, known: Words) {
  const problems = askedOf([legend.rows], known);
  const first = problems.flatMap(({ facts }) => facts["meant"] ?? [])[0];
  return { ...legend, first, by: [...new Set(problems.map(({ check }) => check))] };
}

/** Of right legends and of those cut, the ones of which little is left to tell by: printed once more by themselves. */
function partOf({ kind, rows }: Legend): string | undefined {
  const full = rows.filter((row) => row.length === (rows.some(({ length }) => length > 8) ? 12 : 8));
  const end = full.some((row) => row.endsWith(" "))
    ? "ends in a blank"
    : full.some((row) => / [\p{L}]$/u.test(row))
      ? "ends in a letter"
      : undefined;
  return end === undefined || !/^(right|cut)$/.test(kind) ? undefined : `${kind}, ${end}`;
}

const share = (some: number, of: number): string =>
  `${some}/${of} ${((100 * some) / of).toFixed(1)} %`.padEnd(16);

for (const [method, known, legends] of trials) {
  console.log(`\n${method}`);
  for (const aside of [false, true]) {
    console.log(aside ? "  half set aside" : "  half tuned on");
    const seen = legends.filter((legend) => legend.aside === aside).map((legend) => judged(legend, known));
    const byKind = [...Map.groupBy(seen, (legend) => legend.kind)];
    const parts = [...Map.groupBy(seen, partOf)].filter(([part]) => part !== undefined);
    for (const [kind = "", these] of [...byKind, ...parts]) {
      const asked = these.filter(({ by }) => by.length > 0);
      const meaning = these.filter(({ meant }) => meant !== undefined);
      const first = meaning.filter((legend) => legend.first === legend.meant);
      const by = asking.map(
        ({ id }) => [id, these.filter((legend) => legend.by.includes(id)).length] as const,
      );
      const counts = by.filter(([, n]) => n > 0).map(([id, n]) => `${id} ${n}`);
      console.log(
        `    ${kind.padEnd(28)} asked about ${share(asked.length, these.length)}`,
        meaning.length > 0 ? `first is meant ${share(first.length, meaning.length)}` : "",
        `(${counts.join(", ")})`,
      );
      const wrong = these.filter(
        ({ by: ids, ...one }) => ids.length > 0 === kind.startsWith("right") || one.first !== one.meant,
      );
      if (process.argv.includes("--misses") && !aside)
        for (const one of wrong)
          console.log(`      ${one.rows.join("/")} ${one.by.join()} ${String(one.first)}`);
    }
  }
}

console.log("\nfirst suggestion is what was meant: as it is; by slips alone; by a noisy channel");
for (const [set, legends, own, languages] of [
  ["English", english, glossary, american],
  ["English, half the glossary", english, half, american],
  ["French", french, glossary, all],
  ["Spanish", spanish, glossary, all],
] as const) {
  const ways = [undefined, bySlipsAlone, noisyChannel].map((weigh) => makeWords(own, languages, weigh));
  for (const aside of [false, true]) {
    const wrong = legends.filter(({ meant, aside: is }) => meant !== undefined && is === aside);
    const right = ways.map(
      (way) => wrong.filter((legend) => judged(legend, way).first === legend.meant).length,
    );
    console.log(
      `  ${set.padEnd(27)} ${aside ? "set aside" : "tuned on "} ${right.map((n) => share(n, wrong.length)).join("")}`,
    );
  }
}
