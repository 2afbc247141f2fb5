import type { Address, DeviceSheet } from "../../trade/sheet.ts";
import { withoutAdditions } from "./additions.ts";
import { type Parts, withoutTrue } from "./borne-out.ts";
import { type Came, facesOf, figure, isAgain, isDevice, isPlate, replacesAll, stripOf } from "./came.ts";
import { withoutReplacements } from "./replacements.ts";
import { numberFrom, patternOf } from "./tallies.ts";
import { tokensOf } from "./word-bag.ts";

interface Repeat {
  readonly pattern: RegExp;
  /** Whether the sheets say so too. `parts` are the named groups. */
  readonly isTrue: (parts: Parts, came: Came) => boolean;
}

const words = (pattern: string): RegExp =>
  new RegExp(`(?<![\\p{L}\\p{N}])(?:${pattern})(?![\\p{L}\\p{N}])`, "giu");

const they = "(?:these|they|this|it|both|all(?: of (?:these|them|it))?|everything|the order)";
const who =
  "(?:(?:the |our |my )?(?:owner|client|customer|homeowner|doctor|dentist|architect|designer|tenant|chef|pastor|principal|boss|gc|contractor|he|she|they|we|i))";
const nth = ["first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth"];
const later =
  "(?:later|soon|next \\p{L}+|(?:in|after) (?:the )?(?:spring|summer|fall|autumn|winter|new year|holidays)|and will come)";
const which = `(?:top|bottom|last|${nth.join("|")})`;
const legend = "[\"“']?(?<legend>\\p{Lu}[\\p{Lu}\\p{N}&/’' -]{1,30}[\\p{Lu}\\p{N}])[\"”']?";

const isFilled = ({ street, city }: Address): boolean => street !== undefined && city !== undefined;
const hasName = (finishes: readonly string[], name: string): boolean =>
  finishes.some((finish) => finish.toLowerCase() === name.toLowerCase());
const onlyDevice = ({ sheets }: Came): DeviceSheet | undefined => {
  const devices = sheets.filter(isDevice);
  return devices.length === 1 ? devices[0] : undefined;
};

/** "ALL OFF on the bottom button", where one device came. Of more than five buttons nobody knows which is at the top. */
function hasLegendAt({ legend: told = "", which: place = "" }: Parts, came: Came): boolean {
  const device = onlyDevice(came);
  const faces = device === undefined ? [] : facesOf(device);
  const at = /bottom|last/iu.test(place)
    ? faces.length - 1
    : /top/iu.test(place)
      ? 0
      : nth.indexOf(place.toLowerCase());
  return faces.length <= 5 && faces[at] === tokensOf(told).join(" ");
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
      `${who}(?: has| have|'s| just| also)* added (?<rooms>(?:a |an |the )?\\p{L}+(?: \\p{L}+){0,7})(?=[.,!]|$)`,
    ),
    isTrue: ({ rooms = "" }, came) => {
      const strips = new Set(came.sheets.flatMap((sheet) => [stripOf(sheet), ...facesOf(sheet)]));
      return (
        !came.sheets.some((sheet) => isAgain(sheet, came)) &&
        rooms
          .split(/,? and |, /u)
          .every((room) => strips.has(tokensOf(room.replace(/^(?:an?|the) /iu, "")).join(" ")))
      );
    },
  },
  {
    pattern: words(
      "(?:please )?add (?:these|this|them|both|the attached)(?: (?:two|three|four|five|one|sheets?|stations?))* to (?:order |po )?#?(?<order>[\\p{L}\\p{N}-]+)",
    ),
    isTrue: ({ order: told = "" }, { sheets }) =>
      sheets.every(({ order = "" }) => order !== "" && tokensOf(order).join("") === tokensOf(told).join("")),
  },
  {
    pattern: words(
      `which (?:then )?makes (?:it |them )?(?<number>${figure})(?: (?:on|for|in) (?:that|this|the) order| altogether| in all)`,
    ),
    isTrue: ({ number = "" }, { sheets, earlier }) => sheets.length + earlier.length === numberFrom(number),
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
  {
    // Other rooms have their own order.
    pattern: words(
      `(?:the )?(?<what>[\\p{L}'’-]+(?: [\\p{L}'’-]+){0,3}) (?:will (?:be|come|follow)|(?:is|are) coming|comes?|follows?|is|are)(?: ${later})*(?: (?:as|under|in|on|with))? (?:its|their|an?) (?:own|separate|later) (?:order|po|purchase order|contract)s?(?: numbers?)?(?: ${later}| (?:once|when) (?:the|they|we) [^.;!?]{3,50})*`,
    ),
    isTrue: ({ what = "" }, { sheets }) => {
      const told = new Set(
        sheets.flatMap((sheet) => `${stripOf(sheet)} ${facesOf(sheet).join(" ")}`.split(" ")),
      );
      return !tokensOf(what).some((token) => told.has(token));
    },
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
            `${named} (?:is|stays?|remains?) (?:the same|unchanged|as (?:it )?(?:was|is|sent|before)|(?:fine|ok|okay|right|good|correct)(?= *(?:[.,;!]|$)))(?![\\p{L}\\p{N}])|${named}:? no changes?(?![\\p{L}\\p{N}])|(?<!\\p{L})no changes? (?:to|on|for|in) ${named}`,
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
  const rest = repeats.reduce(
    (some, { pattern, isTrue }) => withoutTrue(some, pattern, (parts) => isTrue(parts, came)),
    withoutForeignTally(withoutReplacements(withoutAdditions(said, came), came), came),
  );
  return unchangedOf(came).reduce((some, pattern) => withoutTrue(some, pattern, () => true), rest);
}
