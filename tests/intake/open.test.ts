import { describe, expect, test } from "vitest";
import { winmailOf } from "../../src/demo/tnef.ts";
import { zipOf } from "../../src/demo/zip.ts";
import { type OpenedFile, openLetter, openParts, usualCaps } from "../../src/intake/open.ts";
import type { Reader } from "../../src/ports/reader.ts";
import { contentOf } from "../../src/reading/content.ts";
import type { Part } from "../../src/reading/facts.ts";
import { bytesOf, filePart, forwarded, mixed } from "../make/mime.ts";
import { directReader } from "../make/reader.ts";

/** Opens everything but PDFs, which is what these tests are not about. */
const reader: Reader = {
  ...directReader,
  file: (bytes) =>
    contentOf(bytes) === "pdf"
      ? Promise.resolve({ ok: true, value: { kind: "damaged-pdf" } })
      : directReader.file(bytes),
};
const pdf = (text = "a"): Buffer => Buffer.from(`%PDF-1.7 ${text}`);
const part = (name: string, bytes: Uint8Array = pdf()): Part => ({ name, bytes, looks: false });
const zip = (...files: readonly (readonly [string, Uint8Array])[]): Buffer =>
  zipOf(files.map(([file, bytes]) => ({ file, bytes })));
const kindOf = ({ facts }: OpenedFile): string => (typeof facts === "string" ? facts : facts.kind);
const told = (files: readonly OpenedFile[]): string[][] =>
  files.map((file) => [file.attachment.id, file.attachment.file, kindOf(file)]);

test("files are numbered from 1 in their order; what came out of an archive stands behind it", async () => {
  const letter = mixed(
    "b",
    filePart("a.pdf"),
    filePart("b.zip", zip(["x/c.pdf", pdf()], ["d.txt", Buffer.from("d")])),
    filePart("e.pdf"),
  );
  const opened = await openLetter(reader, bytesOf(letter), "12");
  expect(told(opened.files)).toEqual([
    ["12/1", "a.pdf", "damaged-pdf"],
    ["12/2", "b.zip", "archive"],
    ["12/3", "c.pdf", "damaged-pdf"],
    ["12/4", "d.txt", "text"],
    ["12/5", "e.pdf", "damaged-pdf"],
  ]);
  expect(opened.letter.attachments).toEqual(opened.files.map(({ attachment }) => attachment));
});

test("each sheet of a list is told to be that list's, by the name that the list has in the letter", async () => {
  const origin = { row: 2, cells: {}, unread: [] };
  const sheetOf = (name: string): Part => ({ ...part(name), list: origin });
  const lists: Reader = {
    ...reader,
    file: (bytes) =>
      Buffer.from(bytes).toString() === "list"
        ? Promise.resolve({
            ok: true,
            value: { kind: "list", tables: [], more: [], files: [sheetOf("T-1.pdf"), sheetOf("T-2.pdf")] },
          })
        : reader.file(bytes),
  };
  const list = (): Part => part("stations.csv", Buffer.from("list"));
  const files = await openParts(lists, [list(), part("a.pdf"), list()], "12");
  expect(files.map(({ attachment: { file, list: of } }) => [file, of?.file])).toEqual([
    ["stations.csv", undefined],
    ["T-1.pdf", "stations.csv"],
    ["T-2.pdf", "stations.csv"],
    ["a.pdf", undefined],
    ["stations (2).csv", undefined],
    ["T-1 (2).pdf", "stations (2).csv"],
    ["T-2 (2).pdf", "stations (2).csv"],
  ]);
});

test("files of one name are told apart wherever they come from, and keep the name and folder they came with", async () => {
  const files = await openParts(
    reader,
    [part("a.pdf"), part("z.zip", zip(["x/A.pdf", pdf()], ["y/a.pdf", pdf()]))],
    "12",
  );
  expect(files.map(({ attachment: { file, named, folder } }) => [file, named, folder])).toEqual([
    ["a.pdf", undefined, undefined],
    ["z.zip", undefined, undefined],
    ["A (2).pdf", "A.pdf", "x"],
    ["a (3).pdf", "a.pdf", "y"],
  ]);
});

