import { objectBytes, type RawObject } from "./raw-pdf.ts";

/**
 * A PDF whose cross-references are a stream. ISO 32000-1:2008 §7.5.8. `inside` gives the stream and the
 * place in it of objects that lie in object streams; `odd` replaces the cross-reference stream's content.
 */
export function withCrossReferenceStream(
  objects: Readonly<Record<number, RawObject>>,
  inside: Readonly<Record<number, readonly [number, number]>>,
  odd?: Exclude<RawObject, string>,
): Buffer {
  const pieces: Buffer[] = [Buffer.from("%PDF-1.7\n")];
  let at = 9;
  const self = Math.max(...Object.keys({ ...objects, ...inside }).map(Number)) + 1;
  const rows = Buffer.alloc((self + 1) * 7);
  const row = (number: number, kind: number, where: number, index: number): void => {
    rows.writeUInt8(kind, number * 7);
    rows.writeUInt32BE(where, number * 7 + 1);
    rows.writeUInt16BE(index, number * 7 + 5);
  };
  for (const [number, object] of Object.entries(objects)) {
    row(Number(number), 1, at, 0);
    const bytes = objectBytes(Number(number), object);
    pieces.push(bytes);
    at += bytes.length;
  }
  for (const [number, [stream, index]] of Object.entries(inside)) row(Number(number), 2, stream, index);
  row(self, 1, at, 0);
  const { dict, bytes } = odd ?? { dict: `/Size ${self + 1}/W[1 4 2]`, bytes: rows };
  const size = dict.includes("/Size") ? "" : `/Size ${2 ** 30}`;
  pieces.push(
    objectBytes(self, { dict: `/Type/XRef/Root 1 0 R${size}${dict}`, bytes }),
    Buffer.from(`startxref\n${at}\n%%EOF\n`),
  );
  return Buffer.concat(pieces);
}
