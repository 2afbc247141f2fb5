import { readFileSync } from "node:fs";
import { legend } from "../../src/checks/sample.ts";
import { answersBeside } from "../../src/reading/reply/answers-beside.ts";
import { isRemembered, lineKeysOf } from "../../src/reading/reply/furniture.ts";
import { statementsIn } from "../../src/reading/reply/statements.ts";
import type { LetterFacts } from "../../src/reading/reply/tallies.ts";
import type { FaceName } from "../../src/trade/legend.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { catalogue, maker } from "../make/config.ts";
import { aloneDevice } from "../make/sample.ts";
import { notesIn } from "./notes.ts";

/** A reply to an answer that asked these questions, and what a good clerk takes it for. */
export interface Reply {
  readonly questions: readonly number[];
  readonly fixes: readonly number[];
  /** The name in its From field. */
  readonly from: string;
  readonly text: string;
  readonly yes: readonly number[];
  readonly no: readonly number[];
  readonly person: boolean;
  /** The answer that it quotes, where it is not the one that answerOf() makes. */
  readonly answer?: string;
  /** What the mail program puts before the subject, where it is not "Re:". */
  readonly prefix?: string;
  /** Whether a link of the answer's page began it. Its subject, the reference, is taken out before it is read. */
  readonly clicked?: boolean;
  /** Whether sheets come with it, where that is not told by its words. */
  readonly brings?: boolean;
}

const subject = "CONFIRM: order EL-100, questions to answer";
const point = (number: number, fix: string): string =>
  `${`${number}.`.padStart(4)} “SALONA” in row 1 of button 1 looks misspelt.\n     ${fix}`;
const asks = (number: number): string =>
  point(
    number,
    `If you mean SALON, send the sheet again.\n     Or reply “${number} YES” if it is meant as it stands.`,
  );
const stops = (number: number): string => point(number, "Shorten it, and send the sheet again.");

/** What only our answers say. */
const ours =
  /^(?:(?:CONFIRM|FAIL): .+|Order .+|={5,}|TO FIX|PLEASE CONFIRM|\S+\.pdf|\d{1,3}\. (?:“|The (?:legend|note|sheet)|Buttons? |Row ).*|If (?:you mean|one of them) .*send the sheet again\.|Or reply “\d+ YES” if .*|Shorten it, and send .*|Fill it in, and send .*|WHAT HAPPENS NEXT|- Answer each .*|Legends are cut exactly as typed\.|Burin, the intake desk .*|row \d is not\.|Send the sheet again\.)$/u;

/** The answer as a reply quotes it by hand, point by point. Undefined if it quotes none so. */
function quotedIn(text: string): string | undefined {
  const lines = text.split("\n").flatMap((line) => {
    // Some programs make plain quotation marks of ours.
    const own = line
      .replace(/^>[> ]*/u, "")
      .trim()
      .replace(/"([^"]*)"/gu, "“$1”");
    return ours.test(own)
      ? [/^\d/u.test(own) ? `  ${own}` : /^(?:If|Or|Shorten|Fill|Send)/u.test(own) ? `     ${own}` : own]
      : [];
  });
  return lines.some((line) => /^ {2}\d/u.test(line)) ? lines.join("\n") : undefined;
}

function answerOf({ questions, fixes, text, answer = quotedIn(text) }: Reply): string {
  if (answer !== undefined) return answer;
  return [
    "CONFIRM: questions to answer before order EL-100 can be engraved.",
    "",
    "Order EL-100, Larkspur Library",
    "==============================",
    ...(fixes.length === 0 ? [] : ["TO FIX", "", "S-101.pdf", ...fixes.map(stops), ""]),
    "PLEASE CONFIRM",
    "",
    "S-102.pdf",
    ...questions.map(asks),
    "",
    "WHAT HAPPENS NEXT",
    "",
    "- Answer each question in a reply to this letter, by its number.",
    "",
    "Legends are cut exactly as typed.",
    "",
    "-- ",
    "Burin, the intake desk of Quillgate Stations",
  ].join("\n");
}

/** A point as an answer has it, with the lines below it. */
const pointOf = (answer: string, number: number): string | undefined =>
  new RegExp(`^ *${number}\\. .*(?:\\n {5}.*)*`, "mu").exec(answer)?.[0];