test("no name is a path, and files without one are called after what they hold", async () => {
  const files = await openParts(
    reader,
    [part("..\\..\\C:\\x\r\n.pdf"), part(""), part("", zip()), part("/", Buffer.from("x"))],
    "12",
  );
  expect(files.map(({ attachment }) => attachment.file)).toEqual([
    "x.pdf",
    "unnamed.pdf",
    "unnamed.zip",
    "unnamed",
  ]);
});

test("what belongs to the looks is in the record and was not opened", async () => {
  const files = await openParts(reader, [{ ...part("logo.png"), looks: true }], "12");
  expect(told(files)).toEqual([["12/1", "logo.png", "decoration"]]);
});

test("archives are opened three deep; one that lies deeper is not safe", async () => {
  const nest = (depth: number): Buffer => (depth === 0 ? pdf() : zip([`${depth - 1}`, nest(depth - 1)]));
  const kinds = async (depth: number): Promise<string[]> =>
    (await openParts(reader, [part("all", nest(depth))], "12")).map(kindOf);
  expect(await kinds(3)).toEqual(["archive", "archive", "archive", "damaged-pdf"]);
  expect(await kinds(4)).toEqual(["archive", "archive", "archive", "unsafe"]);
});

test("a PDF that lies as deep is opened, and files inside it are not safe", async () => {
  const attached = { files: [part("in.pdf")], left: [] };
  const withFile: Reader = {
    ...directReader,
    file: (bytes) =>
      contentOf(bytes) === "pdf"
        ? Promise.resolve({ ok: true, value: { kind: "pdf", attached } as never })
        : directReader.file(bytes),
  };
  const all = zip(["2", zip(["1", zip(["0", pdf()])])]);
  const files = await openParts(withFile, [part("all", all)], "12");
  expect(files.map(kindOf)).toEqual(["archive", "archive", "archive", "pdf", "unsafe"]);
});

test("every kind of container is opened within every other", async () => {
  const letter = bytesOf(["Subject: x", "To: y", "From: z", ...mixed("i", filePart("a.pdf"))]);
  const files = await openParts(
    reader,
    [part("w.dat", winmailOf([{ file: "z.zip", bytes: zip(["l.eml", letter]) }]))],
    "12",
  );
  expect(told(files)).toEqual([
    ["12/1", "w.dat", "archive"],
    ["12/2", "z.zip", "archive"],
    ["12/3", "l.eml", "archive"],
    ["12/4", "a.pdf", "damaged-pdf"],
  ]);
});

test("what an archive does not give up is told file by file", async () => {
  const locked = zip(["a.pdf", pdf()], ["b.pdf", pdf()]);
  locked.writeUInt16LE(0x0801, locked.indexOf("PK\x01\x02", undefined, "latin1") + 8);
  expect(told(await openParts(reader, [part("z.zip", locked)], "12"))).toEqual([
    ["12/1", "z.zip", "archive"],
    ["12/2", "b.pdf", "damaged-pdf"],
    ["12/3", "a.pdf", "archive-locked"],
  ]);
});

