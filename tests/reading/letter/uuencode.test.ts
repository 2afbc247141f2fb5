import * as fc from "fast-check";
import { expect, test } from "vitest";
import { uuencodedIn } from "../../../src/reading/letter/uuencode.ts";

/** As POSIX.1 describes it, a blank written as "`" or as itself. */
function uuencode(name: string, bytes: Uint8Array, blank: " " | "`"): string {
  const char = (six: number): string => (six === 0 ? blank : String.fromCharCode(32 + six));
  const lines: string[] = [];
  for (let at = 0; at < bytes.length; at += 45) {
    const part = bytes.subarray(at, at + 45);
    let line = char(part.length);
    for (let i = 0; i < part.length; i += 3) {
      const [a = 0, b = 0, c = 0] = part.subarray(i, i + 3);
      line += [a >> 2, ((a & 3) << 4) | (b >> 4), ((b & 15) << 2) | (c >> 6), c & 63].map(char).join("");
    }
    lines.push(line);
  }
  return [`begin 644 ${name}`, ...lines, char(0), "end"].join("\r\n");
}

test("any bytes come out as they went in, from between other text", () => {
  fc.assert(
    fc.property(fc.array(fc.uint8Array({ minLength: 1, maxLength: 300 }), { maxLength: 4 }), (files) => {
      const text = files.map(
        (bytes, i) => `Hello\r\n${uuencode(`a ${i}.pdf`, bytes, i % 2 === 0 ? "`" : " ")}\r\n`,
      );
      expect(uuencodedIn(text.join("Bye\r\n")).map(({ name, bytes }) => [name, [...bytes]])).toEqual(
        files.map((bytes, i) => [`a ${i}.pdf`, [...bytes]]),
      );
    }),
  );
});

test("blanks that a mail program cut off at the end of a line do no harm", () => {
  const bytes = Buffer.from("%PDF-1.7 \0\0\0\0\0\0");
  const [file] = uuencodedIn(uuencode("a.pdf", bytes, " ").replaceAll(/ +\r\n/g, "\r\n"));
  expect(file?.bytes).toEqual(bytes);
});

test("a file without an end is given as far as it goes", () => {
  const whole = uuencode("a.pdf", Buffer.alloc(90, "x"), "`").split("\r\n");
  expect(uuencodedIn(whole.slice(0, 2).join("\n"))[0]?.bytes).toEqual(Buffer.alloc(45, "x"));
});

test.each([
  ["begin 64 a.pdf", 0],
  ["begin 644 a.pdf", 1],
  ["begin 0644 a.pdf", 1],
  ["begin 00644 a.pdf", 0],
  ["begin 689 a.pdf", 0],
  ["begin 644 ", 0],
  [" begin 644 a.pdf", 0],
])("%j begins a file, or none", (line, files) => {
  expect(uuencodedIn(`See below.\n${line}\n#AAAA\n\`\nend`)).toHaveLength(files);
});

test("a line of a file has eighty-five characters at most, of those that the code has", () => {
  const bytesIn = (line: string): number =>
    uuencodedIn(`begin 644 a\n#AAAA\n${line}\n#AAAA`)[0]?.bytes.length ?? 0;
  expect(bytesIn(`_${"A".repeat(84)}`)).toBe(3 + 63 + 3);
  for (const line of [`_${"A".repeat(85)}`, "#", "#AAAa", " AAAA", "end"]) expect(bytesIn(line)).toBe(3);
});

test("a sentence that begins alike is no file", () => {
  expect(uuencodedIn("begin 644 again.\nThen end.")).toEqual([]);
  expect(uuencodedIn("We begin 644 again.")).toEqual([]);
});

test("files without end are refused, before they fill the memory", () => {
  expect(() => uuencodedIn("begin 644 a\n#AAAA\n".repeat(10_002))).toThrow("endless files");
  expect(() => uuencodedIn("begin 644 a\n#AAAA\n".repeat(10_001))).toThrow("endless files");
  expect(uuencodedIn("begin 644 a\n#AAAA\n".repeat(10_000))).toHaveLength(10_000);
});
