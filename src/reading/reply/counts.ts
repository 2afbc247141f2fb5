import { buttonsOf, type Catalogue } from "../../catalogue/catalogue.ts";
import { type Count, countedBy } from "../../trade/count.ts";
import { numberFrom, numerals, patternOf } from "./tallies.ts";
import { hasSigns, tokensOf } from "./word-bag.ts";

/** What can be counted. */
export type Goods = Pick<Catalogue, "layouts" | "finishes">;

const figure = `(?:\\d{1,3}|${numerals.slice(1).join("|")})`;
const times = "(?: ?[x×](?= )| ?(?:pcs|pieces|ea|each|nos?)(?![\\p{L}])\\.?)?";
const neutral =
  "attached|enclosed|engraved|engraving|wall|push-?button|order|pdf|fillable|filled|completed|separate|individual|single|different";
const noun =
  "(?:devices?|keypads?|plates?)(?: sheets?| forms?)?|sheets?|forms?|files?|pdfs?|documents?|attachments?";

/** Patterns of counts in words, for what a maker makes. */
interface Patterns {
  /** "3 x 4-gang plates in Oat". */
  readonly before: RegExp;
  /** "4-gang plates: 3", "device sheets (12)". */
  readonly behind: RegExp;
  readonly finishes: ReadonlyMap<string, string>;
}

const made = new WeakMap<Goods, Patterns>();

function patternsOf(goods: Goods): Patterns {
  const known = made.get(goods) ?? makePatterns(goods);
  made.set(goods, known);
  return known;
}

function makePatterns({ layouts, finishes: made }: Goods): Patterns {
  const finishes = new Map(made.flatMap(({ code, name }) => [code, name].map((one) => [one, code] as const)));
  const escaped = [...finishes.keys(), ...layouts.map(({ code }) => code)]
    .filter(({ length }) => length > 1)
    .map((one) => one.replace(/[^\p{L}\p{N} ]/gu, "\\$&"));
  const kind = `(?:${escaped.join("|")}|${figure}[- ]?(?:gang|button)s?)(?![\\p{L}\\p{N}])`;
  const described = `(?:(?:${kind}|${neutral}) ){0,5}`;
  const after = `(?:,? ?\\(?(?:in |with |of )?${kind}\\)?){0,2}`;
  const named = `(?<what>${described}(?:${noun}|${kind})${after})(?![\\p{L}\\p{N}-])`;
  const start = "(?<![\\p{L}\\p{N}]|[#./:×*-]|\\d ?[x×–-] ?)";
  return {
    before: new RegExp(`${start}(?<figure>${figure})(?: \\((?<again>\\d{1,3})\\))?${times} ${named}`, "giu"),
    behind: new RegExp(
      `(?<![\\p{L}\\p{N}])(?<counts>(?:qty|quantity|number|no\\.?|nos\\.?|count|#|totals?)(?: of)? |)(?<what>${described}(?:${noun}|${kind}))(?: (?<count>count|qty|quantity|total))?(?: ?[:=] ?(?<figure>${figure})| ?\\((?<again>\\d{1,3})\\))(?! ?(?:[x×] ?)?(?:${kind}|${noun}))(?![\\p{L}\\p{N}]|[-–/.,:']\\d| ?[-–/] ?\\d|["%°])`,
      "giu",
    ),
    finishes,
  };
}

/** Words around counts that leave them what they are. Any other word may make a wish of a count, or a part of it. */
const around = new Set(
  tokensOf(`a the i m am we re you our my this these those there here it its that is are all of in on for with and as
    attached attach attaching enclosed enclosing included includes including find see please pls hi hello dear good morning
    afternoon team thanks thank thx much advance best kind regards order orders po job project purchase email e mail
    letter message total totals grand overall sum summary count counts number numbers qty quantity quantities
    altogether together makes comes contains contain consists consist comprises has have having sending submitting
    forwarding fillable filled completed engraved sheets stations`),
);
const framed = /\b(?:you should (?:have|find|see|get)|(?:is|are) made up|put together)\b/giu;

/** "All 16 attached", "sixteen of them": how many came, without a word for what. */
const bareCount = new RegExp(
  `(?<![\\p{L}\\p{N}#./:-]|[\\d.] |\\b(?:qty|quantity|number|no|count|total)[.:]? ?)(?:all )?(${figure})(?: of (?:them|these|those))?(?= (?:attached|enclosed|(?:in )?total|in all|altogether|all told)(?![\\p{L}])|\\s*(?:[,;.!)]|$))`,
  "giu",
);

