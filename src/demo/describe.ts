import { z } from "zod";
import { readYaml, type Written } from "../yaml/yaml.ts";

/** What is typed on a sheet: places other than legends, then legends row by row, then faces left plain. */
const filled = {
  fill: z.record(z.string(), z.union([z.string(), z.boolean()])).default({}),
  legends: z.record(z.string(), z.array(z.string())).default({}),
  plain: z.array(z.string()).default([]),
};

const sheetSchema = z.strictObject({ edition: z.string(), ...filled });

const fileSchema = z.union([
  z.strictObject({ file: z.string(), like: z.string(), edition: z.string().optional(), ...filled }),
  z.strictObject({ file: z.string(), blank: z.string() }),
  z.strictObject({ file: z.string(), raw: z.string() }),
  z.strictObject({ file: z.string(), words: z.string() }),
  z.strictObject({
    file: z.string(),
    other: z.enum(["purchase order", "photograph", "strange form", "office document"]),
  }),
]);

const writtenBy = {
  from: z.string(),
  date: z.iso.datetime({ offset: true }),
  subject: z.string(),
  text: z.string().default(""),
};

const attachmentSchema = z.union([
  fileSchema,
  z.strictObject({ file: z.string(), zip: z.array(fileSchema) }),
  z.strictObject({ file: z.string(), winmail: z.array(fileSchema) }),
  /** A letter that is forwarded as a file. */
  z.strictObject({
    file: z.string(),
    letter: z.strictObject({ ...writtenBy, attachments: z.array(fileSchema) }),
  }),
]);

const letterSchema = z.strictObject({
  name: z.string(),
  ...writtenBy,
  /** Under the text stands a signature with a picture. */
  logo: z.boolean().default(false),
  /** The name of an earlier letter: this one replies to the answer that it got. */
  replies_to: z.string().optional(),
  attachments: z.array(attachmentSchema).default([]),
  /** What the letter must come to: its verdict, and every check that must find something in it. */
  expects: z.strictObject({ verdict: z.string(), problems: z.array(z.string()).default([]) }),
});

const noted = { date: z.iso.datetime({ offset: true }), by: z.string(), why: z.string() };
/** The verdict that the order must come to. */
const of = { order: z.string(), comes_to: z.string().optional() };

/** What one of our own people does between the letters: with a letter, by its name, or with an order. */
const noteSchema = z.discriminatedUnion("does", [
  z.strictObject({ ...noted, does: z.enum(["let-in", "aside"]), letter: z.string() }),
  z.strictObject({ ...noted, does: z.enum(["yes", "no", "waive"]), ...of, points: z.array(z.number()) }),
  z.strictObject({ ...noted, does: z.literal("release"), ...of }),
  z.strictObject({ ...noted, does: z.literal("cut"), ...of, stations: z.array(z.string()) }),
]);

const lettersSchema = z.strictObject({
  letters: z.array(letterSchema),
  notes: z.array(noteSchema).default([]),
});

/** A sheet described by what is typed on it. */
export type SheetDescription = z.output<typeof sheetSchema>;
export type AttachmentDescription = z.output<typeof attachmentSchema>;
export type LetterDescription = z.output<typeof letterSchema>;

export function readSheetDescription(text: string, file: string): Written<SheetDescription> {
  return readYaml(text, file, sheetSchema);
}

export type NoteDescription = z.output<typeof noteSchema>;

export function readLetterDescriptions(
  text: string,
  file: string,
): Written<{ letters: LetterDescription[]; notes: NoteDescription[] }> {
  return readYaml(text, file, lettersSchema);
}
