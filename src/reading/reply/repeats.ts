import { hasText } from "../../trade/legend.ts";
import type { Address, DeviceSheet, PlateSheet, Sheet } from "../../trade/sheet.ts";
import { type LetterFacts, numberFrom, numerals, patternOf, understood } from "./tallies.ts";
import { hasSigns, tokensOf } from "./word-bag.ts";

/** What words may repeat: sheets that came with the letter, and those of earlier letters about the same orders. */
type Came = Pick<LetterFacts, "sheets" | "earlier" | "finishes" | "names">;

interface Repeat {
  readonly pattern: RegExp;
  /** Whether the sheets say so too. `parts` are the named groups. */
  readonly isTrue: (parts: Readonly<Record<string, string | undefined>>, came: Came) => boolean;
}

const words = (pattern: string): RegExp =>
  new RegExp(`(?<![\\p{L}\\p{N}])(?:${pattern})(?![\\p{L}\\p{N}])`, "giu");

const figure = `(?:\\d{1,3}|${numerals.slice(1).join("|")})`;
const they = "(?:these|they|this|it|both|all(?: of (?:these|them|it))?|everything|the order)";
const who =
  "(?:(?:the |our |my )?(?:owner|client|customer|homeowner|doctor|dentist|architect|designer|tenant|chef|pastor|principal|boss|gc|contractor|he|she|they|we|i))";
const nth = ["first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth"];
const which = `(?:top|bottom|last|${nth.join("|")})`;
const legend = "[\"“']?(?<legend>\\p{Lu}[\\p{Lu}\\p{N}&/’' -]{1,30}[\\p{Lu}\\p{N}])[\"”']?";

const isFilled = ({ street, city }: Address): boolean => street !== undefined && city !== undefined;
const isDevice = (sheet: Sheet): sheet is DeviceSheet => sheet.kind === "device";
const isPlate = (sheet: Sheet): sheet is PlateSheet => sheet.kind === "plate";
const hasName = (finishes: readonly string[], name: string): boolean =>
  finishes.some((finish) => finish.toLowerCase() === name.toLowerCase());
const onlyDevice = ({ sheets }: Came): DeviceSheet | undefined => {
  const devices = sheets.filter(isDevice);
  return devices.length === 1 ? devices[0] : undefined;
};

/** The legends of a sheet's buttons or gangs, one text each. */
const facesOf = ({ legends }: Sheet): string[] =>
  legends
    .filter((one) => one.face !== "plate" && (hasText(one) || one.plain))
    .toSorted((one, other) => Number(one.face) - Number(other.face))
    .map(({ rows }) => tokensOf(rows.join(" ")).join(" "));

/** What stands on the plate of a device that stands alone. */
const stripOf = ({ legends }: Sheet): string =>
  tokensOf(legends.find(({ face }) => face === "plate")?.rows.join(" ") ?? "").join(" ");

/** "ALL OFF on the bottom button", where one device came. Of more than five buttons nobody knows which is at the top. */
function hasLegendAt(
  { legend: told = "", which: place = "" }: Readonly<Record<string, string | undefined>>,
  came: Came,
): boolean {
  const device = onlyDevice(came);
  const faces = device === undefined ? [] : facesOf(device);
  const at = /^(?:bottom|last)$/iu.test(place)
    ? faces.length - 1
    : /^top$/iu.test(place)
      ? 0
      : nth.indexOf(place.toLowerCase());
  return faces.length > 0 && faces.length <= 5 && faces[at] === tokensOf(told).join(" ");
}

/** Whether an earlier sheet stood where this one stands. */
function isAgain(sheet: Sheet, { earlier }: Came): boolean {
  const placeOf = (one: Sheet): string =>
    JSON.stringify([one.kind, tokensOf(one.mark ?? ""), isDevice(one) ? one.position : undefined]);
  return earlier.some((one) => placeOf(one) === placeOf(sheet));
}

/** Whether each sheet of the letter stands where an earlier one stood. */
const replacesAll = (came: Came): boolean =>
  came.sheets.length > 0 && came.sheets.every((sheet) => isAgain(sheet, came));

const adds =
  /(?<!\p{L})(?:(?:one|two|three|\d) more|another(?: one)?|an additional|add(?:ed|ing|s)?)(?! (?:time|try|attempt|cop(?:y|ies)|corrections?|corrected|revis|revised|changes?|version|fix|e-?mail|question|thing|note|go|sorry)(?!\p{L}))(?!\p{L})/iu;

/** Whether words bring one more station, and the sheets stand where others stood. */
export function addsInstead(said: string, came: Came): boolean {
  return adds.test(said) && replacesAll(came);
}

