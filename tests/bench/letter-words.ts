/**
 * How well words of a letter are told apart, on letters written for this project: cover notes that should go
 * through, and wishes that a person has to read. Every second one was set aside before anything was tuned; its misses
 * have been looked at since. The unseen ones were written one set after the other, each after the rules had been tuned on
 * those before; they have been tuned on since. At first sight a person got 59, 55, 38 and 47 % of the cover notes of
 * the first four, and 5, 14, 8 and 0 % of their wishes were let through. Set 5 was written before the rules became
 * two-sided. Of sets 6 to 11 a person got 43, 35, 45, 35, 25 and 33 % of the cover notes at first sight, and 10, 23,
 * 18, 18, 8 and 8 % of the wishes were let through; the rules before, on the same letters, sent 83, 78, 95, 83, 80
 * and 50 % to a person and let 5, 5, 10, 3, 3 and 3 % through. Set 12 has not been tuned on: 28 and 0 %, where the
 * rules before came to 72 and 0 %. Then the rules were made stricter once more, so that no wish hides in talk about
 * oneself: a person gets 44 % of its cover notes.
 *
 * Sets 13 and 14 are letters as people write them in a working day, the second by talkers: at first sight a person got 36
 * and 58 % of the 120 cover notes of each, and 0 of 120 wishes were let through. One half of each was looked at; of the
 * others a person gets 35 and 52 %.
 *
 * Names of files came later: a hundred that should go through and eighty that speak against their sheets, written by
 * somebody who had not seen the rules. At first sight 3 of the 50 honest ones set aside were asked about, and 6 of the
 * 40 others let through; their misses have been looked at since.
 *
 * Then 600 sentences were written one by one, by somebody who had seen nothing, as hard as they come: 330 on which a
 * good clerk need do nothing, though most touch on the order, and 270 on which he must. At first sight a person got 223
 * of the former, and 17 of the latter were let through. Mended by the half that was looked at, the other half let
 * through 6 of 122 as before; all have been looked at since. What no list holds was tried on them: word statistics
 * (logistic regression on words and runs of words, and on word vectors, in cross-validation) let 1, 3 and 10 % of such
 * wishes through where a person got 78, 59 and 46 % of the rest, and could not tell a true sentence from one that is
 * wrong beside its sheets. So sentences are held against the sheets (describes.ts).
 *
 * Since a wish may sound like talk ("as I said on the phone, the hall first"), 240 such sentences were written by two
 * people who had seen nothing, avoiding every word of orders: at first sight 29 were let through, and of those half of
 * which only the count was looked at 12 of 120 were when the other half was mended. All have been looked at since, and
 * those before them by the hand that made the rules.
 *
 * Then two people who had seen nothing wrote 300 notes of facts that undo an order ("these were for the competition
 * entry; we came second"), avoiding the words of orders, and 300 of talk with as many words of the trade: at first sight
 * 35 of the former were let through, and a person got 211 of the latter. Of the former none of the half that was looked
 * at is let through since (undoes.ts), and 13 of 150 of the other half are: what such a list says carries over little.
 *
 * Then three people who had seen nothing wrote 480 short letters as they come in a working day, half of which a clerk
 * has to read, most for a fact said in passing ("the number you have is some thief's"). At first sight 22 of 240 such
 * letters were let through, and a person got 92 of the 240 others. One half of each was looked at, of the first two
 * people's letters to a person the other half too, when 5 of its 80 were let through. Of the third person's half that
 * nobody has looked at 3 of 40 are, and a person gets 48 of all 120 others that were set aside.
 *
 * Two more people who had seen nothing then wrote 320 such letters, one as small offices and house owners, the other as
 * foremen in a hurry. At first sight 7 of their 160 letters to a person were let through, and a person got 100 of the 160
 * others. All of the former have been looked at since, and of the others one half: a person gets 39 of its 80 then, and
 * 50 of the 80 that nobody has looked at. So more of honest talk goes to a person than its writers would like.
 *
 *     npx node tests/bench/letter-words.ts [--misses] [--all]
 */
import { speaksAgainstIt } from "../../src/reading/reply/file-names.ts";
import { factsIn, isToldBeside, lettersIn, namesIn, notesIn, sentencesIn, talesIn, toldIn } from "./notes.ts";

const percent = (some: number, of: number): string => `${some}/${of} ${((100 * some) / of).toFixed(1)} %`;

