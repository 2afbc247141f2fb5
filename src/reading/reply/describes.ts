import type { Sheet } from "../../trade/sheet.ts";
import { type Came, facesOf, isDevice, isPlate, stripOf } from "./came.ts";
import { type LetterFacts, numberFrom } from "./tallies.ts";
import { hasSigns, tokensOf } from "./word-bag.ts";

/*
 * Sentences that describe the sheets, and truly: "Suite 120, three stations: open office (two-gang), phone room and
 * server room". Every word is a plain one, or stands on the sheets; what is said of a room, of a count, a finish or a
 * size holds for its sheets. Anything else is no description, and others read it.
 */

/** Words that ask for nothing, whatever stands beside them. No verb that changes anything is among them, and nothing of a way or a look. */
const plain = new Set(
  tokensOf(`a an the this that these those it its they them their here there we i our my you your us
    everything of for at in on with and per is are was s re ve has have each every all both one ones single
    set sheets sheet form forms pdf pdfs file files order orders job project po number attached enclosed
    sending sent submitting device devices keypad keypads plate plates station stations button buttons gang gangs
    legend legends name names named called marked labeled mark marks lettering finish color colour room rooms
    side floor level wing area areas space spaces building suite door
    goes going into stands standing standalone alone total altogether today morning afternoon
    thanks hi hello please see find attaching filled completed plus which who where mr mrs ms dr`),
);
/** A sentence that begins with one of these may be an order, and one of each is a number of pieces. */
const mayOrder =
  /^\s*(?:please )?(?:mark|name|number|order|finish|colou?r|label)\b(?!\s+(?:for|is|and|sheets?|forms?|attached)\b)|\bone of (?:each|every|both|them)/iu;

