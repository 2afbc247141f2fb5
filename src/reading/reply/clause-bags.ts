import { type Act, type Form, form, mark, numbersIn, saying, sheetFor } from "./clause.ts";
import { at, field, numbers } from "./clause-words.ts";

/*
 * Clauses beside a no whose words may stand in any turn, if each is of a closed list: how a slip came about, what was
 * mended, and what shall stand there.
 */

const listOf = (words: string): string => words.trim().split(/\s+/u).join("|").replaceAll("_", " ");

/** What makes a clause one about a slip. */
const slipCore = `(?:${listOf(`
  my_bad wrong_(?:finish|colour|color|box)(?:_ticked|_picked|_chosen|_selected)? typos? mistakes? errors? slips? slipped oversight mix-?up blunder goof missed missing forgot forgotten dropped swapped
  transposed doubled crept rushed rushing mixed_up misread mistyped misspelt misspelled wrong wrongly incorrect careless
  sloppy leftover left_over left_out glasses fat clumsy autocorrect auto-correct copy-?(?:and-)?paste copy_(?:and_)?paste pasted paste spelling fault
  embarrassing silly half_asleep one_(?:letter|\\p{L})_too_many too_many_letters extra_\\p{L} double_\\p{L}`)})(?!\\p{L})`;
const slipWord = `(?:${slipCore}|${listOf(`
  i we he she they it that this these those them me us my our his her their its the an? that_one this_one
  one_letter two_letters one_\\p{L} somebody someone apprentice lad office colleague draftsman draughtsman secretary typist
  is are was were be been being has have had did letters? digits? vowels? characters? word box
  fingers? thumbs? keyboard keys? brain eyes from_the_last_(?:job|project|sheet) of_the_last_(?:job|project|sheet)
  last_night the_last_time old just clearly obviously simply really plain again somehow somewhere a_bit in on off up
  from with by of at to for and copy copied typed wrote hit pressed filled entered ticked picked went gone
  rush hurry phone van truck train so very sorry there here button_\\d{1,2} row_\\d{1,2} \\p{L}`)})(?!\\p{L})`;
const slip = `${slipWord}(?: ${slipWord}){0,11}`;
const hasSlip = new RegExp(`(?<![\\p{L}\\p{N}])${slipCore}(?![\\p{L}\\p{N}])`, "iu");
/** A button that is missing is wanted. */
const lacks =
  /(?:button|row) \d.*(?:missing|missed|forgot|dropped|left out)|(?:missing|missed|forgot|dropped|left out).*(?:button|row) \d/iu;

/** What makes a clause one about what was mended on a sheet. */
const mendCore = `(?:${listOf(`
  corrected fixed revised shortened amended updated redone abbreviated added filled filled_in filled_out completed
  entered ticked attached enclosed sorted relabelled renamed retyped reworded`)})`;
const mendWord = `(?:${mendCore}|${field}|${listOf(`
  sheets? forms? pdfs? files? the an? our my both all two three four now again too also as_well on_it in_it in there
  here is are was were has have had been with and i we it them that this_time missing proper right correct full complete
  as_same_as new shorter legends? names? same_as same bill-?to ship-?to box boxes \\p{L}(?!\\p{L})`)})`;
const mend = `${mendWord}(?: ${mendWord}){0,11}`;
const hasMend = new RegExp(`(?<![\\p{L}\\p{N}])${mendCore}(?![\\p{L}\\p{N}])`, "iu");

/** "Have it corrected" asks for it. */
const has = /(?<!(?:i|we|they|it) )(?<!\p{L})(?:have|had)(?!\p{L})/iu;
/** "With the address filled in" belongs to a sheet. */
const mending = (whole: string): Act =>
  /^(?:and )?with /iu.test(whole) ? { kind: "carries", words: [], isBehind: true } : sheetFor([], true);

/** What may stand around words in capitals that shall stand on the sheet. */
const glue = `(?:${listOf(`
  is are was should must be to read reads say says type typed write have has been meant intended supposed now it that this
  one that_one the_first_one the_second_one both they i we obviously of_course clearly a_typo a_mistake a_slip correct right with_an?_\\p{L}
  as_one_word over_(?:two|both|the)_rows on_(?:two|both|the)_rows instead for and the button_\\d{1,2} row_\\d{1,2} changed corrected
  renamed them
  on_it on_the_(?:new|attached|corrected|revised)(?:_(?:sheet|one|pdf))?`)})`;
const written = String.raw`[\p{L}\p{N}&'/-]+`;
const wanted = `${written}(?: ${written}){0,14}`;
const isGlue = new RegExp(`(?<![\\p{L}\\p{N}])${glue}(?![\\p{L}\\p{N}])`, "giu");
const isSaidToBe =
  /(?<!\p{L})(?:should|must|now|meant|supposed|corrected|changed|renamed|typo|obviously|of course)(?!\p{L})/iu;

const capital = /^\p{Lu}[^\p{Ll}]*$/u;
/** No legend, though somebody may shout it. */
const bidding =
  /^(?:yes|no|ok|okay|not|never|stop|hold|wait|cancel|asap|urgent|rush|call|phone|please|pls|order|orders|only|all|both|send|make|cut|do|don'?t|change|add|remove|keep|leave|new|sheet|attached|brass|bronze|gold|silver|black|white|chrome|steel|stainless|red|blue|green|grey|gray|oak|walnut|capitals|caps|bold|logo|star|heart|arrow)$/iu;

/** Whether words are some in capitals, and nothing else but what stands around such. */
function tellsWords(said: string): boolean {
  const left = said
    .replace(/(?<=\p{Lu} )the word|the word(?: \d{1,2}(?!\d)|(?= \p{Lu}(?!\p{Ll})))/gu, "WW")
    .replace(isGlue, " ")
    .trim();
  return (
    /\p{Lu}{2}/u.test(left) && left.split(/\s+/u).every((word) => capital.test(word) && !bidding.test(word))
  );
}

const subject = `(?:${at}:? )?(?<of>${numbers})`;

export const bags: readonly Form[] = [
  form(slip, (_, whole) => (hasSlip.test(whole) && !lacks.test(whole) ? { kind: "owns" } : undefined), {
    ends: true,
  }),
  form(
    `${subject}${mark}(?<what>${mend})`,
    ({ of, what = "" }) =>
      hasMend.test(what) && !has.test(what) && !/^with /iu.test(what)
        ? sheetFor(numbersIn(of), true)
        : undefined,
    { ends: true },
  ),
  form(
    `(?:(?:i|we)(?: have)? )?(?:corrected|fixed|revised|shortened|amended|updated) (?<of>${numbers}) and (?<what>${mend})`,
    ({ of, what = "" }) =>
      hasMend.test(what) && !has.test(what) ? sheetFor(numbersIn(of), true) : undefined,
    { ends: true },
  ),
  form(mend, (_, whole) => (hasMend.test(whole) && !has.test(whole) ? mending(whole) : undefined), {
    ends: true,
  }),
  form(wanted, (_, whole) => (tellsWords(whole) ? { kind: "words" } : undefined), { ends: true }),
  form(
    `${subject}${mark}(?<what>${wanted})`,
    ({ of, what = "" }) =>
      isSaidToBe.test(what) && tellsWords(what) ? saying(numbersIn(of), false, true) : undefined,
    { ends: true },
  ),
];
