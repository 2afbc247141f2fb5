import type { Mail } from "../ports/mailbox.ts";
import { readAttachment } from "../reading/attachment.ts";
import { readLetter } from "../reading/letter.ts";
import { letterKey } from "../reading/letter-key.ts";
import { composeAnswer } from "../report/answer.ts";
import { composeMessage } from "../report/message.ts";
import { makeReport } from "../report/report.ts";
import { sendAnswer } from "./answer.ts";
import type { Desk } from "./desk.ts";

/** What taking a letter came to. */
export interface Taken {
  readonly letter: number;
  /** It was in the record already and is done with. */
  readonly again: boolean;
}

/** Takes one letter from the mailbox to its answer. The same letter, seen again, is answered no second time. */
export async function takeLetter(desk: Desk, { bytes, receivedAt }: Mail): Promise<Taken> {
  const { letter, state, again } = await desk.store.receive(letterKey(bytes), bytes, receivedAt);
  if (!again) await checkAndAnswer(desk, letter, bytes);
  else desk.log.info({ letter, state }, "letter seen before");
  return { letter, again };
}

/** Finishes what an earlier run left half done. */
export async function finishOpen(desk: Desk): Promise<void> {
  const { store, sender, clock } = desk;
  for (const letter of await store.inState("received"))
    await checkAndAnswer(desk, letter, await store.bytesOf(letter));
  for (const letter of await store.inState("sending", "unknown")) {
    const answer = await store.answer(letter);
    const found = answer === undefined ? false : await sender.find(answer.messageId);
    if (found === undefined)
      await store.hold(letter, "nobody can see whether the answer went out", clock.now());
    else
      await store.mark(
        letter,
        found ? "sent" : "ready",
        found ? "found among the answers" : "not found",
        clock.now(),
      );
  }
  for (const letter of await store.inState("ready", "later")) await sendAnswer(desk, letter);
}

/** The Message-ID of the answer to a letter: it follows from the letter, so that a lost answer can be looked for. */
export function answerId(bytes: Uint8Array, from: string): string {
  return `<burin.${letterKey(bytes).slice(0, 32)}@${from.split("@")[1]}>`;
}

async function checkAndAnswer(desk: Desk, letter: number, bytes: Uint8Array): Promise<void> {
  try {
    await checkLetter(desk, letter, bytes);
  } catch (cause) {
    // One letter that the program cannot cope with costs its own answer and nothing else.
    desk.log.warn({ letter, cause }, "letter held: the program failed on it");
    await desk.store.hold(
      letter,
      `the program failed on it: ${cause instanceof Error ? cause.message : ""}`,
      desk.clock.now(),
    );
    return;
  }
  await sendAnswer(desk, letter);
}

async function checkLetter(desk: Desk, id: number, bytes: Uint8Array): Promise<void> {
  const { store, catalogue, editions, clock } = desk;
  const letter = await readLetter(bytes, String(id));
  const read = await Promise.all(
    letter.attachments.map((attachment) => readAttachment(attachment, { editions, catalogue })),
  );
  const sheets = read.flatMap(({ sheet }) => sheet ?? []);
  const numbers = [...new Set(sheets.flatMap(({ order }) => order ?? []))];
  const buyer = letter.from;
  // Whoever names an order of somebody else learns nothing about it; a person looks first.
  const strange = await Promise.all(numbers.map((number) => store.belongsToAnother(number, buyer ?? "")));
  const held = strange.includes(true);
  const report = makeReport(
    {
      files: read.map(({ file }) => file),
      sheets,
      earlier: buyer === undefined ? [] : await store.countingSheets(buyer, numbers),
      held,
      reply: await store.isAnswer([letter.inReplyTo ?? "", ...letter.references]),
    },
    catalogue,
  );
  if (buyer === undefined) {
    await store.settle(
      id,
      { letter, report, buyer: "", why: "it has no single sender to answer" },
      clock.now(),
    );
    return;
  }
  const words = composeAnswer(report, catalogue);
  const messageId = answerId(bytes, desk.from.address);
  const message = await composeMessage(
    {
      from: desk.from,
      to: buyer,
      date: clock.now(),
      messageId,
      ...(letter.messageId === undefined ? {} : { inReplyTo: letter.messageId }),
      references: letter.references,
    },
    words,
  );
  await store.settle(
    id,
    {
      letter,
      report,
      buyer,
      answer: { messageId, recipient: buyer, subject: words.subject, bytes: message },
      ...(held ? { why: "it names an order number of another buyer" } : {}),
    },
    clock.now(),
  );
}
