import { type Glossary, readGlossary } from "../glossary.ts";
import { plainWord } from "../slips.ts";
import type { Building } from "./building.ts";
import { civic } from "./civic.ts";
import { compounds } from "./compounds.ts";
import { confused } from "./confused.ts";
import { elsewhere } from "./elsewhere.ts";
import { health } from "./health.ts";
import { homes } from "./homes.ts";
import { hotels } from "./hotels.ts";
import { learning } from "./learning.ts";
import { names } from "./names.ts";
import { odd } from "./odd.ts";
import { offices } from "./offices.ts";
import { ordinary } from "./ordinary.ts";
import { ships } from "./ships.ts";
import { sports } from "./sports.ts";
import { stages } from "./stages.ts";
import { works } from "./works.ts";
import { worship } from "./worship.ts";

export const everyBuilding: readonly Building[] = [
  worship,
  health,
  ships,
  civic,
  learning,
  sports,
  stages,
  homes,
  hotels,
  offices,
  works,
  ordinary,
  compounds,
  elsewhere,
  names,
  confused,
  odd,
];

/**
 * A desk's own glossary, and behind it what is known of all kinds of buildings. Where they disagree, its own holds.
 * `people` are further names of people, one a line.
 */
export function withBuildings(own: Glossary, people: string, buildings = everyBuilding): Glossary {
  const all = [own, ...buildings.map(read)];
  const joined = <V>(
    pick: (one: Glossary) => ReadonlyMap<string, readonly V[]>,
  ): Map<string, readonly V[]> => {
    const made = new Map<string, readonly V[]>();
    for (const [word, more] of all.flatMap((one) => [...pick(one)]))
      made.set(word, [...new Set([...(made.get(word) ?? []), ...more])]);
    return made;
  };
  return {
    words: new Map([...own.words, ...all.flatMap(({ words }) => [...words]), ...own.words]),
    abbreviations: joined(({ abbreviations }) => abbreviations),
    lettered: own.lettered,
    followers: own.followers,
    phrases: joined(({ phrases }) => phrases),
    company: all.flatMap(({ company }) => company),
    never: joined(({ never }) => never),
    confused: joined((one) => one.confused),
    odd: new Set(all.flatMap((one) => [...one.odd])),
    foreign: new Set(all.flatMap((one) => [...one.foreign])),
    names: new Set([...all.flatMap((one) => [...one.names]), ...people.split(/\r?\n/).map(plainWord)]),
    projects: own.projects,
  };
}

function read({ name, text }: Building): Glossary {
  const written = readGlossary(text, name);
  if (!written.ok)
    throw new Error(
      `the words of ${name}: ${written.faults.map(({ line, what }) => `${line}: ${what}`).join("; ")}`,
    );
  return written.value;
}
