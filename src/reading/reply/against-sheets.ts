import type { Sheet } from "../../trade/sheet.ts";
import { type Came, facesOf, figure, isDevice, replacesAll, stripOf } from "./came.ts";
import { rooms } from "./chat.ts";
import { numberFrom, patternOf, understood } from "./tallies.ts";
import { hasSigns, tokensOf } from "./word-bag.ts";

const adds =
  /(?<!\p{L})(?:(?:one|two|three|\d) more|another(?: one)?|an additional|add(?:ed|ing|s)?)(?! (?:time|try|attempt|cop(?:y|ies)|corrections?|corrected|revis|revised|changes?|version|fix|e-?mail|question|thing|note|go|sorry)(?!\p{L}))(?!\p{L})/iu;

/** Whether words bring one more station, and the sheets stand where others stood. */
function addsInstead(said: string, came: Came): boolean {
  return adds.test(said) && replacesAll(came);
}

/** Whether words say something that is untrue of the sheets, whatever they say besides. */
export function speaksOtherwise(said: string, came: Came): boolean {
  return [addsInstead, lacksOfSpan, namesOtherSize, lacksRoom, namesRoomOtherwise].some((isSo) =>
    isSo(said, came),
  );
}

/** "E-11 through E-16", "S-1 to 4". */
const span =
  /(?<![\p{L}\p{N}])(?<series>\p{L}{1,4}[-_ ]?)(?<first>\d{1,4})(?: ?(?:through|thru|to|till|[-–—]) ?)(?:\k<series>)?(?<last>\d{1,4})(?![\p{L}\p{N}])/giu;

/** Whether words name stations from one to another, and a sheet of one between them has never come. */
function lacksOfSpan(said: string, { sheets, earlier }: Came): boolean {
  const marks = new Set([...sheets, ...earlier].map(({ mark = "" }) => tokensOf(mark).join("")));
  return [...said.matchAll(span)].some(({ groups: { series = "", first = "", last = "" } = {} }) => {
    const [from, count] = [Number(first), Number(last) - Number(first) + 1];
    if (count < 3 || count > 60) return false;
    const all = Array.from({ length: count }, (_, i) =>
      tokensOf(`${series}${String(from + i).padStart(first.length, "0")}`).join(""),
    );
    const came = all.filter((mark) => marks.has(mark));
    return came.length > 1 && came.length < count;
  });
}

/** "A two-button", "the 3-gang plate". */
const size = new RegExp(`(?<![\\p{L}\\p{N}])(${figure})[- ](button|gang)(?![\\p{L}\\p{N}])`, "giu");

/** Whether words name a size of devices or plates that no sheet has: "the lobby is a two-button". */
function namesOtherSize(said: string, { sheets, earlier }: Came): boolean {
  const all = [...sheets, ...earlier];
  const devices = all.filter(isDevice).map((device) => facesOf(device).length);
  const plates = all.map(({ gangs = 1 }) => gangs);
  return [...said.matchAll(size)].some(([, number = "", what = ""]) => {
    const known = what.toLowerCase() === "gang" ? plates : devices;
    return known.length > 0 && !known.includes(numberFrom(number));
  });
}

const wordsOf = (sheet: Sheet): string[] =>
  [sheet.mark ?? "", stripOf(sheet), ...facesOf(sheet), sheet.project ?? ""].flatMap(tokensOf);