function textOf(reply: Reply): string {
  const answer = answerOf(reply);
  const marked = (text: string): string => text.replace(/^/gm, "> ");
  return reply.text
    .replace(
      /^(\*?(?:Subject|Betreff|Objet|Asunto|Assunto|Oggetto|Onderwerp|Ämne|Emne|Temat|Aihe|Konu|Předmět|主题|件名) ?[:：]\*?).*$/gm,
      `$1 ${reply.prefix ?? "RE:"} ${subject}`,
    )
    .replaceAll("{{ANSWER}}", () => marked(answer))
    .replaceAll("{{ANSWER:plain}}", () => answer)
    .replace(/\{\{ITEM:(\d+)\}\}/g, (_, typed: string) => {
      const number = Number(typed);
      const own = reply.answer === undefined ? undefined : pointOf(reply.answer, number);
      return marked(own ?? (reply.fixes.includes(number) ? stops(number) : asks(number)));
    });
}

const [{ facts } = { facts: undefined }] = notesIn("cover");
if (facts === undefined) throw new Error("no notes");
const letterFacts = facts;

const finishes = [...catalogue.finishes, ...maker.catalogue.finishes].map(({ name }) => name);

/** What the desk knows of the order that an answer is about, as far as the answer tells. */
function factsOf(reply: Reply): LetterFacts {
  const known = { ...letterFacts, names: [reply.from] };
  const [, order, project] = /^Order (\S+), (.+)$/mu.exec(reply.answer ?? "") ?? [];
  if (reply.answer === undefined || order === undefined || project === undefined) return known;
  const found = reply.answer.matchAll(/^(?:Device alone|Device|Plate), (\S+)/gmu);
  const marks = [...new Set([...found].map(([, mark = ""]) => mark))];
  const came = Number(/^(\d+) sheets? came/mu.exec(reply.answer)?.[1] ?? 1);
  // A reply may bring any of them again.
  const counts = Array.from({ length: came }, (_, i) => i + 1);
  return {
    ...known,
    numbers: [order],
    projects: [project],
    marks,
    finishes: finishes.filter((one) => reply.answer?.includes(one)),
    otherFinishes: finishes.filter((one) => reply.answer?.includes(one) === false),
    plates: counts,
    devices: counts,
    sheets: comesWithSheets(reply) ? marks.map((mark) => sheetOf(mark, reply)) : [],
  };
}

/** A sheet that has the words in capitals of the reply that it comes with. */
function sheetOf(mark: string, { text }: Reply): Sheet {
  const own = text.replace(/^>.*$/gmu, "");
  const words = own.match(/(?<![\p{L}\p{N}])\p{Lu}[\p{Lu}\p{N}]+(?: [\p{Lu}\p{N}]+)*(?!\p{L})/gu) ?? [];
  return aloneDevice({ mark, legends: words.map((one, i) => legend(`${i + 1}` as FaceName, one)) });
}

/** Answers of this desk that replies name, each with the numbers of its points. */
const letters = JSON.parse(readFileSync("tests/bench/replies/letters.json", "utf8")) as Readonly<
  Record<string, Pick<Reply, "questions" | "fixes" | "answer">>
>;

const load = (set: string): Reply[] =>
  readFileSync(`tests/bench/replies/${set}.jsonl`, "utf8")
    .trim()
    .split("\n")
    .map((line) => JSON.parse(line) as Reply & { readonly letter?: string })
    .map((reply) => ({ ...letters[reply.letter ?? ""], ...reply }));
/** The sets in the turn in which they came. tests/bench/replies.ts tells how. */
export const sets = [
  "first",
  "second",
  "third",
  "fourth",
  "fifth",
  "sixth",
  "seventh",
  "eighth",
  "ninth",
  "tenth",
  "eleventh",
  "twelfth",
  "thirteenth",
  "fourteenth",
  "fifteenth",
  "sixteenth",
  "seventeenth",
  "eighteenth",
  "nineteenth",
  "twentieth",
  "twenty-first",
  "twenty-second",
  "twenty-third",
  "twenty-fourth",
  "twenty-fifth",
  "twenty-sixth",
  "twenty-seventh",
  "twenty-eighth",
  "twenty-ninth",
  "thirtieth",
  "thirty-first",
  "thirty-second",
  "thirty-third",
] as const;
const replies = new Map(sets.map((set) => [set, load(set)]));
/** One half of a set: every second reply. */
const halfOf = (set: (typeof sets)[number], half: 1 | 2): readonly Reply[] =>
  (replies.get(set) ?? []).filter((_, i) => i % 2 === half - 1);

