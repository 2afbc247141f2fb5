import { makeReport } from "../judging/report.ts";
import { withKept } from "../lettering/kept.ts";
import type { Claim, Outcome } from "../ports/store.ts";
import { headerLines } from "../reading/letter/header-lines.ts";
import { readHeader } from "../reading/letter/letter.ts";
import { after } from "./answer.ts";
import { answerTo } from "./compose.ts";
import type { Desk } from "./desk.ts";
import { refusalOf } from "./etiquette.ts";
import { keepWords } from "./kept.ts";
import { judgeOpened, openLetter, picturesOf } from "./open.ts";
import { partyOf } from "./party.ts";
import { senderProof } from "./sender.ts";
import { tooMany } from "./too-many.ts";

/** How long to wait where a name server could not be asked about the sender, in seconds. */
const askAgain = 600;

/** How many letters of a thread are looked for, the latest. */
const mostReferences = 100;

/** Reads and checks a letter and stores what that has led to, the finished answer included. */
export async function checkLetter(
  desk: Desk,
  claim: Claim,
  bytes: Uint8Array,
): Promise<Outcome["state"] | "received"> {
  const { store, catalogue, editions, clock, rules } = desk;
  const { letter, files, links, unsafe } = await openLetter(desk.reader, bytes, String(claim.letter));
  const headers = headerLines(bytes);
  const { from } = letter;
  const proof = from === undefined ? "not asked" : await senderProof(desk, bytes, from);
  // What our mail server found stands in the letter and stays as it is.
  if (proof === "temporary" && rules.authority === undefined && claim.opened < 3) {
    await store.mark(
      claim,
      "received",
      "the sender could not be proved just now",
      clock.now(),
      after(askAgain, desk),
    );
    return "received";
  }
  const read = files.map((file) => judgeOpened(file, { editions, catalogue }));
  const sheets = read.flatMap(({ sheet }) => sheet ?? []);
  const numbers = [...new Set(sheets.flatMap(({ order }) => order ?? []))];
  const sent = await partyOf({ from, proof, numbers }, desk);
  const refusal = refusalOf({
    headers,
    ours: rules.ours,
    returnPathWritten: rules.returnPathWritten,
    ...(from === undefined ? {} : { from }),
  });
  const many = from === undefined ? undefined : await tooMany(desk, from);
  const why = refusal?.why ?? sent.why ?? many?.why;
  const answered = await store.answered([
    letter.inReplyTo ?? "",
    ...letter.references.slice(-mostReferences),
  ]);
  const brought = { files: read.map(({ file }) => file), sheets, links };
  // A letter that a person must see first keeps nothing.
  const reply = { ...brought, letter, answered: why === undefined ? answered : [], proof, party: sent };
  const { party, kept, again, stopped } = await keepWords(reply, desk);
  const { buyer } = party;
  const counting = buyer === "" ? [] : await store.countingSheets(buyer, [...numbers, ...again]);
  const report = makeReport(
    {
      ...brought,
      unsafe,
      earlier: [...counting, ...stopped.filter(({ id }) => counting.every((sheet) => sheet.id !== id))],
      held: party.why !== undefined || many !== undefined,
      reply: answered.length > 0,
      kept,
      again,
    },
    withKept(catalogue, [...(await store.keptWords(buyer)), ...kept]),
  );
  const mine = party.why === undefined ? answered.filter((one) => one.buyer === buyer) : [];
  const outcome = {
    letter,
    report,
    buyer,
    kept,
    about: [...new Set(mine.flatMap(({ orders }) => orders))],
    ...(party.domain === undefined ? {} : { domain: party.domain }),
    ...(why === undefined ? {} : { why }),
  };
  if (from === undefined || refusal !== undefined || !party.mayAnswer || many?.mayAnswer === false) {
    // Whatever machine a letter has passed, sheets are for somebody to see; a report only gives ours back.
    const isDropped = refusal?.drop === true && (refusal.always === true || sheets.length === 0);
    const state = isDropped ? "silent" : "held";
    await store.settle(claim, { ...outcome, state }, clock.now());
    return state;
  }
  const answer = await answerTo(
    { number: claim.letter, bytes, letter: { ...letter, from }, party, report, pictures: picturesOf(read) },
    desk,
  );
  await store.settle(claim, { ...outcome, state: "ready", answer }, clock.now());
  return "ready";
}

/** Holds a letter that cannot be opened, with no more than its header says. */
export async function holdUnopened(
  { store, catalogue, clock }: Desk,
  claim: Claim,
  why: string,
): Promise<void> {
  const letter = { ...(await readHeader(await store.bytesOf(claim.letter))), text: "", attachments: [] };
  const report = makeReport(
    { files: [], sheets: [], links: [], unsafe: true, earlier: [], held: true, reply: false },
    catalogue,
  );
  await store.settle(claim, { letter, report, buyer: letter.from ?? "", state: "held", why }, clock.now());
}
