import { makeReport } from "../judging/report.ts";
import type { Claim, Outcome } from "../ports/store.ts";
import { headerLines } from "../reading/letter/header-lines.ts";
import { readHeader } from "../reading/letter/letter.ts";
import { answerTo } from "./compose.ts";
import type { Desk } from "./desk.ts";
import { refusalOf } from "./etiquette.ts";
import { partyOf } from "./party.ts";
import { senderProof } from "./sender.ts";

/**
 * Leaves a letter that cannot be opened to a person, with no more than its header says. If its sender may be told
 * anything, he is told that a person looks.
 */
export async function leaveUnopened(
  desk: Desk,
  claim: Claim,
  why: string,
  tells = true,
): Promise<Outcome["state"]> {
  const { store, catalogue, clock, log } = desk;
  const bytes = await store.letters.bytesOf(claim.letter);
  const letter = { ...(await readHeader(bytes)), text: "", attachments: [] };
  const bare = { files: [], sheets: [], unsafe: true, held: true };
  const report = makeReport(bare, catalogue);
  const answer = !tells
    ? undefined
    : await tell().catch((cause: unknown) => {
        log.warn({ letter: claim.letter, cause }, "the sender of a letter that cannot be opened is not told");
        return undefined;
      });
  const state = answer === undefined ? "held" : "ready";
  const outcome = {
    letter,
    report,
    buyer: letter.from ?? "",
    version: 0,
    changes: [],
    forPerson: true,
    why,
    ...(answer === undefined ? {} : { answer }),
  };
  await store.letters.settle(claim, { ...outcome, state }, clock.now());
  return state;

  /** The answer that says so; undefined where none may go out. */
  async function tell(): Promise<Outcome["answer"]> {
    const { rules } = desk;
    const { from } = letter;
    if (from === undefined) return undefined;
    const { ours, returnPathWritten } = rules;
    if (refusalOf({ headers: headerLines(bytes), from, ours, returnPathWritten }) !== undefined)
      return undefined;
    const proof = await senderProof(desk, bytes, from);
    const party = await partyOf({ from, proof, numbers: [] }, desk);
    if (!party.mayAnswer) return undefined;
    const held = { number: claim.letter, bytes, letter: { ...letter, from }, party, report };
    return answerTo({ ...held, pictures: new Map() }, desk);
  }
}