/** Footers: lines that stand in three replies and more, as they stood in earlier letters of their senders. */
const furniture = new Set(
  [
    ...Map.groupBy(
      [...replies.values()].flat().flatMap(({ text }) => [...new Set(text.split("\n"))]),
      (line) => line,
    ),
  ]
    .filter(([line, { length }]) => length > 2 && line.length > 14)
    .flatMap(([line]) => lineKeysOf(line)),
);

/** Whether sheets come with a reply: it says so of its own. */
const bringsSheets = (text: string): boolean =>
  /\b(?:attached|attaching|enclosed|herewith|attachment|in annex|see annex|with this (?:mail|e-?mail|letter))\b/iu.test(
    text
      .split("\n")
      .filter((line) => !/^\s*>/u.test(line))
      .join("\n"),
  );

const comesWithSheets = ({ brings, text }: Reply): boolean => brings ?? bringsSheets(text);

/** What a reply is taken for, and the words that a person is told of. */
type Reading = Pick<Reply, "yes" | "no" | "person"> & { readonly said: readonly string[] };

/** What a reply is taken for, with its own text or with another. */
export function read(reply: Reply, own = reply.text): Reading {
  const text = textOf({ ...reply, text: own });
  const quoted = [{ text: answerOf(reply), subject }];
  const { answers, statements } = answersBeside(
    text,
    {
      open: reply.questions,
      others: reply.fixes.length,
      answer: answerOf(reply),
      subject,
      isFurniture: (line, signed) => isRemembered(line, furniture, signed),
      names: [reply.from],
      bringsSheets: comesWithSheets({ ...reply, text: own }),
      sheetsNamed: () => undefined,
      // What a reply says of a sheet that comes with it is so, unless other words are put into it.
      isOnSheets: () => own === reply.text,
    },
    (understood) =>
      statementsIn(
        {
          subject: reply.clicked === true ? "" : `${reply.prefix ?? "Re:"} ${subject}`,
          text,
        },
        { facts: factsOf(reply), goods: catalogue, furniture, quoted, understood },
      ),
  );
  return {
    yes: [...answers.yes],
    no: [...answers.no],
    person: statements.length > 0,
    said: statements.map((one) => ("words" in one ? one.words : one.kind)),
  };
}

const isWrong = (given: readonly number[], right: readonly number[]): boolean =>
  given.some((number) => !right.includes(number));

/** What may go amiss with a reply: where it may, and where it does. */
export const misses: Record<
  string,
  { may: (reply: Reply) => boolean; does: (reply: Reply, got: Reading) => boolean }
> = {
  "wrongly taken as YES": { may: () => true, does: (reply, got) => isWrong(got.yes, reply.yes) },
  "wrongly taken as NO": { may: () => true, does: (reply, got) => isWrong(got.no, reply.no) },
  "for a person, and not so told": { may: ({ person }) => person, does: (_, { person }) => !person },
  "understood without a person, and not so read": {
    may: ({ person }) => !person,
    // A sheet that comes settles its questions, whether a NO is read beside it or not.
    does: (reply, got) =>
      got.person ||
      got.yes.length !== reply.yes.length ||
      (got.no.length !== reply.no.length && !comesWithSheets(reply)),
  },
};

/** Each reply of a half, and what it is taken for. */
export const readHalf = (set: (typeof sets)[number], half: 1 | 2): { reply: Reply; got: Reading }[] =>
  halfOf(set, half).map((reply) => ({ reply, got: read(reply) }));

/** What a reply is taken for, in one line: the questions answered, and the words that a person is told. */
export function readingOf({ yes, no, said }: Reading): string {
  const answered = Object.entries({ YES: yes, NO: no }).flatMap(([word, numbers]) =>
    numbers.length === 0 ? [] : [`${word} ${numbers.join(" ")}`],
  );
  return [...answered, ...said.map((words) => `“${words}”`)].join(", ") || "nothing";
}
