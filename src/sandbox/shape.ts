import { z } from "zod";
import type { FileFacts } from "../reading/facts.ts";
import type { OpenedLetter } from "../reading/letter/letter.ts";
import type { Outline } from "../reading/own-form/outline.ts";
import type { Answers, Op } from "./message.ts";

// Only the type is checked, since a damaged page may have a width that is no number.
const size = z.custom<number>((value) => typeof value === "number");
const bytes = z.custom<Uint8Array>((value) => value instanceof Uint8Array);
const text = z.string();
const box = z.tuple([size, size, size, size]);

const part = z.strictObject({ name: text, bytes, looks: z.boolean(), dated: z.date().exactOptional() });

const bareField = z.strictObject({
  name: text,
  kind: z.enum(["text", "tick", "choice", "signature", "button"]),
  values: z.array(text),
});

const field = bareField.extend({
  unsure: z.strictObject({ one: text, other: text }).exactOptional(),
});

const widget = z.strictObject({
  field: text,
  page: size,
  box,
  shown: text.exactOptional(),
  hidden: z.boolean(),
});

const page = z.strictObject({
  width: size,
  height: size,
  text,
  drawn: z.literal(true).exactOptional(),
  ours: z.literal(true).exactOptional(),
  marks: z.array(
    z.strictObject({
      what: z.enum(["ink", "free-text", "stamp", "image", "text"]),
      box,
      text: text.exactOptional(),
    }),
  ),
});

const unpacked = {
  files: z.array(part),
  left: z.array(z.strictObject({ name: text, kind: z.enum(["archive-locked", "too-large", "damaged"]) })),
};

const words = z.strictObject({ text, unsure: z.literal(true).exactOptional() });

/** Pictures of differences are small. A process that sends a larger one has been taken over. */
const mostPicture = 200_000;

const difference = z.strictObject({
  what: z.enum([
    "field",
    "more",
    "laid",
    "other",
    "moved",
    "less",
    "page",
    "file",
    "layer",
    "program",
    "twin",
  ]),
  page: size,
  box: box.exactOptional(),
  field: text.exactOptional(),
  text: text.exactOptional(),
  picture: bytes.refine((png) => png.length <= mostPicture).exactOptional(),
});

const cell = z.strictObject({
  column: size,
  row: size,
  text,
  odd: z.enum(["formula", "shown-otherwise", "struck", "unseen"]).exactOptional(),
});

/** The sheets are made of a list later, so a process that has read one never has any. */
const list = z.strictObject({
  kind: z.literal("list"),
  text: words.exactOptional(),
  tables: z.array(z.strictObject({ name: text, rows: z.array(z.array(cell)) })),
  more: z.array(
    z.strictObject({
      what: z.enum([
        "hidden",
        "set-aside",
        "merged",
        "comment",
        "picture",
        "rule",
        "program",
        "part",
        "too-long",
      ]),
      where: text,
      text: text.exactOptional(),
    }),
  ),
});

const fileFacts: z.ZodType<FileFacts> = z.discriminatedUnion("kind", [
  z.strictObject({
    kind: z.literal("pdf"),
    fields: z.array(field),
    widgets: z.array(widget),
    pageCount: size,
    pages: z.array(page).exactOptional(),
    differences: z.array(difference).exactOptional(),
    dynamic: z.boolean(),
    portfolio: z.boolean(),
    recovered: z.boolean(),
    together: size.exactOptional(),
    attached: z.strictObject(unpacked).exactOptional(),
  }),
  z.strictObject({
    kind: z.enum([
      "locked-pdf",
      "damaged-pdf",
      "picture",
      "small-picture",
      "recording",
      "office",
      "locked-archive",
      "other",
    ]),
  }),
  list,
  z.strictObject({ kind: z.literal("text"), words }),
  z.strictObject({
    kind: z.literal("archive"),
    ...unpacked,
    words: words.exactOptional(),
  }),
]);

const openedLetter: z.ZodType<OpenedLetter> = z.strictObject({
  from: text.exactOptional(),
  fromName: text.exactOptional(),
  replyTo: text.exactOptional(),
  subject: text,
  date: z.date().exactOptional(),
  messageId: text.exactOptional(),
  inReplyTo: text.exactOptional(),
  references: z.array(text),
  text,
  textUnsure: z.literal(true).exactOptional(),
  otherTexts: z.array(text).exactOptional(),
  parts: z.array(part),
  links: z.array(text),
});

const outline: z.ZodType<Outline> = z.discriminatedUnion("kind", [
  z.strictObject({
    kind: z.literal("form"),
    pages: size,
    fields: z.array(
      bareField.extend({
        frames: z.array(
          z.strictObject({ page: size, box, tip: text.exactOptional(), on: text.exactOptional() }),
        ),
        choices: z.array(z.strictObject({ value: text, shown: text })).exactOptional(),
        most: size.exactOptional(),
        manyLines: z.literal(true).exactOptional(),
      }),
    ),
    printed: z.array(z.strictObject({ page: size, box, text })),
    nameless: size,
  }),
  z.strictObject({ kind: z.enum(["other", "locked", "damaged", "dynamic", "portfolio", "no-fields"]) }),
]);

/**
 * What an answer must look like. The process that gives it has read a stranger's bytes, so nothing it says is
 * believed unseen. A key that this table does not know is a slip of ours, which tests should find.
 */
export const shapes: { readonly [O in Op]: z.ZodType<Answers[O]> } = {
  letter: openedLetter,
  file: fileFacts,
  sender: z.enum(["pass", "fail", "temporary", "none"]),
  mark: z.strictObject({ copy: bytes.exactOptional(), mended: z.literal(true).exactOptional() }),
  page: z.strictObject({ pages: size, png: bytes.exactOptional() }),
  outline,
};
