/**
 * How often a right legend is asked about, and how many wrong ones are found, in ten kinds of buildings. Their
 * legends are by somebody who had seen neither the rules nor the word lists. One half was before the eyes of whoever
 * made the rules, the other was set aside. Of that one the rules asked at first sight about 5 of 327 right legends and
 * 1 of 31 right devices, and found 53 of 53 misspelt words, 33 of 34 that were cut off and 26 of 38 slips; the rules
 * before them had asked about 31 of 297 right ones of the first half, and found 11 of its 52 slips. Neither its hits
 * nor its misses have been looked at.
 *
 * Of the walls they asked at first sight about 2 of 94 right legends and found 35 of 46 slips of the open half, and 1
 * of 98 and 29 of 34 of the half set aside. Whoever wrote them made the rules too, so their half set aside says less
 * than the other one.
 *
 * Since then the rules were tuned once more, and the counts of the halves set aside were looked at on the way. So a third
 * set was written blind, by somebody who had seen nothing: sixty devices, 100 slips, 60 misspelt words, 30 cut off. At
 * first sight the rules asked about 9 of its 408 right legends, and found 58 of 60, 26 of 30 and 69 of 100; the rules
 * before that tuning asked about 11 and found 65 slips. The misses of its first half have been looked at since; of the
 * other nothing but the counts at first sight: 5 of 233, 26 of 27, 10 of 12 and 27 of 43.
 *
 *     npx node tests/bench/legend-buildings.ts [--misses]
 */
import type { Words } from "../../src/catalogue/words.ts";
import { namesOfPeople } from "../../src/commands/dictionaries.ts";
import { everyBuilding, withBuildings } from "../../src/lettering/buildings/known.ts";
import { makeWords } from "../../src/lettering/words.ts";
import { dictionary, glossary, ownGlossary } from "../make/config.ts";
import { buildingDevices, buildingLegends, legendSets } from "./buildings.ts";
import { askedOf, isOn } from "./judged.ts";
import { kinds } from "./legends.ts";

const american = { "en-US": dictionary("dictionary-en") };
const words = makeWords(glossary, american);
/** Which lists are about a kind of building. */
const listsOf: Readonly<Record<string, readonly string[]>> = {
  worship: ["worship"],
  health: ["health"],
  "ships and boats": ["ships"],
  "courts and civic": ["civic"],
  "laboratories and universities": ["learning"],
  "stages and broadcasting": ["stages"],
  homes: ["homes"],
  "hotels and restaurants": ["hotels"],
  "offices and industry": ["offices"],
  "schools and sports halls": ["learning", "sports"],
};
const people = await namesOfPeople();
/** The words without the lists of one kind of building: what a kind that nobody has thought of meets. */
const without = new Map(
  Object.entries(listsOf).map(([building, lists]) => {
    const others = everyBuilding.filter(({ name }) => !lists.includes(name));
    return [building, makeWords(withBuildings(ownGlossary, people, others), american)];
  }),
);
const tellsMisses = process.argv.includes("--misses");

/** One legend or device: whether it was asked about, and what to print of it if that is wrong. */
interface Outcome {
  readonly building: string;
  readonly column: string;
  readonly asked: boolean;
  readonly shown: string;
}

const columns = [...kinds, "right device", "wrong device", "else on it"];

type LegendSet = (typeof legendSets)[number];

const ofLegends = (set: LegendSet, wordsFor: (building: string) => Words) =>
  buildingLegends(set).map((legend) => {
    const faces = [legend.rows, ...legend.beside.map((other) => other.split("/"))];
    const problems = askedOf(faces, wordsFor(legend.building)).filter((problem) => isOn(0, problem));
    const said = problems.map(({ check, facts }) => `${check} ${String(facts["meant"])}`).join("; ");
    const { building, kind: column, aside } = legend;
    return {
      building,
      column,
      aside,
      asked: problems.length > 0,
      shown: `${legend.rows.join("/")}  ${said}`,
    };
  });

const ofDevices = (set: LegendSet, wordsFor: (building: string) => Words) =>
  buildingDevices(set).flatMap(({ building, faces, wrong, aside }) => {
    const problems = askedOf(
      faces.map((face) => face.split("/")),
      wordsFor(building),
    );
    const said = problems
      .map(({ facts }) => `${String(facts["typed"])}: ${String(facts["meant"])}`)
      .join("; ");
    const outcome = (column: string, asked: boolean) => [
      { building, column, aside, asked, shown: `${faces.join("; ")}  ${said}` },
    ];
    if (wrong === undefined) return outcome("right device", problems.length > 0);
    const at = faces.indexOf(wrong.typed);
    if (at < 0) throw new Error(`no face says ${wrong.typed}`);
    const onIt = problems.filter((problem) => isOn(at, problem));
    return [
      ...outcome("wrong device", onIt.length > 0),
      ...outcome("else on it", problems.length > onIt.length),
    ];
  });

function printed(outcomes: readonly Outcome[]): void {
  const share = (these: readonly Outcome[]): string => {
    const asked = these.filter((one) => one.asked).length;
    return (these.length === 0 ? "" : `${asked}/${these.length}`).padStart(9);
  };
  const row = (name: string, these: readonly Outcome[]): void =>
    console.log(
      `    ${name.padEnd(30)}${columns.map((column) => share(these.filter((one) => one.column === column)).padStart(14)).join("")}`,
    );
  console.log(`    ${"asked about".padEnd(30)}${columns.map((column) => column.padStart(14)).join("")}`);
  for (const [building, these] of Map.groupBy(outcomes, (one) => one.building)) row(building, these);
  row("all", outcomes);
}

const wordsOf: readonly (readonly [method: string, wordsFor: (building: string) => Words])[] = [
  ["as it is", () => words],
  ["without the lists of that kind of building", (building) => without.get(building) ?? words],
];

for (const set of legendSets)
  for (const [method, wordsFor] of wordsOf)
    for (const aside of [false, true]) {
      const all = [...ofLegends(set, wordsFor), ...ofDevices(set, wordsFor)];
      const outcomes = all.filter((one) => one.aside === aside);
      console.log(`${set}, ${method}, ${aside ? "half set aside" : "half tuned on"}`);
      printed(outcomes);
      if (tellsMisses && !aside) printedMisses(outcomes);
    }

function printedMisses(outcomes: readonly Outcome[]): void {
  for (const column of columns) {
    const shouldBe = /^(misspelt|cut|slipped|wrong device)$/.test(column);
    console.log(`\n  ${column}: ${shouldBe ? "not found" : "asked about"}`);
    for (const { shown, asked, column: its } of outcomes)
      if (its === column && asked !== shouldBe) console.log(`    ${shown}`);
  }
}
