import { inflateSync } from "node:zlib"; // a pure function of bytes
import {
  type PDFContext,
  PDFDict,
  PDFName,
  type PDFObject,
  PDFObjectStreamParser,
  PDFRawStream,
  PDFRef,
} from "pdf-lib";

/** The parts of the library's parser of packed objects that are needed here. */
interface Parser {
  readonly bytes: {
    readonly moveTo: (place: number) => void;
    readonly peekAhead: (steps: number) => number;
  };
  readonly context: PDFContext;
  readonly firstOffset: number;
  parseOffsetsAndObjectNumbers(): readonly { readonly objectNumber: number; readonly offset: number }[];
  parseObject(ref: PDFRef): PDFObject;
}

/** Bytes of packed objects beyond which the library unpacks them as it always does. */
const most = 8_000_000;

const tag = Buffer.from("<<\n/Type /StructElem\n");

/**
 * Takes packed objects in. An element of the tree of tags is read when it is asked for. A sheet has hundreds, and
 * reading it asks for none. In a document that is to be changed all are read at once, since the library would take what
 * it reads later for changes.
 */
async function parseIntoContext(this: Parser): Promise<void> {
  const isToChange = this.context.pdfFileDetails.originalBytes !== undefined;
  for (const { objectNumber, offset } of this.parseOffsetsAndObjectNumbers()) {
    const ref = PDFRef.of(objectNumber, 0);
    const read = (): PDFObject => {
      this.bytes.moveTo(this.firstOffset + offset);
      return this.parseObject(ref);
    };
    this.bytes.moveTo(this.firstOffset + offset);
    const isLater = !isToChange && tag.every((byte, i) => this.bytes.peekAhead(i) === byte);
    this.context.assign(ref, isLater ? whenAsked(this.context, read) : read());
  }
  await Promise.resolve();
}

/** A dictionary that is read when something of it is asked for. One that is broken is empty. */
function whenAsked(context: PDFContext, read: () => PDFObject): PDFDict {
  const dict = PDFDict.withContext(context);
  let entries: unknown;
  Object.defineProperty(dict, "dict", {
    get: () => {
      entries ??= entriesOf(read);
      return entries;
    },
  });
  return dict;
}

function entriesOf(read: () => PDFObject): unknown {
  try {
    const object = read();
    if (object instanceof PDFDict) return (object as unknown as { readonly dict: unknown }).dict;
  } catch {
    // Nothing of it can be known.
  }
  return new Map<PDFName, PDFObject>();
}

/** The same stream unpacked. The library's own way takes ten times as long. */
function unpacked(stream: PDFRawStream): PDFRawStream {
  const { dict, contents } = stream;
  if (dict.get(PDFName.of("Filter")) !== PDFName.of("FlateDecode") || dict.has(PDFName.of("DecodeParms")))
    return stream;
  try {
    const plain = dict.clone(dict.context);
    plain.delete(PDFName.of("Filter"));
    return PDFRawStream.of(plain, inflateSync(contents, { maxOutputLength: most }));
  } catch {
    return stream;
  }
}

/** From now on the library takes packed objects in so. */
export function takePacksQuickly(): void {
  Object.assign(PDFObjectStreamParser.prototype, { parseIntoContext });
  const { forStream } = PDFObjectStreamParser;
  PDFObjectStreamParser.forStream = (stream, wait) => forStream(unpacked(stream), wait);
}
