import distance from "damerau-levenshtein";
import { memory } from "../../trade/memory.ts";
import { type LetterFacts, withoutFacts } from "./tallies.ts";
import { tokensOf } from "./word-bag.ts";

const words = (list: readonly string[]): RegExp =>
  new RegExp(`(?<![\\p{L}\\p{N}])(?:${list.join("|")})(?![\\p{L}\\p{N}])`, "iu");

/**
 * Words in a file's name that would keep a clerk from having it cut. Names are full of words that were left as they
 * were. So only these words count, and not what would be a wish in a sentence.
 */
const against = words([
  // Not to be made.
  "cancel(?:s|led|ed|l?ing|lation)?|void(?:ed)?(?! deck)|scrap(?:ped)?|withdrawn|delet(?:e|ed|ion)|remov(?:e|ed)|rejected|ignore|disregard|discard(?:ed)?|trash|junk|skip",
  "do ?n[o'’]?t|don ?t|dont|not(?:final)?|never|no longer|dnu|dnm|dns|n ?[/-] ?a",
  // Not yet.
  "(?<!(?:cargo|fore|aft|ship s) )hold(?! ?\\d)|holding|on hold|held|await(?:s|ing)?|wait(?:ing)?(?! (?:room|area|hall|lounge|◈))|pending|stop (?:work|production|cutting)|tb[acd]|t ?\\. ?b ?\\. ?[acd]|(?:to|must) be (?!made|cut|engraved)\\p{L}+(?:ed|en|t)|unconfirmed|unapproved|unsigned|incomplete|unfinished|unchecked|wip|in progress",
  "drafts?(?! ?house)|prelim(?:inary)?|tentative|provisional|proposed|proposal|for (?:your |client |owner |our )?(?:approval|review|comments?|discussion|checking|pricing|quote|quotation|tender|bid|info|information|reference|record)(?: only)?|review only|ref only|quotes?|quotation|pricing|budgetary|estimate|rfq",
  // Not the right one.
  "obsolete|outdated|superseded|replaced|old (?:versions?|revs?|revisions?|ones?|sheets?|cop(?:y|ies)|files?|drafts?|legends?|do|dont|not)|out ?of ?date|expired|wrong|incorrect|mistakes?|errors?|bad (?:sheet|copy|one|file|version)|misspel\\p{L}+|test (?:only|sheet|file)|dummy|samples? only|examples?(?: only| sheet)|training(?! (?:room|center|centre|area|hall))|mock ?ups?",
  // Different from what it says.
  "(?:change|make|add|replace|swap|use|should (?:be|say|read)|instead(?: of)?|but|except|without|same (?:again|as)|like|see (?:e-?mail|notes?|below|letter|body)|ask|call|check (?:with|first|spelling)|confirm|verify|please|pls)(?! (?:up )?(?:room|area))",
  "urgent|rush|asap|hurry|priority",
  // Several of it.
  "qty|quantity|x[2-9]|x[1-9]\\d|(?<!\\d )x [2-9]|[2-9] ?x(?! ?\\d)|[2-9] (?:off|pcs|pieces|ea|each|times|copies|needed|required|wanted)|[2-9] of (?! ?\\d)|(?:two|three|four|five|six|eight|ten|both|several) (?:off|of|needed|required|wanted|times|copies|pieces)|typ(?:ical)? (?:of|x) ?\\d|twice|(?:one|1) (?:per|for each|for every|each)|per (?:floor|room|unit|level|door|house)|(?:for )?(?:every|each|all) (?:floors?|rooms?|units?|levels?)|duplicate|double(?! (?:height|doors?|rooms?|bed|volume|gang))",
  // French, Spanish, German.
  "annul\\p{L}*|ne pas|pas bon|brouillon|en attente|remplac\\p{L}*|p[ée]rim\\p{L}*|no (?:usar|hacer|cortar|fabricar|enviar|grabar)|anulad[oa]s?|cancelad[oa]s?|borrador|pendiente|storniert|nicht|entwurf|ung[üu]ltig|veraltet|falsch",
]);

/** Names of what shows how an order is to be made otherwise than its sheets say. */
const shows = words([
  "sketch(?:es)?|mark(?:ed)?[ -]?ups?|marked|red ?lin(?:e|es|ed)|annotat(?:ed|ions?)|chang(?:e|es|ed)|corrections?|revisions?|comments?",
]);

/** A name that is one of these, or ends with one, is an older copy that was kept, or no order. */
const atEnd = /(?:^|[^\p{L}\p{N}])(?:old|older|bad|sample|example|test|spare|orig(?:inal)?)$/iu;
/** The longer words among them, which are often mistyped. */
const long =
  "cancelled canceled superseded obsolete outdated withdrawn approval preliminary provisional pending quotation".split(
    " ",
  );
/** Words for what was wrong and is mended. */
const mended = words(["corrected|fixed|mended|amended|revised|updated"]);
const amiss = words(["wrong|incorrect|mistakes?|errors?|misspel\\p{L}+|replaced"]);

/** Whether a word is one of the long ones, or a slip of one. */
function isNearly(word: string): boolean {
  return long.some((one) => one[0] === word[0] && distance(one, word).steps === 1);
}

/** Whether the name of a file, or a folder that it lay in, speaks against making the file as it is. */
export function speaksAgainstIt(name: string, facts: LetterFacts): boolean {
  return name.includes("?") || name.split("/").some((one) => isAgainst(one, facts));
}

/** Whether the name of a file that is not read says that the file shows what is to be made. */
export function showsWhatToMake(name: string, facts: LetterFacts): boolean {
  return shows.test(bareName(name, facts));
}

const withoutFiles = memory((facts: LetterFacts): LetterFacts => ({ ...facts, files: [] }));

/** A file's name as words, without its ending and what is known of the order. */
function bareName(name: string, facts: LetterFacts): string {
  const stem = name.normalize("NFKC").replace(/\.[a-z]{2,5}$/i, "");
  return withoutFacts(stem, withoutFiles(facts))
    .replace(/(?<=\p{Ll})(?=\p{Lu})|(?<=\p{L})(?<![xX])(?=\p{N})|(?<=\p{N})(?=\p{L}{2})/gu, " ")
    .replace(/[_\-–—.,+~()[\]{}!]+/g, " ")
    .replace(/\s+/g, " ")
    .trim();
}

function isAgainst(name: string, facts: LetterFacts): boolean {
  const bare = bareName(name, facts);
  const left = mended.test(bare) ? bare.replace(new RegExp(amiss, "giu"), " ") : bare;
  return against.test(left) || atEnd.test(left) || tokensOf(left).some(isNearly);
}