/** Parts of sentences that ask for nothing if they are true, and are read by a person if not. */
const repeats: readonly Repeat[] = [
  {
    // What somebody asked of the sender is done by the letter itself.
    pattern: words(
      "(?<name>\\p{L}+),? (?:can|could|would|will) you (?:please |just |pls )?(?:get|send|pass|forward|e-?mail|submit|shoot|run) (?:these|this|them|it|those|the (?:attached|sheets|forms|order))(?: (?:over|on|out|along|off|in|through))?(?: to (?:the (?:maker|engravers?|factory|supplier|vendor)|(?!the )\\p{L}+))?(?: (?:this (?:morning|afternoon|week)|today|now|for me|please|when you (?:can|get a (?:chance|minute|moment))))*(?:\\?|(?=[.!]|$))",
    ),
    isTrue: ({ name = "" }, { names }) => tokensOf(names[0] ?? "")[0] === name.toLowerCase(),
  },
  {
    pattern: words(
      `(?:the )?(?:first|next|last|remaining|other) (?<number>${figure}) (?<noun>devices|plates|sheets)`,
    ),
    isTrue: ({ number = "", noun = "" }, { sheets }) =>
      sheets.filter(({ kind }) => noun.toLowerCase() === "sheets" || noun.toLowerCase().startsWith(kind))
        .length === numberFrom(number),
  },
  {
    // The order waits for it anyway.
    pattern: words(
      "(?:the )?(?:device (?:for|in|at) )?pos(?:ition|\\.)? ?(?<number>\\d) (?:will|is to|to|should) (?:come|follow|be sent|be along)(?: (?:on )?(?:tomorrow|later|today|tonight|soon|shortly|separately|next week|(?:mon|tues|wednes|thurs|fri)day))*",
    ),
    isTrue: ({ number }, { sheets, earlier }) =>
      sheets.some((sheet) => sheet.kind === "plate" && (sheet.gangs ?? 0) >= Number(number)) &&
      [...sheets, ...earlier].every((sheet) => sheet.kind === "plate" || sheet.position !== Number(number)),
  },
  {
    pattern: words(
      `(?:(?:please )?note(?: that)? )?${they}(?: all)?(?: will| should| are to| is to)? (?:ships?|be shipped|goes|go|is shipping|are shipping) (?:straight |directly )?to (?:the |our )?(?:job ?site|site|project)(?: address)?`,
    ),
    isTrue: (_, { sheets }) => sheets.every(({ shipSame, shipTo }) => !shipSame && isFilled(shipTo)),
  },
  {
    pattern: words(
      `${they}(?: all)?(?: will)? (?:ships?|be shipped|goes|go) to (?:the |our )(?:office|shop|billing address)`,
    ),
    isTrue: (_, { sheets }) => sheets.every(({ shipSame }) => shipSame),
  },
  {
    pattern: words(
      "(?:the )?(?:(?:ship(?:ping|-to)?|delivery|site|job ?site) )?address(?:es)? (?:is|are) on (?:both|all|each|every|all the|all of the|the)(?: two| of the)? sheets?",
    ),
    isTrue: (_, { sheets }) => sheets.every(({ shipSame, shipTo }) => shipSame || isFilled(shipTo)),
  },
  {
    pattern: words(
      "bill(?:ing|ed|s)?(?: is| goes)?(?: to)? (?:our|the) (?:main )?office(?: as (?:usual|always|before))?",
    ),
    isTrue: (_, { sheets }) =>
      sheets.every(({ billTo }) => isFilled(billTo)) &&
      new Set(sheets.map(({ billTo }) => JSON.stringify(billTo))).size === 1,
  },
  {
    pattern: words(
      "(?:all |both )?(?:in )?(?:the |our )?(?:same|usual) (?:colou?rs?|finish(?:es)?|finish and lettering)(?: (?:as|like) (?:always|usual|before|ever|last time))?[\\s,:;–-]*(?:all )?(?:in )?(?<one>\\p{L}+) (?:with|and|&|/|on) (?<other>\\p{L}+)(?: letter(?:s|ing)| text)?",
    ),
    isTrue: ({ one = "", other = "" }, { finishes }) => [one, other].every((name) => hasName(finishes, name)),
  },
  {
    pattern: words(
      "(?:the |all |all the |both )?(?:legends?|words|names|labels|rooms?|room names|engraving|texts?|plates?) (?:is|are) (?:all )?in (?:spanish|french|german|italian|portuguese|dutch|welsh|gaelic|latin|hawaiian)(?:,? (?:on purpose|intentionally|deliberately|by design|as intended))",
    ),
    isTrue: () => true,
  },
  {
    pattern: words(`(?<number>${figure})[- ]buttons?`),
    isTrue: ({ number = "" }, { sheets }) =>
      sheets.some(isDevice) &&
      sheets.filter(isDevice).every((device) => facesOf(device).length === numberFrom(number)),
  },
  {
    pattern: words(`(?<number>${figure})[- ]gang (?:(?<finish>\\p{L}+) )?plates?`),
    isTrue: ({ number = "", finish }, { sheets, finishes }) =>
      sheets.some(isPlate) &&
      sheets.filter(isPlate).every(({ gangs }) => gangs === numberFrom(number)) &&
      (finish === undefined || hasName(finishes, finish)),
  },
  {
    pattern: words(`(?:it's |it is )?(?:a |one )?(?<number>${figure})[- ]gang(?= ?[:,.]|$)`),
    isTrue: ({ number = "" }, { sheets }) =>
      sheets.filter(isPlate).length === 1 &&
      sheets.filter(isPlate).every(({ gangs }) => gangs === numberFrom(number)),
  },
  {
    pattern: words(
      "(?<gang>[\\p{L}\\p{N}]+(?: [\\p{L}\\p{N}]+)?) (?:on|in|at) the (?<side>left|middle|center|centre|right)",
    ),
    isTrue: ({ gang = "", side = "" }, { sheets }) => {
      const [plate, ...more] = sheets.filter(isPlate);
      if (plate === undefined || more.length > 0) return false;
      const faces = facesOf(plate);
      const at = /left/iu.test(side) ? 0 : /right/iu.test(side) ? faces.length - 1 : (faces.length - 1) / 2;
      return faces[at] === tokensOf(gang).join(" ");
    },
  },
  {
    pattern: words(
      "(?:it's|it is|they're|they are|these are|all) (?<finish>\\p{L}+)(?:,? like the (?:others?|rest))?(?=[,.!]|$)",
    ),
    isTrue: ({ finish = "" }, { finishes }) => hasName(finishes, finish),
  },
  {
    pattern: words("with (?<finish>\\p{L}+) (?:letters|lettering|legends)"),
    isTrue: ({ finish = "" }, { finishes }) => hasName(finishes, finish),
  },
  {
    pattern: words(`(?:plus|and|with) (?:the |its |all )?(?<number>${figure}) devices?`),
    isTrue: ({ number = "" }, { sheets }) => sheets.filter(isDevice).length === numberFrom(number),
  },
  {
    pattern: words(`(?<number>${figure}) of (?:the |its )?(?<all>${figure}) devices?`),
    isTrue: ({ number = "", all = "" }, { sheets }) =>
      sheets.filter(isDevice).length === numberFrom(number) &&
      sheets.some((sheet) => isPlate(sheet) && sheet.gangs === numberFrom(all)),
  },
  {
    // The order waits for what it lacks.
    pattern: words(
      "(?:the )?(?:second|third|fourth|last|other|remaining|missing|rest|others)(?: (?:sheet|device|one)s?)? (?:will )?(?:follows?|comes?|be sent) (?:as soon as|once|when) (?!you(?![\\p{L}]))(?:[\\p{L}'’]+ ){1,8}[\\p{L}'’]+(?=[.!]|$)",
    ),
    isTrue: (_, { sheets, earlier }) =>
      sheets.some(
        (sheet) => isPlate(sheet) && (sheet.gangs ?? 0) > [...sheets, ...earlier].filter(isDevice).length,
      ),
  },
  {
    pattern: words(
      `${who}(?: has| have|'s| just| also)* added (?:a |an |the )?(?<room>\\p{L}+(?: \\p{L}+){0,2})(?=[.,!]|$)`,
    ),
    isTrue: ({ room = "" }, came) =>
      !came.sheets.some((sheet) => isAgain(sheet, came)) &&
      came.sheets.some(({ legends }) =>
        legends.some(({ rows }) => tokensOf(rows.join(" ")).join(" ") === tokensOf(room).join(" ")),
      ),
  },
  {
    pattern: words(`(?<number>${figure}) (?:buttons|legends)(?: (?:in )?(?:total|all|altogether))`),
    isTrue: ({ number = "" }, { sheets }) =>
      sheets.filter(isDevice).flatMap(facesOf).length === numberFrom(number),
  },
  {
    pattern: words(
      "(?:this|it|these|they)(?: one| sheet| two)? (?:replaces?|supersedes?|takes? the place of) (?:the )?(?:(?:one|sheet|version|ones|sheets|versions) (?:from|of|(?:that )?(?:i |we )?sent)(?: you)? (?:earlier )?(?:this morning|this afternoon|yesterday|today|earlier|before|last week|last night)|(?:earlier|previous|old|first|last) (?:one|sheet|version)s?)",
    ),
    isTrue: (_, came) => replacesAll(came),
  },
  {
    pattern: words(
      `${who}(?: now| just)? (?:wants?|wanted|needs?|asked for|would like|prefers?|prefer)(?: to have)? ${legend} (?:on|at|for|as) (?:the |its )?(?<which>${which}) (?:button|one)`,
    ),
    isTrue: hasLegendAt,
  },
  {
    pattern: words(
      `(?:${who} )?(?:changed|(?:has|have|had) changed) (?:the )?(?<which>${which}) (?:button|one)(?: on it)?(?: from ["“']?\\p{Lu}[\\p{Lu}\\p{N} ]{1,20}["”']?)? to ${legend}`,
    ),
    isTrue: hasLegendAt,
  },
];

