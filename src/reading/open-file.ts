import { readTnef } from "./archive/tnef.ts";
import { openZip } from "./archive/zip.ts";
import { contentOf } from "./content.ts";
import type { FileFacts, Left, Part } from "./facts.ts";
import { readLetter } from "./letter/letter.ts";
import { signedContent } from "./letter/signed.ts";
import { uuencodedIn } from "./letter/uuencode.ts";
import { listInText } from "./list/csv.ts";
import type { KnownForms } from "./page/known-forms.ts";
import { openPdf } from "./pdf/open-pdf.ts";
import { isSmallPicture } from "./picture.ts";
import { readableText, wordsOfText } from "./text-file.ts";

/** So many files are taken out of a container. A zip has a limit of its own. */
const most = 200;

/**
 * What is in a file, told by its content alone. `early` gets what is known of a PDF before its pages are looked at.
 * May take long, take much memory or throw, so it is called where that does no harm.
 */
export async function openFile(
  bytes: Uint8Array,
  early: (facts: FileFacts) => Promise<void> = () => Promise.resolve(),
  forms?: KnownForms,
): Promise<FileFacts> {
  switch (contentOf(bytes)) {
    case "pdf":
      return openPdf(bytes, early, forms);
    case "picture":
      return { kind: isSmallPicture(bytes) ? "small-picture" : "picture" };
    case "recording":
      return { kind: "recording" };
    case "zip":
      return openZip(bytes);
    case "ole":
    case "rtf":
      return { kind: "office" };
    case "tnef":
      return container(readTnef(bytes));
    case "signed":
      return openSigned(bytes);
    case "uuencoded":
      return container({ files: uuencodedIn(asText(bytes)).map((file) => ({ ...file, looks: false })) });
    case "letter":
      return openLetter(bytes);
    case "resource-fork":
      break;
    case undefined:
      return openText(bytes);
  }
  return { kind: "other" };
}

async function openText(bytes: Uint8Array): Promise<FileFacts> {
  const words = await wordsOfText(bytes);
  const list = words === undefined ? undefined : listInText(readableText(bytes) ?? "");
  if (list !== undefined && words !== undefined) return { ...list, text: words };
  return words === undefined ? { kind: "other" } : { kind: "text", words };
}

function asText(bytes: Uint8Array): string {
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString("latin1");
}

/** A letter that holds nothing but words is a text. */
async function openLetter(bytes: Uint8Array): Promise<FileFacts> {
  const { parts, date: dated, subject, text, otherTexts = [], textUnsure } = await readLetter(bytes);
  const said = [`From:\nSubject: ${subject}\n\n${text}`, ...otherTexts].join("\n\n");
  const words = { text: said, ...(textUnsure === undefined ? {} : { unsure: textUnsure }) };
  if (parts.every(({ looks }) => looks)) return { kind: "text", words };
  // Whoever sends a letter on, in an archive too, makes it no newer.
  const files = dated === undefined ? parts : parts.map((part) => ({ dated, ...part }));
  return { ...container({ files }), words };
}

/** A signed file → what it holds. A signature whose content lies elsewhere holds no file. */
async function openSigned(bytes: Uint8Array): Promise<FileFacts> {
  const content = signedContent(bytes);
  if (content === undefined) return { kind: "other" };
  // RFC 8551 §3.1: the content of a signed letter is a part with a header. Other programs sign files.
  return contentOf(content) === "letter"
    ? openLetter(content)
    : container({ files: [{ name: "", bytes: content, looks: false }] });
}

interface Unpacked {
  readonly files: readonly Part[];
  readonly left?: readonly Left[];
}

function container({ files, left = [] }: Unpacked): Extract<FileFacts, { kind: "archive" }> {
  const more = files.length + left.length - most;
  const rest: readonly Left[] = more > 0 ? [{ name: `${more} more files`, kind: "too-large" }] : [];
  return { kind: "archive", files: files.slice(0, most), left: [...left.slice(0, most), ...rest] };
}
