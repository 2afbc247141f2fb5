import { numbersIn } from "../answer/numbered.ts";
import { changesOf } from "../judging/changes.ts";
import { needsPerson } from "../judging/for-person.ts";
import type { Outcome } from "../ports/store.ts";
import { lineKeysOf } from "../reading/reply/furniture.ts";
import { alarmOf, heldAgain } from "./alarm.ts";
import { answerTo } from "./compose.ts";
import type { Desk } from "./desk.ts";
import type { Judgement } from "./judgement.ts";
import { allWords } from "./open.ts";
import type { OpenedLetter } from "./opened-letter.ts";
import type { SentBy } from "./sent-by.ts";
import { staysSilent } from "./silence.ts";
import { threadOf } from "./too-many.ts";
import { sendersOf, type Understood } from "./understood.ts";

/** What is stored of a letter: its answer, or why it gets none. */
export async function outcomeOf(
  { number, letter, texts, read: files, links, unsafe, pictures }: OpenedLetter,
  { proof, refusal, letIn }: SentBy,
  { party, why, manager, as }: Understood,
  { report, state, answering, about }: Judgement,
  bytes: Uint8Array,
  desk: Desk,
): Promise<Outcome> {
  const { from } = letter;
  const numbers = numbersIn(report);
  const alarm = [...(alarmOf(report) ?? []), ...heldAgain(report, state)];
  const outcome = {
    letter,
    report,
    buyer: party.buyer,
    version: state.version,
    changes: changesOf(report, state, (problem) => numbers.get(problem) ?? 0, { about }),
    kept: answering.kept,
    settles: answering.settles,
    ...(manager === undefined || answering.decides.length === 0
      ? {}
      : { decides: answering.decides, by: manager.name }),
    proof,
    thread: await threadOf(letter, desk.store),
    about,
    forPerson: needsPerson(report),
    ...(alarm.length === 0 ? {} : { alarm }),
    lines: { senders: sendersOf(letter, desk), keys: lineKeysOf(allWords({ letter, texts })) },
    ...(party.domain === undefined ? {} : { domain: party.domain }),
    ...(why === undefined ? {} : { why }),
  };
  if (from === undefined || refusal !== undefined || !party.mayAnswer) {
    const seen = { letter, bytes, files, links, unsafe };
    const isSilent = refusal !== undefined && (await staysSilent({ ...seen, refusal }, desk));
    return { ...outcome, state: isSilent ? "silent" : "held" };
  }
  // A manager's word is told to whoever wrote last about the order.
  const [order] = as.manager && !as.party ? about : [];
  const last = order === undefined ? undefined : await desk.store.orders.lastWriter(party.buyer, order);
  const to = manager?.to ?? last?.recipient;
  const by = manager?.says;
  const answer = await answerTo(
    {
      number: Number(number),
      bytes,
      letter: { ...letter, from },
      party,
      report,
      pictures,
      letIn: letIn !== undefined,
      ...(to === undefined ? {} : { to }),
      ...(by === undefined ? {} : { by }),
    },
    desk,
  );
  return { ...outcome, state: "ready", answer };
}
