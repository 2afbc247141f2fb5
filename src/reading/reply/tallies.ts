import { memory } from "../../trade/memory.ts";
import type { Sheet } from "../../trade/sheet.ts";
import { bareOf, withWholeMarks } from "./mark-series.ts";

/** What came with a letter. Words that only repeat it are told from other words by it. */
export interface LetterFacts {
  /** Order numbers on its sheets, and other numbers that the buyer has used with us. */
  readonly numbers: readonly string[];
  readonly projects: readonly string[];
  readonly marks: readonly string[];
  /** People, companies and towns on its sheets, and the names of the sender. */
  readonly names: readonly string[];
  /** The names of finishes and letterings that all its sheets have, and of the others that are made. */
  readonly finishes: readonly string[];
  readonly otherFinishes: readonly string[];
  /** The names of all finishes and letterings, by their codes. */
  readonly called: ReadonlyMap<string, string>;
  /** Names of its files. */
  readonly files: readonly string[];
  /**
   * How many sheets came with this letter, and together with the earlier letters of its orders. Either count is
   * right.
   */
  readonly plates: readonly number[];
  readonly devices: readonly number[];
  /** How many files came. */
  readonly attached: readonly number[];
  /** The sheets themselves, and those of earlier letters about the same orders. */
  readonly sheets: readonly Sheet[];
  readonly earlier: readonly Sheet[];
}

/** Signs for what has been understood. None of them is a letter. */
export const understood = { courtesy: "◆", fact: "◇", name: "◈", date: "△", tally: "○" } as const;

/** "no", "one", "two", each at the place of its number. */
export const numerals: readonly string[] =
  "no|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen|seventeen|eighteen|nineteen|twenty".split(
    "|",
  );
const spelt = `a pair of|a couple of|one more|another|an additional|a further|additional|a single|single|both|${numerals.slice(1).join("|")}`;
const between =
  "(?:(?:new|corridor|lobby|hall|office|kitchen|bathroom|entrance|corrected|revised|updated|fixed|remaining|missing|last|other|small|order|engraving|wall|push-?button|keypad|◆ ?|\\p{L}+-gang|\\d-gang|pdf|attached|more|additional|of|the|fill(?:ed|able)|completed|standalone|separate|total|different) ){0,4}";
const nouns =
  "plates?|plts?|devices?|devs?|singles?|keypads?|stations?|sheets?|forms?|files?|pdfs?|documents?|docs?|attachments?|ones?|for|at";
const tallied = new RegExp(
  `(?<![\\p{L}\\p{N}#.-])\\(?(\\d{1,4}|${spelt})\\)? ?(?:x|nos?\\.?)?(?: \\(\\d{1,4}\\))? ${between}(${nouns})(?: sheets?| forms?)?(?![\\p{L}\\p{N}-])`,
  "giu",
);
/** "One more at the desk", which is right if one came. */
const oneMore =
  /(?<![\p{L}\p{N}])((?:just )?one more|another(?: one)?)(?= (?:for|at|in|on|to)\b|\s*[,.!]|$)/giu;
/** "Plates: 4", "device sheets (12)". */
const listed =
  /(?<![\p{L}\p{N}])(?:(?:qty|quantity|number|no\.?|total|count) (?:of )?)?(plates?|devices?|singles?|stations?|sheets?|forms?|files?|pdfs?|docs?|documents?)(?: sheets?| forms?)?(?: ?[:=] ?(\d{1,4})| ?\((\d{1,4})\))(?![\p{L}\p{N}])/giu;

const day = "(?:mon|tues?|wed(?:nes)?|thu(?:rs)?|fri|sat(?:ur)?|sun)(?:day)?";
const month =
  "(?:jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)";
const dates = new RegExp(
  `(?<![\\p{L}\\p{N}])(?:${day}(?:'s)?|the \\d{1,2}(?:st|nd|rd|th)|${month}\\.? \\d{1,2}(?:st|nd|rd|th)?(?:[-–]\\d{1,2})?(?:,? 20\\d\\d)?|\\d{1,2}(?:st|nd|rd|th)?\\.? (?:of )?${month}(?: 20\\d\\d)?|\\d{1,2}[/.]\\d{1,2}(?:[/.]\\d{2,4})?|20\\d\\d-\\d\\d-\\d\\d|tomorrow|tonight|next (?:week|month)|(?:the )?end of (?:the )?(?:day|week|month|year)|christmas|eod|cob)(?![\\p{L}\\p{N}])`,
  "giu",
);

