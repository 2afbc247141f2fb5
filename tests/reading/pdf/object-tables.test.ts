import { describe, expect, test } from "vitest";
import { objectsPackedAt, tablesOf } from "../../../src/reading/pdf/object-tables.ts";
import {
  catalog,
  closed,
  ending,
  header,
  line,
  packOf,
  pages,
  rowOf,
  streamOf,
  withObjects,
} from "../../make/pdf-file.ts";

const latin = (text: string): Buffer => Buffer.from(text, "latin1");
const tables = (text: string) => tablesOf(latin(text)).map((one) => ({ ...one, places: [...one.places] }));

const written = withObjects([
  [1, catalog],
  [2, pages],
]);
const [first = 0, second = 0] = written.at.values();

// ISO 32000-1:2008 §7.5.4
describe("a table in lines", () => {
  const places = [
    [0, "free"],
    [1, { at: first }],
    [2, { at: second }],
  ];
  test.each([
    ["a blank and a line feed", " \n"],
    ["a carriage return and a line feed", "\r\n"],
    ["a blank and a carriage return", " \r"],
  ])("whose lines end with %s", (_, end) => {
    expect(tables(closed(written, undefined, end).text)).toEqual([{ root: "1 0", places }]);
  });

  const inSections = (sections: string, trailer = "/Root 1 0 R"): string =>
    `${written.text}xref\n${sections}trailer\n<<${trailer}>>\n${ending(written.text.length)}`;

  test("in sections, each from its own number on", () => {
    const sections = `0 1\n${line("free")}7 2\n${line(first)}${line(second)}`;
    expect(tables(inSections(sections))).toEqual([
      {
        root: "1 0",
        places: [
          [0, "free"],
          [7, { at: first }],
          [8, { at: second }],
        ],
      },
    ]);
    expect(tables(inSections(sections.replaceAll("2\n0", "2 \r\n0")))).toHaveLength(1);
  });

  test.each([
    ["that names an object twice", `0 1\n${line(first)}0 1\n${line(second)}`],
    ["whose line is another generation's", `0 1\n${line(first).replace(" 00000", " 00001")}`],
    ["whose line is too short", `0 1\n${line(first).slice(1)}`],
    ["whose line ends otherwise", `0 1\n${line(first, "  ")}`],
    ["that says to have more lines", `0 2\n${line(first)}`],
    ["of more objects than are looked at", `0 20001\n${line("free").repeat(20_001)}`],
  ])("%s is refused", (_, sections) => {
    expect(() => tables(inSections(sections))).toThrow();
  });

  test("of as many objects as are looked at is read", () => {
    const all = inSections(`0 20000\n${line("free").repeat(20_000)}`);
    expect(tables(all)[0]?.places).toHaveLength(20_000);
    const more = inSections(`0 20000\n${line("free").repeat(20_000)}20000 1\n${line("free")}`);
    expect(() => tables(more)).toThrow("no plain table");
  });

  test.each([
    ["encrypted", "/Root 1 0 R /Encrypt 9 0 R"],
    ["with another table beside it", "/Root 1 0 R /XRefStm 20"],
    ["with names in other letters", "/Root 1 0 R /Pr#65v 20"],
    ["with two catalogs", "/Root 1 0 R /Root 2 0 R"],
    ["with no catalog", "/Info 1 0 R"],
    ["whose table before is an object's number", "/Root 1 0 R /Prev 20 0 R"],
    ["with two tables before it", "/Root 1 0 R /Prev 20 /Prev 21"],
  ])("of a file %s is refused", (_, trailer) => {
    expect(() => tables(inSections(`0 1\n${line("free")}`, trailer))).toThrow();
  });
});

/** A file with a table as a stream, object 3; `rows` are numbers by their widths. */
function withTable(
  widths: readonly number[],
  rows: readonly (readonly number[])[],
  { entries = `/Size ${rows.length}`, isPacked = false, root = "/Root 1 0 R", bytes = Buffer.alloc(0) } = {},
): string {
  const table = Buffer.concat([Buffer.from(rows.flatMap((row) => rowOf(widths, row))), bytes]);
  const says = `/Type /XRef /W [${widths.join(" ")}] ${entries} ${root}`;
  const all = withObjects([[3, streamOf(says, table, isPacked)]], written);
  return all.text + ending(written.text.length);
}

