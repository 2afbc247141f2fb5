import { tokensOf } from "./word-bag.ts";

/** "The corrected sheet", "a good one". */
const newSheet =
  /\b(?:(?:another|other|fresh|new|right|good|correct(?:ed)?|revised|fixed|updated|proper|amended) )(?:sheets?|ones?|files?|forms?|pdfs?|versions?|documents?)\b|\b(?:sheets?|files?|forms?|pdfs?)(?: again)?\b/giu;
/** What people say who own a slip and promise a sheet. None of these words can turn a no. */
const owning = new Set(
  tokensOf(
    `i we will ll am are is was it that this the a an my our from by on in at to of for you me us and so side end part
    office mistake mistakes mistaken error errors typo typos slip fault wrong wrongly sorry apologies apologise apologize
    excuse regret please bad again send sends sending sent resend reissue reissued issue issued make making prepare follow
    follows following coming come comes reach arrive get soon shortly later today tonight tomorrow tomorow tommorow
    morning afternoon evening day week monday tuesday wednesday thursday friday saturday sunday asap out over with
    inshallah inchallah fix correct correcting fixing it's i'll thanks thank oops quite totally made did do be have has drafting
    typing finding seeing noticing inconvenience trouble confusion comin now mine your way en route one hour hours my friend
    fixin resendin it wrong will`,
  ),
);

/** Whether a sentence beside a no owns a slip, or promises a sheet. It names no number and no other sheet. */
export function isAmends(sentence: string): boolean {
  const tokens = tokensOf(
    sentence
      .replace(newSheet, " i ")
      .replace(
        /\b(?:good|nice|great) (?:catch|spot)\b|\bwell spotted\b|\byou are (?:quite |so )?right\b|\bthank(?:s| you) for (?:seeing|finding|noticing|catching|spotting) (?:it|this|that)\b/giu,
        " sorry ",
      ),
  );
  return (
    tokens.length > 0 &&
    !/[?\d"“”:]/u.test(sentence) &&
    tokens.every((token) => owning.has(token)) &&
    (sentence.search(newSheet) >= 0 ||
      /\b(?:mistakes?|errors?|typos?|slip|fault|wrong|sorry|apolog\w+|excuse|bad|typing|catch|spotted)\b/iu.test(
        sentence,
      ))
  );
}