/** Numbers that count rooms, floors or pages and letters of a series. */
const places =
  /(?<![\p{L}\p{N}])(?:route|rte?|highway|hwy|exit|mile|rooms?|rm|floors?|fl|levels?|lvl|phases?|suites?|units?|bldg|buildings?|wings?|areas?|apt|pos|positions?|parts?|e-?mails?|batch|page|set|letters?|sections?|lot)\.? ?#?[a-z]?\d{1,4}[a-z]?(?:(?: ?(?:,|-|–|&|and|to|thru|through|of|\/) ?)#?[a-z]?\d{1,4}[a-z]?)*(?![\p{L}\p{N}])|(?<![\p{L}\p{N}])spec(?:ification)? (?:section )?\d\d ?\d\d ?\d\d(?![\p{L}\p{N}])|(?<![\p{L}\p{N}])(?:(?:bldg\.?|building|wing|tower|block|unit|suite|phase|area|section) [a-z]|\(?\d ?(?:of|\/) ?\d\)?|\d{1,2}-gang|\d(?:st|nd|rd|th) (?:floor|level|e-?mail|batch|half|part))(?![\p{L}\p{N}])/giu;

/**
 * Replaces facts that words repeat, dates, and counts that are right by signs. The digits of a wrong count stay, and
 * those of a number that nothing explains.
 */
export function withoutFacts(words: string, facts: LetterFacts): string {
  let rest = withWholeMarks(words, facts.marks);
  let bare = bareOf(rest);
  for (const { fact, sign, bare: bareFact } of longestFirst(facts)) {
    // Most facts are not there. To look for one takes a pattern, whose making takes longer than all else.
    if (!bare.includes(bareFact)) continue;
    const pattern = patternOf(fact);
    if (pattern === undefined) continue;
    rest = rest.replace(pattern, ` ${sign} `);
    bare = bareOf(rest);
  }
  const tally = (whole: string, typed: string, noun: string): string =>
    isRight(typed, noun, facts) ? ` ${understood.tally} ${noun} ` : whole;
  return rest
    .replace(tallied, tally)
    .replace(listed, (whole: string, noun: string, one?: string, other?: string) =>
      tally(whole, one ?? other ?? "", noun),
    )
    .replace(oneMore, (whole: string, typed: string) => tally(whole, typed, "one"))
    .replace(dates, understood.date)
    .replace(places, (place) => (/^pos/i.test(place) ? understood.fact : understood.name));
}

/** Facts as they are looked for. They are kept, since a letter has many lines. */
const longestFirst = memory(({ files, projects, numbers, marks, names, finishes }: LetterFacts) =>
  [
    ...[...projects, ...numbers, ...marks, ...finishes].map((fact) => ({ fact, sign: understood.fact })),
    ...[...files, ...names].map((fact) => ({ fact, sign: understood.name })),
  ]
    .map((one) => ({ ...one, bare: bareOf(one.fact.slice(0, 120)) }))
    .toSorted((one, other) => other.fact.length - one.fact.length),
);

/** A number in figures or in words. -1 for any other word. */
export function numberFrom(typed: string): number {
  return /^\d+$/.test(typed) ? Number(typed) : numerals.indexOf(typed.toLowerCase());
}

/** A fact as people type it: EL-100, el 100, EL100. */
export function patternOf(fact: string): RegExp | undefined {
  const parts = fact.slice(0, 120).match(/\p{L}+|\p{N}+/gu);
  if (parts === null || parts.join("").length < 2) return undefined;
  return new RegExp(
    `(?<![\\p{L}\\p{N}])#?${parts.join("[^\\p{L}\\p{N}]{0,3}")}(?:['’]s)?(?![\\p{L}\\p{N}])`,
    "giu",
  );
}

function isRight(typed: string, noun: string, { plates, devices, attached }: LetterFacts): boolean {
  const word = typed.toLowerCase();
  const count = /^both|pair|couple/.test(word) ? 2 : /one more|^another|^a/.test(word) ? 1 : numberFrom(word);
  const all = plates.flatMap((some) => devices.map((others) => some + others));
  const right = /^pl/i.test(noun)
    ? plates
    : /^(?:dev|single|keypad)/i.test(noun)
      ? devices
      : // A station is a plate with its devices, or a device that stands alone.
        [...all, ...plates, ...devices, ...attached];
  return right.includes(count) || (word === "one" && /^ones?$/i.test(noun));
}