/** "S-1 is unchanged", where S-1 came earlier and not again. */
function unchangedOf({ sheets, earlier }: Came): RegExp[] {
  const again = new Set(sheets.map(({ mark = "" }) => tokensOf(mark).join(" ")));
  const marks = new Set(
    earlier.flatMap(({ mark = "" }) => (again.has(tokensOf(mark).join(" ")) ? [] : [mark])),
  );
  return [...marks].flatMap((mark) => {
    const named = patternOf(mark)?.source;
    return named === undefined
      ? []
      : [
          new RegExp(
            `${named} (?:is|stays?|remains?) (?:the same|unchanged|as (?:it )?(?:was|is|sent|before))(?![\\p{L}\\p{N}])|(?<!\\p{L})no changes? (?:to|on|for|in) ${named}`,
            "giu",
          ),
        ];
  });
}

const foreignNumerals = [
  "deux|dos|zwei",
  "trois|tres|drei",
  "quatre|cuatro|vier",
  "cinq|cinco|fünf",
  "six|seis|sechs",
];
/** "Les deux fiches", "las 3 hojas", "die vier Blätter". */
const foreignTally =
  /(?<=(?<!\p{L})(?:les|nos|mes|las|los|nuestr[oa]s|mis|die|unsere|meine) )(\p{L}+|\d{1,2}) (?=(?:fiches|feuilles|formulaires|hojas|fichas|formularios|(?:bestell)?bl[äa]tter|(?:bestell)?formulare)(?!\p{L}))/giu;

