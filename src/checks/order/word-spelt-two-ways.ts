import type { Judgement } from "../../lettering/judge-word.ts";
import { makeNearby } from "../../lettering/nearby.ts";
import { plainWord } from "../../lettering/slips.ts";
import { at, defineOrderCheck } from "../check.ts";
import { everyWord } from "../judged.ts";
import { subject } from "../sample.ts";

/** Of shorter words that are in no list, many are one letter apart. */
const shortest = 6;

export const wordSpeltTwoWays = defineOrderCheck({
  id: "word-spelt-two-ways",
  title: "A word that is in no list is spelt in two ways",
  severity: "asks",
  sender: "settles",
  source: { kind: "common practice" },
  why: "Nobody but the buyer knows how a name is spelt. Where an order spells it in two ways that are one letter apart, one of them is mostly a slip.",
  wordings: {
    legends: {
      says: "“{typed}” and “{other}” in this order are one letter apart.",
      fix: "If they should be the same, send the sheet that is wrong again.",
    },
    project: {
      says: "“{typed}” and “{other}” in the project's name are one letter apart.",
      fix: "If you mean “{other}”, send the sheet again.",
    },
  },
  passing: [
    {
      shows: "one way throughout",
      given: ({ aloneDevice }) => subject([aloneDevice({}, { "1": ["ZWINDLE"], plate: ["ZWINDLE"] })]),
    },
    {
      shows: "one and several",
      given: ({ aloneDevice }) => subject([aloneDevice({}, { "1": ["ZWINDLE"], plate: ["ZWINDLES"] })]),
    },
  ],
  failing: [
    {
      shows: "a letter left out of a name",
      given: ({ aloneDevice }) => subject([aloneDevice({}, { "1": ["ZWNDLE"], plate: ["ZWINDLE"] })]),
      wording: "legends",
      says: "“ZWNDLE” and “ZWINDLE” in this order are one letter apart.",
    },
    {
      shows: "the project's name with a letter left out",
      given: ({ aloneDevice }) =>
        subject([aloneDevice({ project: "Zwindlekop Hall" }, { plate: ["ZWINDLKOP"] })]),
      wording: "project",
      says: "“ZWINDLKOP” and “ZWINDLEKOP” in the project's name are one letter apart.",
      fix: "If you mean “ZWINDLEKOP”, send the sheet again.",
    },
  ],
  *find({ order: { sheets } }, catalogue, say) {
    const typed = sheets.flatMap((sheet) => everyWord(sheet, catalogue).map((word) => ({ ...word, sheet })));
    const legends = Map.groupBy(typed, ({ text }) => plainWord(text));
    const named = sheets.flatMap(({ project = "" }) => project.match(/[\p{L}']+/gu) ?? []).map(plainWord);
    const projects = new Set(named.filter((word) => !legends.has(word)));
    const near = makeNearby([...legends.keys(), ...projects].filter((word) => word.length >= shortest));
    const told = new Set<string>();
    for (const [word, places] of legends) {
      const [kind] = places.map(({ judgement }) => strangeness(judgement));
      if (kind === undefined || word.length < shortest) continue;
      for (const other of near(word, 1)) {
        const there = legends.get(other);
        if (other === word || told.has(other) || hasOtherEnd(word, other)) continue;
        // The name of a person may be near a word.
        if (kind === "name" && there?.every(({ judgement }) => judgement.is === "right")) continue;
        told.add(word);
        const spots = [...places, ...(there ?? [])].flatMap(({ sheet, place }) => at(sheet, place));
        const [one] = places;
        yield say(there === undefined ? "project" : "legends", { typed: one?.text ?? word, other }, spots);
      }
    }
  },
});

/** Whether a word is in no list, or taken as a name only. */
function strangeness(judgement: Judgement): "unknown" | "name" | undefined {
  if (judgement.is === "name") return "name";
  return judgement.is === "unknown" && judgement.meant.length === 0 ? "unknown" : undefined;
}

/** One and several, or other forms of one word, differ at their ends. */
function hasOtherEnd(one: string, other: string): boolean {
  return one.startsWith(other) || other.startsWith(one) || one.slice(0, -1) === other.slice(0, -1);
}