for (const [file, what, isMiss] of [
  ["cover", "cover notes sent to a person", (said: readonly string[]) => said.length > 0],
  ["wishes", "wishes let through", (said: readonly string[]) => said.length === 0],
] as const)
  for (const [half, notes] of [
    ["tuned on ", notesIn(file).filter(({ aside }) => !aside)],
    ["set aside", notesIn(file).filter(({ aside }) => aside)],
    ["unseen   ", notesIn(`unseen-${file}`)],
    ["unseen2  ", notesIn(`unseen2-${file}`)],
    ["unseen3  ", notesIn(`unseen3-${file}`)],
    ["unseen4  ", notesIn(`unseen4-${file}`)],
    ["unseen5  ", notesIn(`unseen5-${file}`)],
    ["unseen6  ", notesIn(`unseen6-${file}`)],
    ["unseen7  ", notesIn(`unseen7-${file}`)],
    ["unseen8  ", notesIn(`unseen8-${file}`)],
    ["unseen9  ", notesIn(`unseen9-${file}`)],
    ["unseen10 ", notesIn(`unseen10-${file}`)],
    ["unseen11 ", notesIn(`unseen11-${file}`)],
    ["unseen12 ", notesIn(`unseen12-${file}`)],
    ["unseen13 ", notesIn(`unseen13-${file}`)],
    ["unseen14 ", notesIn(`unseen14-${file}`)],
  ] as const) {
    const judged = notes.map((note) => ({ ...note, said: toldIn(note) }));
    const missed = judged.filter(({ said }) => isMiss(said));
    console.log(`${what.padEnd(30)} ${half} ${percent(missed.length, notes.length)}`);
    if (process.argv.includes("--misses") && (half === "tuned on " || process.argv.includes("--all")))
      for (const { subject, text, said } of missed)
        console.log(`    ${JSON.stringify([subject, text, said])}`);
  }

for (const [label, what, isMiss] of [
  ["pass", "single sentences sent to a person", true],
  ["person", "wishes of one sentence let through", false],
] as const) {
  const all = sentencesIn().filter((one) => one.label === label);
  const missed = all.filter(({ text }) => isToldBeside(text) === isMiss);
  console.log(`${what.padEnd(40)} ${percent(missed.length, all.length)}`);
  if (process.argv.includes("--misses")) for (const { text } of missed) console.log(`    ${text}`);
}

for (const [label, what, isMiss] of [
  ["pass", "short letters sent to a person", true],
  ["person", "wishes in short letters let through", false],
] as const)
  for (const aside of [false, true]) {
    const all = lettersIn(label, aside);
    const missed = all.filter((note) => toldIn(note).length > 0 === isMiss);
    const half = aside ? "set aside" : "tuned on ";
    console.log(`${what.padEnd(40)} ${half} ${percent(missed.length, all.length)}`);
    if (process.argv.includes("--misses") && (!aside || process.argv.includes("--all")))
      for (const { text } of missed) console.log(`    ${JSON.stringify(text)}`);
  }

const untold = talesIn().filter((tale) => !isToldBeside(tale));
console.log(
  `${"wishes that sound like talk let through".padEnd(40)} ${percent(untold.length, talesIn().length)}`,
);
if (process.argv.includes("--misses")) for (const tale of untold) console.log(`    ${tale}`);

for (const [file, what, isMiss] of [
  ["undone", "facts that undo the order let through", false],
  ["at-ease", "notes of talk sent to a person", true],
] as const)
  for (const [half, aside] of [
    ["tuned on ", false],
    ["set aside", true],
  ] as const) {
    const all = factsIn(file, aside);
    const missed = all.filter((note) => isToldBeside(note) === isMiss);
    console.log(`${what.padEnd(40)} ${half} ${percent(missed.length, all.length)}`);
    if (process.argv.includes("--misses") && !aside) for (const note of missed) console.log(`    ${note}`);
  }

const [{ facts } = { facts: undefined }] = notesIn("cover");
if (facts === undefined) throw new Error("no notes");

for (const [file, what, isMiss] of [
  ["honest", "honest names sent to a person", true],
  ["wishes", "names against it let through", false],
] as const)
  for (const [half, aside] of [
    ["tuned on ", false],
    ["set aside", true],
  ] as const) {
    const all = namesIn(file, aside);
    const missed = all.filter((name) => speaksAgainstIt(name, facts) === isMiss);
    console.log(`${what.padEnd(30)} ${half} ${percent(missed.length, all.length)}`);
    if (process.argv.includes("--misses")) for (const name of missed) console.log(`    ${name}`);
  }