/** Leaves out the number of sheets in French, Spanish and German where it is right. */
function withoutForeignTally(said: string, { sheets }: Came): string {
  return said.replace(foreignTally, (whole, typed: string) => {
    const at = foreignNumerals.findIndex((one) => one.split("|").includes(typed.toLowerCase()));
    return (at < 0 ? Number(typed) : at + 2) === sheets.length ? "" : whole;
  });
}

/** Words without what the sheets say themselves. */
export function withoutRepeats(said: string, came: Came): string {
  if (came.sheets.length === 0) return said;
  const sign = ` ${understood.courtesy} `;
  const rest = repeats.reduce(
    (some, { pattern, isTrue }) =>
      some.replace(pattern, (whole: string, ...more: unknown[]) => {
        const parts = more.at(-1);
        const named = typeof parts === "object" ? (parts as Readonly<Record<string, string>>) : {};
        return isTrue(named, came) ? sign : whole;
      }),
    withoutForeignTally(said, came),
  );
  return unchangedOf(came).reduce((some, pattern) => some.replace(pattern, sign), rest);
}

/** "E-11 through E-16", "S-1 to 4". */
const span =
  /(?<![\p{L}\p{N}])(?<series>\p{L}{1,4}[-_ ]?)(?<first>\d{1,4})(?: ?(?:through|thru|to|till|[-–—]) ?)(?:\k<series>)?(?<last>\d{1,4})(?![\p{L}\p{N}])/giu;

/** Whether words name stations from one to another, and a sheet of one between them has never come. */
export function lacksOfSpan(said: string, { sheets, earlier }: Came): boolean {
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
    const strip = tokensOf(sheet.legends.find(({ face }) => face === "plate")?.rows.join(" ") ?? "").join(
      " ",
    );
    return [faces, `${strip} ${faces}`, `${faces} ${strip}`].some((one) => one.trim() === rest.join(" "));
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
const noMore =
  /(?:\bthan|\binstead of|\bnot|\bno|\bno longer|\bfrom|\bwas(?: an?)?|\bused to be|\brather than)["“”' ]*$/iu;
/** How somebody says what a legend is to be, or is by now. */
const wished =
  /(?<!\p{L})(?:yes,? |would rather (?:have|see)|would (?:like|prefer)|wants?|wanted|prefers?|preferred|asked for|should (?:read|say|be)|(?:is|are|it'?s|reads?|says?) now|now (?:reads?|says?|is)|changed (?:it |that |this )?to|to (?:read|say|be)|rather than|than|instead of|no longer|from|with the accent|both|reads?|says?)(?!\p{L})/giu;

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
    new RegExp(wished, "iu").test(said) &&
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
