import { createHash } from "node:crypto";
import type { Judged } from "../reading/judge.ts";
import type { Letter } from "../trade/letter.ts";
import type { Desk } from "./desk.ts";
import type { OpenLetter } from "./open.ts";
import { refersTo } from "./reference.ts";

/** So many letters of a thread are looked for, and so many answers are opened. The latest count. */
const mostReferences = 100;
const mostAnswers = 10;

/**
 * The files of a letter, where a proof that comes back as an answer of ours enclosed it is no file of its sender's. One
 * that differs in a byte is read: somebody may have written on it. So is one that has another name, which may say
 * something. A sheet is a sheet, whoever filled it in.
 */
export async function withoutOurs(
  { letter, files }: OpenLetter,
  judged: readonly Judged[],
  desk: Desk,
): Promise<readonly Judged[]> {
  if (judged.every(({ file }) => file.kind !== "no-form")) return judged;
  const ours = await enclosedBefore(letter, desk);
  return judged.map((one, i) => {
    const { file, named = file, bytes } = files[i]?.attachment ?? { file: "" };
    if (one.file.kind !== "no-form" || bytes === undefined || !ours.has(keyOf(named, bytes))) return one;
    return { ...one, file: { ...one.file, kind: "decoration" } };
  });
}

/** Names and hashes of the files that were enclosed with the answers that a letter replies to. */
async function enclosedBefore(letter: Letter, desk: Desk): Promise<ReadonlySet<string>> {
  const { store, reader } = desk;
  const thread = [letter.inReplyTo ?? "", ...letter.references.slice(-mostReferences)];
  const answered = [...(await store.answers.answered(thread)), ...(await refersTo(letter, desk))];
  const letters = [...new Set(answered.map((one) => one.letter))].toSorted((a, b) => a - b);
  const files = new Set<string>();
  for (const number of letters.slice(-mostAnswers)) {
    const answer = await store.answers.of(number);
    const opened = answer === undefined ? undefined : await reader.letter(answer.bytes);
    if (opened?.ok === true) for (const { name, bytes } of opened.value.parts) files.add(keyOf(name, bytes));
  }
  return files;
}

/** Mail programs put "_" for a blank, and "(1)" behind a name that they have already. */
function keyOf(name: string, bytes: Uint8Array): string {
  const plain = name
    .toLowerCase()
    .replaceAll("_", " ")
    .replace(/ ?\(\d{1,2}\)(?=\.pdf$)/, "");
  return `${createHash("sha256").update(bytes).digest("hex")} ${plain}`;
}