/** What holds for all, or for one a room. */
const shares = [
  {
    pattern:
      /\b(?:all )?(?:the )?same finish(?:es)?(?: and lettering)?(?: throughout| everywhere| for all(?: of them)?| on (?:all|both|every\w*)(?: of them)?)?/giu,
    isTrue: ({ sheets }: Came): boolean =>
      new Set(sheets.map(({ finish, lettering }) => `${finish} ${lettering}`)).size === 1,
  },
  {
    pattern:
      /\b(?:one|a|single) (?:device|keypad|station|switch|sheet) (?:each|apiece|on each|(?:in|for|to|per|at|on) (?:each|every|a)?(?: of the)? ?(?:rooms?|doors?|offices?|suites?|bedrooms?|classrooms?|labs?))\b/giu,
    isTrue: ({ sheets }: Came): boolean =>
      sheets.every(isDevice) && new Set(sheets.map(stripOf)).size === sheets.length,
  },
  {
    pattern:
      /\b(?:the )?same (?:buttons|legends|names|words|labels) (?:in|on|for) (?:all(?: (?:of them|two|three|four|five|six))?|both|each|every one)\b/giu,
    isTrue: ({ sheets }: Came): boolean =>
      new Set(sheets.filter(isDevice).map((device) => facesOf(device).join("/"))).size === 1,
  },
  {
    pattern:
      /\b(?:just )?(?:like|as|the way) (?:the|our) \p{L}+ (?:picked|chose|wanted|specified|asked(?: for)?|likes?|ordered|listed)(?: (?:it|them))?\b/giu,
    isTrue: (): boolean => true,
  },
  {
    // Who says that words are as they should be says what the sheets say.
    pattern:
      /\b(?:is|are|it's|that's|they're) (?:all )?(?:right|correct|spelled (?:right|correctly)|on purpose|intentional|exactly (?:how|what) (?:we|they) (?:call|refer to|name|spell) (?:it|them))(?: as (?:typed|written|shown|is))?(?=[.,;!]|$)/giu,
    isTrue: (): boolean => true,
  },
  { pattern: /\bthat (?:go|goes|fit|fits) in(?:to)? (?:it|them)\b/giu, isTrue: (): boolean => true },
  {
    pattern: /\b(?:first|second|third|fourth|fifth|ground|upper|lower|top) floors?\b/giu,
    isTrue: (): boolean => true,
  },
  {
    pattern: /\b(?:reads? )?(?:from )?left to right(?: as you (?:stand facing|face|look at) it)?\b/giu,
    isTrue: ({ sheets }: Came): boolean => sheets.some(isPlate),
  },
  {
    pattern:
      /\b(?:(?:is|are|it's|that's) )?(?:all )?(?:just )?(?:what(?:'s| is)|as) (?:it (?:is|stands) )?on the (?:sheets?|forms?)\b/giu,
    isTrue: (): boolean => true,
  },
] as const;

/** "Five-button", "a three button", "two-gang". */
const size = /\b([a-z]+|\d{1,2})[- ](button|gang)s?\b/giu;
/** What is said of all holds for all: "both are for the lobby". */
const ofAll = /\b(?:all|both|each|every|everything)\b/iu;
const counted =
  /^(?:devices?|keypads?|plates?|stations?|sheets?|files?|pdfs?|forms?|buttons?|rooms?|legends?|gangs?)$/;

/** A word without the sign of many: "rooms" is "room". */
const stemOf = (token: string): string =>
  token.length > 3 && /[^s]s$/u.test(token) ? token.slice(0, -1) : token;

/** What a sheet says of where it goes and of what it bears. */
interface Said {
  readonly sheet: Sheet;
  readonly words: ReadonlySet<string>;
}

const saidBy = (sheet: Sheet, _: number, sheets: readonly Sheet[]): Said => {
  const plate = sheets.find((other) => isPlate(other) && other.mark === sheet.mark);
  const gang = plate && isDevice(sheet) && sheet.position ? (facesOf(plate)[sheet.position - 1] ?? "") : "";
  const tokens = tokensOf([sheet.mark ?? "", gang, stripOf(sheet), ...facesOf(sheet)].join(" "));
  const pairs = tokens.slice(1).map((token, i) => `${tokens[i]}${token}`);
  return { sheet, words: new Set([...tokens, ...pairs].map(stemOf)) };
};

/** The words of what its finish and its lettering are called. */
const looksOf = ({ finish = "", lettering = "" }: Sheet, { called }: LetterFacts): string[] =>
  tokensOf(`${called.get(finish) ?? finish} ${called.get(lettering) ?? lettering}`);

/** Whether a sentence only describes the sheets, and nothing in it is untrue of them. */
export function describes(sentence: string, facts: LetterFacts): boolean {
  const { sheets } = facts;
  if (sheets.length === 0 || hasSigns(sentence) || sentence.length > 300 || mayOrder.test(sentence))
    return false;
  let rest = sentence.replace(/[’ʼ`´]/gu, "'");
  for (const { pattern, isTrue } of shares)
    rest = rest.replace(pattern, (whole) => (isTrue(facts) ? " " : whole));
  const said = sheets.map(saidBy);
  const header = new Set(
    [...facts.projects, ...facts.numbers, ...facts.names, ...facts.files].flatMap(tokensOf).map(stemOf),
  );
  const clauses = rest.split(/[,;:()]|\s[-–—]+\s|\s(?:and|&|plus|while)\s/u);
  return (
    clauses.every((clause) => isTrueOf(clause, said, header, facts)) &&
    isInOrder(sentence, sheets) &&
    !leavesOutFaces(sentence, sheets)
  );
}

function isTrueOf(
  clause: string,
  said: readonly Said[],
  header: ReadonlySet<string>,
  facts: LetterFacts,
): boolean {
  const sizes = [...clause.matchAll(size)].map(([, number = "", what = ""]) => ({ number, what }));
  const tokens = tokensOf(clause.replace(size, " "));
  const rooms: string[] = [];
  const looks: string[] = [];
  const finishes = new Set(facts.sheets.flatMap((sheet) => looksOf(sheet, facts)));
  const isOnSheets = (token: string): boolean => said.some(({ words }) => words.has(token));
  for (let at = 0; at < tokens.length; at++) {
    const token = tokens[at] ?? "";
    const [one, two] = [stemOf(token), stemOf(`${token}${tokens[at + 1] ?? ""}`)];
    const number = token === "both" ? 2 : numberFrom(token);
    const noun = number > 0 ? tokens.slice(at + 1, at + 4).find((word) => counted.test(word)) : undefined;
    if (noun !== undefined) {
      if (!isCount(number, noun, facts)) return false;
    } else if (token === "both") {
      if (!["sheet", "plate", "device", "station"].some((what) => isCount(2, what, facts))) return false;
    } else if (tokens[at + 1] !== undefined && !isOnSheets(one) && isOnSheets(two)) {
      rooms.push(two);
      at++;
    } else if (finishes.has(token)) looks.push(token);
    else if (isOnSheets(one) && !plain.has(token)) rooms.push(one);
    else if (!plain.has(token) && !header.has(one)) return false;
  }
  const meant = said.filter(({ words }) => rooms.every((room) => words.has(room)));
  if (meant.every(({ sheet }) => joinsFaces(clause, sheet))) return false;
  if (rooms.length > 0 && meant.length < said.length && ofAll.test(clause)) return false;
  return (
    looks.every((look) => meant.every(({ sheet }) => looksOf(sheet, facts).includes(look))) &&
    sizes.every(({ number, what }) => {
      const sized = meant.filter(({ sheet }) =>
        what.toLowerCase() === "gang" ? isPlate(sheet) : isDevice(sheet),
      );
      const has = ({ sheet }: Said): boolean =>
        numberFrom(number) === (isPlate(sheet) ? sheet.gangs : facesOf(sheet).length);
      return rooms.length === 0 ? sized.some(has) : sized.length > 0 && sized.every(has);
    })
  );
}

/** Whether a clause says something of one face by another: "DIM is OFF". */
function joinsFaces(clause: string, sheet: Sheet): boolean {
  const running = ` ${tokensOf(clause).join(" ")} `;
  const named = new Set(facesOf(sheet).filter((face) => running.includes(` ${face} `)));
  return named.size > 1 && / (?:is|are|was|for|with|per|of|on|in|at) /u.test(running);
}

/** Whether some buttons of a device are named, and others not: "LOBBY with ON and OFF", where it has DIM too. */
function leavesOutFaces(sentence: string, sheets: readonly Sheet[]): boolean {
  const running = ` ${tokensOf(sentence).join(" ")} `;
  return sheets.filter(isDevice).some((device) => {
    const faces = facesOf(device).filter((face) => face !== "");
    const named = faces.filter((face) => running.includes(` ${face} `)).length;
    return named > 1 && named < faces.length;
  });
}

/** Whether so many came with this letter, or with all of the order. A station is a plate or a device that stands alone. */
function isCount(number: number, noun: string, { sheets, plates, devices, attached }: LetterFacts): boolean {
  const marks = new Set(sheets.map(({ mark = "" }) => tokensOf(mark).join("")));
  const all = plates.flatMap((some) => devices.map((others) => some + others));
  if (noun.startsWith("plate")) return plates.includes(number);
  if (/^(?:device|keypad)/u.test(noun)) return devices.includes(number);
  if (/^(?:station|room)/u.test(noun)) return number === marks.size;
  if (/^(?:sheet|file|pdf|form)/u.test(noun)) return [...all, ...attached].includes(number);
  return false;
}

/** Whether names of gangs of one plate stand in their order. */
function isInOrder(sentence: string, sheets: readonly Sheet[]): boolean {
  const running = ` ${tokensOf(sentence).join(" ")} `;
  return sheets.filter(isPlate).every((plate) => {
    const places = facesOf(plate).map((face) => (face === "" ? -1 : running.indexOf(` ${face} `)));
    const named = places.filter((place) => place >= 0);
    return named.every((place, i) => i === 0 || place >= (named[i - 1] ?? 0));
  });
}
