import { spawnSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { zipOf } from "../../../src/demo/zip.ts";
import { openZip } from "../../../src/reading/archive/zip.ts";
import type { FileFacts } from "../../../src/reading/facts.ts";
import { temporaryFolder } from "../../make/desk.ts";
import { hasProgram } from "../../make/program.ts";

const onePdf = { file: "a.pdf", bytes: Buffer.from("%PDF-1.7 a") };

const zeros = (file: string, megabytes: number): { file: string; bytes: Buffer } => ({
  file,
  bytes: Buffer.alloc(megabytes * 1_000_000),
});

/** What came out, by name, and what did not. */
function unpacked(facts: FileFacts): Record<string, string> {
  if (facts.kind !== "archive") return { kind: facts.kind };
  return Object.fromEntries([
    ...facts.files.map(({ name, bytes }): [string, string] => [name, String(bytes)]),
    ...facts.left.map(({ name, kind }): [string, string] => [name, kind]),
  ]);
}

/** The archive with some bytes of the directory's first entry replaced. APPNOTE 6.3.10 §4.3.12 */
function altered(zip: Buffer, at: number, ...bytes: number[]): Buffer {
  const copy = Buffer.from(zip);
  copy.set(bytes, copy.indexOf("PK\x01\x02", undefined, "latin1") + at);
  return copy;
}

test("files come out with their names, folders and all; folders themselves do not", () => {
  const zip = zipOf([
    onePdf,
    { file: "S-104/", bytes: Buffer.alloc(0) },
    { file: "S-104/b.pdf", bytes: Buffer.from("b") },
  ]);
  expect(unpacked(openZip(zip))).toEqual({ "a.pdf": "%PDF-1.7 a", "S-104/b.pdf": "b" });
});

// APPNOTE 6.3.10 §4.4.4, bit 11: names are UTF-8, or of an older program.
test("names are read as UTF-8, and where they are none, letter by letter", () => {
  const named = (zip: Buffer) => Object.keys(unpacked(openZip(zip)));
  expect(named(zipOf([{ ...onePdf, file: "Übersicht – Büro.pdf" }]))).toEqual(["Übersicht – Büro.pdf"]);
  expect(named(altered(zipOf([onePdf]), 46, 0xe9))).toEqual(["é.pdf"]);
});

// APPNOTE 6.3.10 §4.3.12: name, extra field and comment stand behind each entry of the directory.
test.each([
  [30, "an extra field"],
  [32, "a comment"],
])("files come out behind one that has at byte %i %s of its own", (at) => {
  const zip = zipOf([onePdf, { file: "b.pdf", bytes: Buffer.from("b") }]);
  const second = zip.lastIndexOf("PK\x01\x02", undefined, "latin1");
  const more = Buffer.concat([zip.subarray(0, second), Buffer.alloc(258, 9), zip.subarray(second)]);
  expect(unpacked(openZip(altered(more, at, 2, 1)))).toEqual({ "a.pdf": "%PDF-1.7 a", "b.pdf": "b" });
});

test("an empty archive has nothing in it", () => {
  expect(openZip(zipOf([]))).toEqual({ kind: "archive", files: [], left: [] });
});

test.each(["[Content_Types].xml", "mimetype", "Index/Document.iwa"])(
  "an archive with %s is an office document",
  (file) => {
    expect(openZip(zipOf([{ file, bytes: Buffer.from("x") }, onePdf]))).toEqual({ kind: "office" });
  },
);

test("what a Mac puts beside files belongs to the looks", () => {
  const facts = openZip(
    zipOf([onePdf, { file: "__MACOSX/._a.pdf", bytes: Buffer.from("\0\x05\x16\x07\0\x02") }]),
  );
  expect(facts.kind === "archive" && facts.files.map(({ looks }) => looks)).toEqual([false, true]);
});

describe("an archive does not give what", () => {
  test("needs a password", () => {
    const zip = zipOf([onePdf, { file: "b.pdf", bytes: Buffer.from("b") }]);
    expect(unpacked(openZip(altered(zip, 8, 1, 8)))).toEqual({ "a.pdf": "archive-locked", "b.pdf": "b" });
    expect(openZip(altered(zipOf([onePdf]), 8, 1, 8))).toEqual({ kind: "locked-archive" });
  });

  test.each([
    ["has another checksum", 16, [0]],
    ["is longer than it says", 24, [9]],
    ["is shorter than it says", 24, [11]],
    ["ends too early", 20, [1]],
  ])("%s", (_, at, bytes) => {
    expect(unpacked(openZip(altered(zipOf([onePdf]), at, ...bytes)))).toEqual({ "a.pdf": "damaged" });
  });

  test("is more than 60 MB, alone or together", () => {
    const facts = openZip(zipOf([zeros("a", 40), zeros("b", 21), zeros("c", 20), zeros("d", 61)]));
    expect(facts.kind === "archive" && facts.files.map(({ name }) => name)).toEqual(["a", "c"]);
    expect(facts.kind === "archive" && facts.left.map(({ name, kind }) => [name, kind])).toEqual([
      ["b", "too-large"],
      ["d", "too-large"],
    ]);
  });

  test("is one byte more than 60 MB together", () => {
    const full = openZip(zipOf([zeros("a", 40), zeros("b", 20), { file: "c", bytes: Buffer.from("c") }]));
    expect(full.kind === "archive" && full.left).toEqual([{ name: "c", kind: "too-large" }]);
  });

  test("comes after the two-hundredth file", () => {
    const facts = openZip(
      zipOf(Array.from({ length: 203 }, (_, i) => ({ file: `${i}`, bytes: Buffer.from("x") }))),
    );
    expect(facts.kind === "archive" && facts.files.length).toBe(200);
    expect(facts.kind === "archive" && facts.left).toEqual([{ name: "3 more files", kind: "too-large" }]);
  });
});

test("an entry that says it is small and is not is stopped at what it says", () => {
  const bomb = zipOf([{ file: "bomb", bytes: Buffer.alloc(200_000_000) }]);
  const lying = altered(altered(bomb, 24, 10, 0, 0, 0), 16, 0);
  const before = process.memoryUsage().arrayBuffers;
  expect(unpacked(openZip(lying))).toEqual({ bomb: "damaged" });
  expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(1_000_000);
});

test("two hundred entries that share one bomb cost the room of one archive", () => {
  const one = zipOf([{ file: "bomb", bytes: Buffer.alloc(50_000_000) }]);
  const start = one.indexOf("PK\x01\x02", undefined, "latin1");
  const end = one.indexOf("PK\x05\x06", undefined, "latin1");
  const entry = altered(one, 16, 0, 0, 0, 0).subarray(start, end);
  const directory = Buffer.concat(Array<Buffer>(200).fill(entry));
  const facts = openZip(Buffer.concat([one.subarray(0, start), directory, one.subarray(end)]));
  expect(facts.kind === "archive" && facts.left.map(({ kind }) => kind)).toEqual([
    "damaged",
    ...Array(199).fill("too-large"),
  ]);
});

test.each([
  ["nothing but its beginning", "PK\x03\x04"],
  ["a directory that lies outside", `PK\x05\x06${"\0".repeat(12)}\xff\xff\0\0\0\0`],
  ["an end that is cut off", "PK\x05\x06\0\0"],
])("a file with %s is no archive", (_, text) => {
  expect(openZip(Buffer.from(text, "latin1"))).toEqual({ kind: "other" });
});

test("an archive cut short anywhere neither throws nor gives half a file", () => {
  const zip = zipOf([onePdf, { file: "b.pdf", bytes: Buffer.from("b".repeat(500)) }]);
  for (let length = 0; length < zip.length; length++) {
    const facts = openZip(zip.subarray(0, length));
    for (const { bytes } of facts.kind === "archive" ? facts.files : [])
      expect([10, 500]).toContain(bytes.length);
  }
});

const made = (...options: string[]): Buffer => {
  const folder = temporaryFolder();
  writeFileSync(join(folder, "a.pdf"), onePdf.bytes);
  const { status } = spawnSync("zip", [...options, "a.zip", "a.pdf"], { cwd: folder });
  expect(status).toBe(0);
  return readFileSync(join(folder, "a.zip"));
};

describe.skipIf(!hasProgram("zip"))("an archive made by the program zip", () => {
  test.each([[], ["-0"], ["-9"], ["-fz"], ["-fd"]])("is opened: %s", (...options) => {
    expect(unpacked(openZip(made("-q", ...options)))).toEqual({ "a.pdf": "%PDF-1.7 a" });
  });
  test("is locked when it was made with a password", () => {
    expect(openZip(made("-q", "-P", "sycamore"))).toEqual({ kind: "locked-archive" });
  });
});
