import { answersBeside } from "../../../src/reading/reply/answers-beside.ts";
import { statementsIn } from "../../../src/reading/reply/statements.ts";
import { notesIn } from "../../bench/notes.ts";
import { catalogue } from "../../make/config.ts";

const [{ facts } = { facts: undefined }] = notesIn("cover");
if (facts === undefined) throw new Error("no notes");
const noted = facts;

export const subject = "CONFIRM: order EL-100, questions to answer";
export const answer = [
  "CONFIRM: questions to answer.",
  "  1. Shorten it, and send the sheet again.",
  "  2. “SALONA” in row 1 of button 1 looks misspelt.",
  "  3. “SALONA” in row 1 of button 2 looks misspelt.",
].join("\n");

/** What a reply to that answer says. A point to fix comes first, then the questions that are open. */
export function read(
  text: string,
  {
    open = [2, 3],
    others = 1,
    prefix = "Re:",
    answer: asks = answer,
    bringsSheets = false,
    onSheets = [],
  }: {
    open?: readonly number[];
    others?: number;
    prefix?: string;
    answer?: string;
    bringsSheets?: boolean;
    /** The words that stand on the sheets that came. */
    onSheets?: readonly string[];
  } = {},
): { yes: number[]; no: number[]; person: boolean } {
  const names = ["Dana Whitlock"];
  const { answers, statements } = answersBeside(
    text,
    {
      open,
      others,
      answer: asks,
      subject,
      isFurniture: () => false,
      names,
      bringsSheets,
      sheetsNamed: () => undefined,
      isOnSheets: (words) => onSheets.includes(words),
    },
    (understood) =>
      statementsIn(
        { subject: `${prefix} ${subject}`, text },
        {
          facts: { ...noted, names },
          goods: catalogue,
          furniture: new Set(),
          quoted: [{ text: asks, subject }],
          understood,
        },
      ),
  );
  return { yes: [...answers.yes], no: [...answers.no], person: statements.length > 0 };
}

/** A reply that no person has to read. */
export const plainly = (yes: number[], no: number[] = []): ReturnType<typeof read> => ({
  yes,
  no,
  person: false,
});