const brings =
  /(?<!\p{L})(?:attached|enclosed|here (?:is|are)|here['’]s|(?:sheet|station|device|plate|keypad|one|two)s? (?:is |are )?for)(?!\p{L})/iu;
const everyRoom = new RegExp(rooms, "giu");

/** Whether words bring sheets of several rooms, and of one of them none came: "lobby and kitchen attached". */
function lacksRoom(said: string, { sheets, earlier }: Came): boolean {
  if (sheets.length === 0 || !brings.test(said)) return false;
  const known = new Set([...sheets, ...earlier].flatMap(wordsOf));
  const named = [...said.matchAll(everyRoom)].map(([room]) => tokensOf(room));
  const has = (room: readonly string[]): boolean =>
    known.has(room.join("")) || room.every((word) => known.has(word) || known.has(word.replace(/s$/u, "")));
  return named.some(has) && named.some((room) => !has(room));
}

/** Whether words call a station another room than its sheet does: "S-52 is the wellness room" beside BREAK ROOM. */
function namesRoomOtherwise(said: string, { sheets }: Came): boolean {
  return sheets.some((sheet) => {
    const strip = stripOf(sheet).split(" ");
    const [last = "", mark = patternOf(sheet.mark ?? "")] = [strip.at(-1)];
    if (mark === undefined || strip.length < 2) return false;
    const told = new RegExp(
      `${mark.source} (?:is|goes (?:in|to)|is for|is in) (?:the )?((?:[\\p{L}’'-]+ ){1,3})${last}(?!\\p{L})`,
      "iu",
    ).exec(said)?.[1];
    return told !== undefined && !tokensOf(told).some((word) => strip.some((one) => isShort(one, word)));
  });
}

/** Whether one word begins the other. */
const isShort = (one: string, other: string): boolean => one.startsWith(other) || other.startsWith(one);

/**
 * What a line of a list says of a station: "S-1  Kitchen  ON / DIM / OFF". "agrees" where it has the legends of one of
 * its sheets in their order, "differs" where it has legends and not these. Undefined for all other lines.
 */
export function listedIn(line: string, { sheets }: Came): "agrees" | "differs" | undefined {
  const told = tokensOf(line);
  const named = sheets.filter(({ mark = "" }) => {
    const tokens = tokensOf(mark);
    return tokens.length > 0 && tokens.every((token, i) => told[i] === token);
  });
  const rest = told.slice(tokensOf(named[0]?.mark ?? "").length);
  if (named.length === 0 || rest.length < 2) return undefined;
  const isSaid = named.some((sheet) => {
    const faces = facesOf(sheet).join(" ");
    const strip = stripOf(sheet);
    return [faces, `${strip} ${faces}`, `${faces} ${strip}`].some((one) => one === rest.join(" "));
  });
  if (isSaid) return "agrees";
  const all = new Set(named.flatMap((sheet) => facesOf(sheet).flatMap((face) => face.split(" "))));
  // "/", "|", ";" or commas part legends, of which each is on the sheet or in capitals.
  const parts = line.split(/\s*[/|;,]\s*/u);
  return parts.length > 2 && rest.filter((token) => all.has(token)).length > 1 ? "differs" : undefined;
}

/** Words in capitals: a legend, or a station's mark. */
const capitals = /(?<![\p{L}\p{N}])\p{Lu}[\p{Lu}\p{N}’'&-]+(?: \p{Lu}[\p{Lu}\p{N}’'&-]+)*(?![\p{L}\p{N}])/gu;
/** What stands before a legend that is no more. */
const noMore = /\b(?:than|instead of|not|no|no longer|from|was(?: an?)?|used to be|in place of)["“”' ]*$/iu;
/** How somebody says what a legend is to be, or is by now. */
const wished =
  /(?<!\p{L})(?:yes,? |would rather (?:have|see)|would (?:like|prefer)|wants?|wanted|prefers?|preferred|asked for|should (?:of course )?(?:read|say|be)|in place of|(?:is|are|it'?s|reads?|says?) now|now (?:reads?|says?|is)|changed (?:it |that |this )?to|to (?:read|say|be)|rather than|than|instead of|no longer|from|with the accent|both|reads?|says?)(?!\p{L})/giu;

/** What else may stand beside it. A word more, and it may say more. */
const aroundWish = new Set(
  tokensOf(`the a an our my owner owners client customer homeowner doctor architect designer tenant boss house manager gc
    contractor he she they we i on for of so it is s now and just hi hello thanks particular about that`),
);

/**
 * Whether words only ask for legends that stand on the sheets by now: "the owner would rather have SHOW than MOVIE on
 * S-1".
 */
export function isFulfilled(said: string, came: Came): boolean {
  const marks = new Map(came.sheets.map((sheet) => [tokensOf(sheet.mark ?? "").join(" "), sheet]));
  const told = [...said.matchAll(capitals)].map((match) => ({
    text: tokensOf(match[0]).join(" "),
    isGone: noMore.test(said.slice(0, match.index)),
  }));
  const legends = told.filter(({ text }) => !marks.has(text));
  const named = told.flatMap(({ text }) => marks.get(text) ?? []);
  const on = new Set(
    (named.length > 0 ? named : came.sheets).flatMap((sheet) => [...facesOf(sheet), stripOf(sheet)]),
  );
  const rest = said.replace(capitals, " ").replace(wished, " ");
  return (
    said.search(wished) >= 0 &&
    legends.some(({ isGone }) => !isGone) &&
    legends.every(({ text, isGone }) => on.has(text) !== isGone) &&
    (named.length > 0 || came.sheets.length === 1) &&
    !hasSigns(said) &&
    tokensOf(rest).every((token) => aroundWish.has(token))
  );
}

/**
 * The counts of a letter's orders where it has several: "four for 70415 and two for 70416". A right one becomes a sign,
 * and of a wrong one the digits stay.
 */
export function withoutShares(said: string, { sheets }: Came): string {
  const orders = Map.groupBy(sheets, ({ order = "" }) => tokensOf(order).join(" "));
  if (orders.size < 2) return said;
  const lead = `(?<![\\p{L}\\p{N}#])(${figure})(?: of (?:them|these)| (?:new |device |plate |order )?(?:sheets?|forms?|files?|pdfs?|ones|pages))?(?: (?:is|are))? (?:for|on|of|to|under|belong to)(?: (?:the|our|order|po|p\\.o\\.|job|number|no\\.?))* ?#?`;
  return [...orders.values()].reduce((rest, own) => {
    const names = [...new Set(own.flatMap(({ order, project }) => [order, project]))].flatMap((name) =>
      name === undefined ? [] : (patternOf(name)?.source ?? []),
    );
    return names.reduce(
      (some, name) =>
        some.replace(new RegExp(`${lead}(?=${name})`, "giu"), (_, typed: string) =>
          numberFrom(typed) === own.length ? ` ${understood.tally} for ` : ` #${numberFrom(typed)} for `,
        ),
      rest,
    );
  }, said);
}