/** Words that say how many sheets there are, and nothing else. `names` are facts that they may repeat. */
export function countsIn(words: string, names: readonly string[], goods: Goods): Count[] | undefined {
  const found: Count[] = [];
  const { before, behind } = patternsOf(goods);
  const take = (whole: string, ...rest: unknown[]): string => {
    const count = countFrom(rest.at(-1) as Groups, goods);
    if (count === undefined) return whole;
    found.push(count);
    return " ";
  };
  const plain = words.normalize("NFKC").replace(/\s+/g, " ");
  const takeBare = (_: string, figure: string): string => {
    found.push({ of: "sheet", number: numberFrom(figure) });
    return " ";
  };
  const bare = plain.replace(behind, take).replace(before, take).replace(bareCount, takeBare);
  const isTwice = new Set(found.map(countedBy)).size < found.length;
  if (found.length === 0 || isTwice || hasSigns(words)) return undefined;
  return isAround(bare, names) ? found : undefined;
}

/** Whether words only lead to counts: "Total:". */
export function leadsToCounts(words: string): boolean {
  return /^(?:here is the |grand |order |the )?(?:totals?|summary|counts?|quantit(?:y|ies)|qty)[:.]?$/i.test(
    words.trim(),
  );
}

/** Whether words leave a count beside them what it is. */
export function isAround(words: string, names: readonly string[]): boolean {
  const rest = names.reduce((some, name) => {
    const pattern = patternOf(name);
    return pattern === undefined ? some : some.replace(pattern, " ");
  }, words);
  return tokensOf(rest.replace(framed, " ")).every((token) => around.has(token));
}

type Groups = Readonly<Partial<Record<"figure" | "again" | "what" | "counts" | "count", string>>>;

function countFrom(
  { figure: typed, again, what = "", counts, count }: Groups,
  goods: Goods,
): Count | undefined {
  const [number, twice = number] = [typed, again].flatMap((one) =>
    one === undefined ? [] : [numberFrom(one)],
  );
  if (number === undefined || number !== twice) return undefined;
  const counted = whatIsCounted(what, goods);
  // "Plate: 3" is the third plate. "Plates: 3", "Plate count: 3", "2-gang: 3" and "1 plate" count.
  const isName = /(?:device|keypad|plate|sheet|form|file|pdf|document|attachment)$/i.test(what);
  if (
    counted === undefined ||
    (isName && (counts === undefined ? number > 1 : counts === "" && count === undefined))
  )
    return undefined;
  return { ...counted, number };
}

/** What a description counts: "4-gang plates", "D4 CHK devices". */
export function whatIsCounted(words: string, goods: Goods): Omit<Count, "number"> | undefined {
  const finishes = [...patternsOf(goods).finishes]
    .filter(([name]) => hasName(words, name))
    .map(([, code]) => code);
  const sizes = (of: string): number[] =>
    [...words.matchAll(new RegExp(`(${figure})[- ]?${of}s?(?![\\p{L}])`, "giu"))].map(([, one = ""]) =>
      numberFrom(one),
    );
  const [gangs, buttons] = [sizes("gang"), sizes("button")];
  const layouts = goods.layouts
    .filter((layout) => buttons.includes(buttonsOf(layout)) || hasName(words, layout.code))
    .map(({ code }) => code);
  const [finish, ...moreFinishes] = new Set(finishes);
  const [layout, ...moreLayouts] = new Set(layouts);
  if (
    moreFinishes.length + moreLayouts.length > 0 ||
    gangs.length + Math.max(buttons.length, layouts.length) > 1
  )
    return undefined;
  if (buttons.length > 0 && layout === undefined) return undefined;
  const of = kindOf(words, layout !== undefined, gangs.length > 0);
  const isPlain = of === "sheet" || of === "file";
  if (of === undefined || (isPlain && finish !== undefined)) return undefined;
  return {
    of,
    ...(layout === undefined ? {} : { layout }),
    ...(gangs[0] === undefined ? {} : { gangs: gangs[0] }),
    ...(finish === undefined ? {} : { finish }),
  };
}

function kindOf(words: string, hasLayout: boolean, hasGangs: boolean): Count["of"] | undefined {
  const isDevice = /\b(?:devices?|keypads?)\b/i.test(words) || hasLayout;
  const isPlate = /\bplates?\b/i.test(words) || hasGangs;
  if (isDevice || isPlate) return isDevice && isPlate ? undefined : isDevice ? "device" : "plate";
  if (/\b(?:sheets?|forms?)\b/i.test(words)) return "sheet";
  return /\b(?:files?|pdfs?|documents?|attachments?)\b/i.test(words) ? "file" : undefined;
}

function hasName(words: string, name: string): boolean {
  return ` ${tokensOf(words).join(" ")} `.includes(` ${tokensOf(name).join(" ")} `);
}
