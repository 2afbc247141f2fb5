import type { Words } from "../catalogue/words.ts";
import { plainText } from "../orders/keys.ts";
import type { Sheet } from "../trade/sheet.ts";

const list = (words: string): readonly string[] => words.split(/\s+/).map(plainText);

/**
 * Words of notes that order nothing: where a device hangs, what feeds it, which papers and people it belongs to, when.
 * Common practice, no source. A word that may order something in any company is left out, since a person reads what
 * is not known.
 */
const plainWords = new Set([
  ...list(`a an the this that these it its is are was i we of in on at to from for by and per via as off along
    here there goes go going hangs located location loc installed serves serving`),
  // Where it hangs.
  ...list(`floor floors flr fl level lvl lower upper main ground basement bsmt mezz mezzanine roof attic penthouse
    first second third fourth fifth sixth seventh eighth ninth tenth 1st 2nd 3rd
    wing tower block bldg building suite ste unit apt apartment room rooms rm area zone bay space spaces
    corridor corr hall hallway lobby vestibule vest entry entrance door doors doorway wall walls column col grid
    gridline line stair stairs stairwell elevator elev lift shaft landing window windows ceiling desk counter cabinet
    closet north south east west northeast northwest southeast southwest n s e w ne nw se sw left right side end
    corner center centre middle front back rear top bottom inside outside interior exterior near next beside behind
    master mens womens locker mech elec sanctuary ext int patio mud garage booth trailer site side bed already
    above below under over opposite across between adjacent adj facing public staff typical typ`),
  // How it is mounted and fed.
  ...list(`mount mounted mounting mtd mtg height ht hgt aff affl finished inch inches in ft foot feet mm cm m box
    boxes backbox jbox junction existing exist exg ex new surface flush recessed drywall masonry concrete brick tile
    replaces replacing circuit circuits ckt ckts cct panel panels pnl panelboard breaker brkr relay feed feeds fed
    load loads zone zones controls controlling control ctrl switch switches switched sw switchbank dimmer fixture
    fixtures light lights lighting ltg lts luminaires receptacle low voltage lv power pwr volt volts v amp`),
  // Papers.
  ...list(`drawing drawings dwg dwgs dwg's detail det plan plans elevation elevations elev schedule sched ref
    reference refer see rev revision issued dated type tag id item line no nr number num job po order project phase
    ph stage pkg package area sheet keyed note notes shown on answered entered bid loop ada rfi submittal register asi bulletin
    submitted received reviewed`),
  // People.
  ...list(`contact attn attention foreman forman super superintendent pm gc ec architect arch owner client tenant
    engineer eng electrician contractor requested reqd his her approved confirmed verified checked measured ok okay final`),
  // When.
  ...list(`january february march april may june july august september october november december jan feb mar apr jun
    jul aug sep sept oct nov dec monday tuesday wednesday thursday friday saturday sunday mon tue tues wed thu thur
    thurs fri sat sun am pm week wk day date`),
  ...list(`device devices plate plates station stations gang gangs pos position mark one single qty quantity total
    thanks thank you thx cheers regards none na nil`),
]);

/** "US10B" is a finish of builders' hardware: the codes of ANSI/BHMA A156.18 that begin with US, from memory. */
const finish = /^US\d{1,2}[A-Z]{0,2}$/iu;

/** Who has seen it, and when: "IC 11/9/26", "approved IC 11/9". "SS 3/4" may be a finish and a measure. */
const initialed = [
  /(?<![\p{L}\p{N}])[A-Z]{2,3}\s+\d{1,2}([/-])\d{1,2}\1(?:\d{2}|20\d{2})(?!\d)/gu,
  /(?<=\b(?:approved|checked|verified|confirmed|reviewed|submitted|received)\s+(?:by\s+)?)[A-Z]{2,3}\s+\d{1,2}[/-]\d{1,2}(?!\d)/giu,
];

/** Words before a person's name. */
const beforeNames = new Set(
  list("per by for from attn attention contact foreman forman super superintendent pm mr mrs ms"),
);

/**
 * Whether every word of a sheet's notes is known to order nothing: a plain word, a number, a word of rooms, a person's
 * name, or what the sheet says elsewhere.
 */
export function isPlainNote(notes: string, sheet: Sheet, words: Words): boolean {
  const { project = "", order = "", mark = "", contact, billTo, shipTo, legends } = sheet;
  const said = [
    project,
    order,
    mark,
    contact.name,
    ...[billTo, shipTo].flatMap(({ name, city }) => [name, city]),
    ...legends.flatMap(({ rows }) => rows),
  ];
  const own = new Set(said.flatMap((text) => wordsOf(text ?? "")));
  const initials = wordsOf(contact.name ?? "").map((word) => word.slice(0, 1));
  own.add(initials.join(""));
  let isNamed = false;
  const rest = initialed.reduce((text, pattern) => text.replaceAll(pattern, " "), notes);
  return wordsOf(rest).every((word) => {
    const isName = isNamed && words.isName(word);
    isNamed = isName || beforeNames.has(word);
    return (
      isName ||
      plainWords.has(word) ||
      own.has(word) ||
      (/\p{N}|^\p{L}$/u.test(word) && !finish.test(word)) ||
      words.isOfLegends(word) ||
      words.expansions(word).length > 0
    );
  });
}

/** A mark such as LP-3 stays one word. */
function wordsOf(text: string): string[] {
  return text
    .replaceAll(/['’]s\b/gu, "")
    .split(/[^\p{L}\p{N}.'’/&+-]+/u)
    .flatMap((word) => (/\p{N}/u.test(word) ? word : word.split(/[/&+-]/)))
    .map(plainText)
    .filter((word) => word !== "");
}
