/** People write no letter with more files than this. */
const most = 10_000;

/**
 * Every uuencoded file in a text, between "begin 644 name" and "end", up to where it can be decoded. POSIX.1,
 * uuencode
 */
export function uuencodedIn(text: string): { name: string; bytes: Uint8Array }[] {
  const files: { name: string; lines: Buffer[] }[] = [];
  let inside = false;
  for (const line of text.split(/\r?\n/)) {
    const name = /^begin [0-7]{3,4} (\S.*)$/.exec(line)?.[1];
    inside = name !== undefined || (inside && /^[!-_][ -`]{1,84}$/.test(line));
    if (files.length > most) throw new Error("endless files in one text");
    if (name !== undefined) files.push({ name: name.trim(), lines: [] });
    else if (inside) files.at(-1)?.lines.push(decodeLine(line));
  }
  return files
    .filter(({ lines }) => lines.length > 0)
    .map(({ name, lines }) => ({ name, bytes: Buffer.concat(lines) }));
}

/** The first character tells the number of bytes. Every four characters after it are three bytes. */
function decodeLine(line: string): Buffer {
  const six = (at: number): number => ((line.charCodeAt(at) || 32) - 32) & 63;
  const length = six(0);
  const bytes = Buffer.alloc(Math.ceil(length / 3) * 3);
  for (let to = 0, at = 1; to < length; to += 3, at += 4)
    bytes.writeUIntBE((six(at) << 18) | (six(at + 1) << 12) | (six(at + 2) << 6) | six(at + 3), to, 3);
  return bytes.subarray(0, length);
}
