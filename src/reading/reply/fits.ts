import { isNearQuestion } from "./talk.ts";

/** Whether words fit the question that they are said of. */
export type Fits = (question: string, found: RegExpExecArray) => boolean;

/*
 * Words that fit questions of one kind, known by what these say.
 */

export const atCapitals: Fits = (question) => /are in capitals, such as/u.test(question);
export const atSeveral: Fits = (question, { groups }) =>
  /asks? for several\. A sheet orders one/u.test(question) &&
  question.toUpperCase().includes((groups?.["quoted"] ?? "").toUpperCase());
export const atSame: Fits = (question) =>
  /^“[^”]+” stands (?:on|twice)|^The devices for positions .* have the same legends/u.test(question);
export const atExchanged: Fits = (question) =>
  /^The legends of position \d+ of plate .* suit “/u.test(question);
/** "Two boards", where BOARD stands twice. */
export const isOfTwice: Fits = (question, { groups }) => {
  const [word, near] = [
    /^“([^”]+)” stands (?:on|twice)/u.exec(question)?.[1]?.toLowerCase(),
    groups?.["near"],
  ];
  return word !== undefined && [word, `${word}s`].includes(near?.toLowerCase() ?? "");
};
/** What stands on no sheet where it is looked for: "X-3 should say EXAM 3". */
export const isOnNone: Fits = (question, { groups }) =>
  /, and “([^”]+)” on none\./u.exec(question)?.[1]?.toLowerCase() ===
  groups?.["none"]?.replace(/["“”]/gu, "").toLowerCase();
export const atDigits: Fits = (question) => /mixes digits and letters that look alike/u.test(question);
/** The word that a question takes for misspelt. */
const wordIn = (question: string): string | undefined => /^“([^”]+)” .*looks misspelt/u.exec(question)?.[1];
export const atWord: Fits = (question) => wordIn(question) !== undefined;
/** A word that does not fit is the one that we took it for. */
export const atSpelling: Fits = (question, { groups }) =>
  atWord(question, {} as RegExpExecArray) && question.includes(` ${(groups?.["full"] ?? "").toUpperCase()}`);
export const atFinish: Fits = (question) => /^The (?:finish|device|plate) is /u.test(question);
/** One of the finishes that a question tells apart. */
export const ofFinish: Fits = (question, { groups }) =>
  /^The (?:finish|device|plate) is /u.test(question) &&
  new RegExp(`(?: is |and )${RegExp.escape(groups?.["finish"] ?? "?")}(?:[ ,.])`, "u").test(question);
export const atNear: Fits = (question, { groups }) => {
  const word = wordIn(question) ?? "";
  return isNearQuestion(groups?.["near"] ?? "", [word.toLowerCase()]);
};
/** The word itself, or one of several such: "cove" where COVES is in question. */
export const nearWord: Fits = (question, { groups, 0: whole }) => {
  const [word, near] = [(wordIn(question) ?? "").toLowerCase(), groups?.["near"]?.toLowerCase()];
  return (
    word !== "" && (near === undefined ? whole.includes("the word") : word === near || word === `${near}s`)
  );
};

/** "Two Gs" of SNUGG, "no second T" of STRECH: the word has as many. */
export const hasLetters: Fits = (question, { groups }) => {
  const [count = "", letter = ""] = [groups?.["count"], groups?.["letter"]].map((one) => one?.toUpperCase());
  const word = wordIn(question)?.toUpperCase();
  const has = word?.split(letter).length ?? 0;
  if (word === undefined || letter === "") return false;
  if (/SECOND|NO DOUBLE|WITHOUT (?:A|THE) DOUBLE|SINGLE|ONE/u.test(count)) return has === 2;
  if (/DOUBLE/u.test(count)) return word.includes(letter + letter);
  if (count.startsWith("TWO")) return has === 3;
  if (count.startsWith("THREE")) return has === 4;
  return /^(?:NO|WITHOUT)/u.test(count) ? has === 1 : has > 1;
};

/** "C-W-T-C-H" */
export const isSpeltOut: Fits = (question, { groups }) =>
  (groups?.["letters"] ?? "").replace(/\P{L}/gu, "").toUpperCase() === wordIn(question)?.toUpperCase();

/** "Plum on Barley is what he wants", of finishes as they were found, and not as they might be. */
export const isAsFound: Fits = (question, { groups }) => {
  const [, found, other] =
    /^The (?:finish|device|plate) is (.+?)(?: here and (.+?) on|, but .+? is (.+?)\.)/u.exec(question) ?? [];
  const under = groups?.["under"]?.toLowerCase();
  return (
    found?.toLowerCase() === groups?.["finish"]?.toLowerCase() &&
    (under === undefined ||
      (under !== found?.toLowerCase() && question.toLowerCase().includes(` ${under}`))) &&
    (other === undefined || other.toLowerCase() !== groups?.["finish"]?.toLowerCase())
  );
};

/** The buttons that say the same. */
export const hasButton: Fits = (question, { groups }) =>
  atSame(question, {} as RegExpExecArray) &&
  [groups?.["button"], groups?.["other"]].every(
    (one) =>
      one === undefined || new RegExp(`(?<!\\d)${one}(?!\\d)`, "u").test(question.replace(/“[^”]*”/u, "")),
  );