// §7.5.8
describe("a table as a stream", () => {
  const rows = [
    [0, 0, 255],
    [1, 258, 0],
    [2, 9, 4],
  ];
  const self = written.text.length;
  const places = [
    [0, "free"],
    [1, { at: 258 }],
    [2, { within: 9, index: 4 }],
  ];

  test.each([false, true])("says where objects stand or are packed, itself packed or not: %s", (isPacked) => {
    expect(tables(withTable([1, 2, 1], rows, { isPacked }))).toEqual([{ root: "1 0", self, places }]);
  });

  test("with a carriage return before its bytes is read", () => {
    const all = withTable([1, 2, 1], rows).replace("stream\n", "stream\r\n");
    expect(tables(all)).toEqual([{ root: "1 0", self, places }]);
  });

  test("without kinds has objects that stand, of the first generation", () => {
    expect(
      tables(
        withTable(
          [0, 2, 0],
          [
            [0, 15],
            [0, 300],
          ],
        ),
      ),
    ).toEqual([
      {
        root: "1 0",
        self,
        places: [
          [0, { at: 15 }],
          [1, { at: 300 }],
        ],
      },
    ]);
  });

  test("without places has them at 0", () => {
    expect(tables(withTable([1, 0, 1], [[2, 0, 7]]))[0]?.places).toEqual([[0, { within: 0, index: 7 }]]);
  });

  test("has its numbers from pairs, if it gives any", () => {
    const all = withTable([1, 2, 1], rows, { entries: "/Size 20 /Index [4 1 11 2]" });
    expect(tables(all)[0]?.places.map(([number]) => number)).toEqual([4, 11, 12]);
  });

  // §7.4.4.4, PNG's filters 0 and 2
  const predicted = "/Size 3 /DecodeParms <</Predictor 12 /Columns 4>>";
  const filtered = (...bytes: number[]): string =>
    withTable([1, 2, 1], [], { entries: predicted, bytes: Buffer.from(bytes) });
  test("of rows that say how they differ from the one above is read", () => {
    // The first row has none above; the third is the second and the difference; the second stands for itself.
    expect(tables(filtered(2, 0, 0, 0, 255, 0, 1, 1, 2, 0, 2, 1, 255, 7, 4))[0]?.places).toEqual([
      [0, "free"],
      [1, { at: 258 }],
      [2, { within: 9, index: 4 }],
    ]);
    const plain = withTable([1, 2, 1], rows, { entries: "/Size 3 /DecodeParms <</Predictor 1 /Columns 4>>" });
    expect(tables(plain)[0]?.places).toEqual(places);
  });
  test.each([
    ["by another filter", filtered(0, 0, 0, 0, 255, 1, 1, 1, 2, 0, 0, 0, 0, 0, 0)],
    [
      "of another length",
      filtered(0, 0, 0, 0, 255, 0, 1, 1, 2, 0, 2, 1, 255, 7, 4).replace("/Columns 4", "/Columns 5"),
    ],
    ["of which one is missing", filtered(0, 0, 0, 0, 255, 0, 1, 1, 2, 0)],
  ])("of rows %s is refused", (_, all) => {
    expect(() => tables(all)).toThrow();
  });

  test.each([
    ["of a kind that nobody knows", withTable([1, 2, 1], [[3, 15, 0]])],
    ["of another generation", withTable([1, 2, 1], [[1, 15, 1]])],
    ["with kinds of two bytes", withTable([2, 2, 1], [[1, 15, 0]])],
    ["of two widths", withTable([1, 2], [[1, 15]])],
    ["of four widths", withTable([1, 2, 1, 1], [[1, 15, 0, 0]])],
    ["of no width", withTable([0, 0, 0], [[], []])],
    ["of rows of 25 bytes", withTable([1, 23, 1], [[1, 15, 0]])],
    ["with fewer rows than it says", withTable([1, 2, 1], rows, { entries: "/Size 4" })],
    ["of two sizes", withTable([1, 2, 1], rows, { entries: "/Size 3 /Size 3" })],
    ["that names an object twice", withTable([1, 2, 1], rows, { entries: "/Size 9 /Index [4 2 5 1]" })],
    ["with a number that is none", withTable([1, 2, 1], rows).replace("[1 2 1]", "[1 2 1 12345678901]")],
    ["of another type", withTable([1, 2, 1], rows).replace("/XRef ", "/XRefs ")],
    ["packed in another way", withTable([1, 2, 1], rows, { entries: "/Size 3 /Filter /LZWDecode" })],
    ["whose length is an object's", withTable([1, 2, 1], rows).replace("/Length 12", "/Length 12 0 R")],
    ["that ends before it says", withTable([1, 2, 1], rows).replace("/Length 12", "/Length 14")],
    ["with names in other letters", withTable([1, 2, 1], rows).replace("/Length", "/L#65ngth 9 /Length")],
    ["that is no stream", written.text + ending(first)],
  ])("%s is refused", (_, all) => {
    expect(() => tables(all)).toThrow();
  });

  test("of rows of 24 bytes is read", () => {
    expect(tables(withTable([1, 22, 1], [[1, 15, 0]]))[0]?.places).toEqual([[0, { at: 15 }]]);
  });
});