describe("what goes beyond the caps is too large:", () => {
  const caps = { ...usualCaps, files: 4, each: 20, total: 50 };
  const kinds = async (...parts: Part[]): Promise<string[]> =>
    (await openParts(reader, parts, "12", caps)).map(kindOf);

  test("one file by itself", async () => {
    expect(await kinds(part("a", pdf("12345678901")), part("b", pdf("123456789012")))).toEqual([
      "damaged-pdf",
      "too-large",
    ]);
  });
  test("one file too many; what belongs to the looks does not count", async () => {
    const logo = { ...part("logo"), looks: true };
    expect(await kinds(part("1"), logo, part("2"), part("3"), part("4"), part("5"))).toEqual([
      "damaged-pdf",
      "decoration",
      "damaged-pdf",
      "damaged-pdf",
      "damaged-pdf",
      "too-large",
    ]);
  });
  test("all together", async () => {
    const nineteen = part("19", pdf("1234567890"));
    expect(await kinds(nineteen, nineteen, part("13", pdf("1234")), part("12", pdf("123")))).toEqual([
      "damaged-pdf",
      "damaged-pdf",
      "too-large",
      "damaged-pdf",
    ]);
  });
  test("what comes out of archives counts too, in the order in which it stands", async () => {
    const wide = { ...usualCaps, files: 5 };
    const files = await openParts(
      reader,
      [part("1", zip(["a", pdf()], ["b", pdf()])), part("2", zip(["c", pdf()], ["d", pdf()]))],
      "12",
      wide,
    );
    expect(files.map(kindOf)).toEqual([
      "archive",
      "damaged-pdf",
      "damaged-pdf",
      "archive",
      "damaged-pdf",
      "too-large",
    ]);
  });
});

test("a file for which no time is left is named as such, and the others are opened", async () => {
  const late: Reader = {
    ...reader,
    file: (bytes) =>
      bytes.length === 9 ? Promise.resolve({ ok: false, why: "no time left" }) : reader.file(bytes),
  };
  expect((await openParts(late, [part("a", pdf("")), part("b")], "12")).map(kindOf)).toEqual([
    "late",
    "damaged-pdf",
  ]);
});

test("all files of a letter have one time together, those within archives too", async () => {
  const times = new Set<unknown>();
  const noting: Reader = {
    ...reader,
    letter: (bytes, time) => {
      times.add(time);
      return reader.letter(bytes, time);
    },
    file: (bytes, time) => {
      times.add(time);
      return reader.file(bytes, time);
    },
  };
  const letter = mixed("b", filePart("a.pdf"), filePart("b.zip", zip(["c.pdf", pdf()])));
  await openLetter(noting, bytesOf(letter), "12");
  expect([...times]).toEqual([usualCaps.time]);
  await openLetter(noting, bytesOf(letter), "13");
  expect(times.size).toBe(2);
});

describe("where opening does harm", () => {
  const harmed: Reader = {
    ...reader,
    letter: () => Promise.resolve({ ok: false, why: "too slow" }),
    file: () => Promise.resolve({ ok: false, why: "died" }),
  };

  test("a file is unsafe, and the others are opened", async () => {
    const one: Reader = { ...reader, file: (bytes) => (bytes.length === 9 ? harmed : reader).file(bytes) };
    expect((await openParts(one, [part("a", pdf("")), part("b")], "12")).map(kindOf)).toEqual([
      "unsafe",
      "damaged-pdf",
    ]);
  });

  test("a letter has nothing but its header, which tells whom to answer", async () => {
    const bytes = bytesOf([
      "From: Ines <ines@brightwire.example>",
      "Message-ID: <1@brightwire.example>",
      "Subject: sheets",
      ...mixed("b", filePart("a.pdf")),
    ]);
    const { letter, files, unsafe } = await openLetter(harmed, bytes, "12");
    expect(letter).toMatchObject({
      from: "ines@brightwire.example",
      messageId: "<1@brightwire.example>",
      subject: "sheets",
    });
    expect(letter.attachments).toEqual([]);
    expect({ files, unsafe }).toEqual({ files: [], unsafe: true });
  });
});

test("links come from the letter and from those forwarded in it", async () => {
  const inner = ["Subject: x", "", "https://share.example/s/kT7pQ2xZ9d"];
  const { links } = await openLetter(
    reader,
    bytesOf(mixed("b", ["", "https://drive.example/f/kT7pQ2xZ9d"], forwarded(inner))),
    "12",
  );
  expect(links).toEqual(["https://drive.example/f/kT7pQ2xZ9d", "https://share.example/s/kT7pQ2xZ9d"]);
});