describe("the tables of a file", () => {
  test("come newest first, and an older one may leave the catalog out", () => {
    const old = closed(written, "/Info 9 0 R").text;
    const newer = closed(
      withObjects([[3, "(x)"]], { text: old, at: written.at }),
      `/Root 1 0 R /Prev ${written.text.length}`,
    );
    const read = tables(newer.text);
    expect(read.map(({ root }) => root)).toEqual(["1 0", undefined]);
    expect(read.map(({ places }) => places.length)).toEqual([4, 3]);
  });

  /** A file of so many revisions. */
  const revisions = (count: number): string => {
    let all = closed(written);
    for (let nth = 1; nth < count; nth++) {
      const before = /startxref\n(\d+)\n%%EOF\n$/.exec(all.text)?.[1];
      all = closed(all, `/Root 1 0 R /Prev ${before}`);
    }
    return all.text;
  };
  test("are fifty at most, and none comes round again", () => {
    expect(tables(revisions(50))).toHaveLength(50);
    expect(() => tables(revisions(51))).toThrow("endless tables");
    const round = closed(written, `/Root 1 0 R /Prev ${written.text.length}`).text;
    expect(() => tables(round)).toThrow("endless tables");
  });

  test("are found by the last words of a file, and by nothing else", () => {
    const { text } = closed(written);
    expect(tables(`${text} \r\n`)).toHaveLength(1);
    for (const other of [`${text}%\n`, text.replace("%%EOF", ""), `${header}${pages}`])
      expect(() => tables(other)).toThrow("not as programs write it");
  });

  test("are found where the last 64 bytes say so", () => {
    const { text } = closed(written);
    const blanks = " ".repeat(64 - (text.length - text.indexOf("startxref")));
    expect(tables(text + blanks)).toHaveLength(1);
    expect(() => tables(`${text}${blanks} `)).toThrow("not as programs write it");
  });
});

// §7.5.7
describe("a stream of objects", () => {
  const content = packOf([
    [7, "(seven)"],
    [12, "(twelve)"],
  ]);
  const packed = (of: string): number[] => objectsPackedAt(latin(withObjects([[4, of]]).text), header.length);

  test("tells the numbers of what it packs", () => {
    expect(packed(content)).toEqual([7, 12]);
  });

  test.each([
    ["of another type", content.replace("/ObjStm", "/ObjStms")],
    ["that goes on in another", content.replace("/N 2", "/N 2 /Extends 9 0 R")],
    ["that says to pack more", content.replace("/N 2", "/N 3")],
    ["that says to pack less", content.replace("/N 2", "/N 1")],
    ["that begins its objects elsewhere", content.replace("/First 9 ", "/First 13 ")],
  ])("%s is refused", (_, of) => {
    expect(() => packed(of)).toThrow();
  });

  test("ends as it says, three blanks behind its bytes at most", () => {
    const blanks = (count: number) => content.replace("\nendstream", `${" ".repeat(count)}endstream`);
    expect(packed(blanks(3))).toEqual([7, 12]);
    expect(() => packed(blanks(4))).toThrow("a stream ends elsewhere");
  });

  test("packs as many objects as are looked at, and no more", () => {
    const many = (count: number) => packOf(Array.from({ length: count }, (_, i) => [i + 1, "1"]));
    expect(packed(many(20_000))).toHaveLength(20_000);
    expect(() => packed(many(20_001))).toThrow();
  });

  test("unpacks to 16 million bytes at most", () => {
    const large = (size: number) => streamOf("/Type /ObjStm /N 1 /First 4", Buffer.alloc(size, "7 0 "), true);
    expect(packed(large(16_000_000))).toEqual([7]);
    expect(() => packed(large(16_000_001))).toThrow();
  });
});
