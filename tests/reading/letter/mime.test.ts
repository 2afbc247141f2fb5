import { describe, expect, test } from "vitest";
import { type Leaf, leavesOf } from "../../../src/reading/letter/mime.ts";
import { base64, bytesOf, filePart, type Lines, mixed, multipart, onePdf } from "../../make/mime.ts";

const leaves = (...lines: Lines): Leaf[] => leavesOf(bytesOf(lines));
const textOf = ({ bytes }: Leaf): string => Buffer.from(bytes).toString("latin1");
const namesOf = (found: readonly Leaf[]): unknown[] => found.flatMap(({ name }) => name ?? []);

test("a letter without parts is one leaf", () => {
  expect(leaves("Subject: sheets", "", "Hello", "World")).toEqual([
    { type: "text/plain", attached: false, bytes: Buffer.from("Hello\r\nWorld") },
  ]);
});

test("parts within parts come in order, with the kind of multipart they stand in", () => {
  const inner = multipart("i", "related", filePart("one.pdf"), filePart("two.pdf"));
  const found = leaves(...mixed("o", ["", "text"], inner, filePart("three.pdf")));
  expect(found.map(({ name, within }) => [name, within])).toEqual([
    [undefined, "mixed"],
    ["one.pdf", "related"],
    ["two.pdf", "related"],
    [undefined, undefined], // what stands behind the last boundary of the inner one
    ["three.pdf", "mixed"],
    [undefined, undefined],
  ]);
  expect(found.map(textOf)).toEqual(["text", onePdf, onePdf, "", onePdf, ""]);
});

test.each([
  ["quoted", 'attachment; filename="a b.pdf"', "a b.pdf"],
  ["bare, with blanks", "attachment; filename=a b.pdf", "a b.pdf"],
  // RFC 2231 §4.1
  [
    "in RFC 2231 pieces",
    "attachment; filename*0*=utf-8''Caf%C3%A9; filename*1=\" plan.pdf\"",
    "Café plan.pdf",
  ],
  ["in RFC 2047 words", 'attachment; filename="=?utf-8?B?Q2Fmw6kucGRm?="', "Café.pdf"],
  ["in Latin-1 of RFC 2047", "attachment; filename==?iso-8859-1?Q?Caf=E9.pdf?=", "Café.pdf"],
  ["in UTF-8 as it is", 'attachment; filename="Café.pdf"', "Café.pdf"],
  ["over several lines", 'attachment;\r\n\tfilename="a.pdf"', "a.pdf"],
  ["over several lines without a blank", 'attachment;\r\nfilename="a.pdf"', "a.pdf"],
])("a name is read when it is written %s", (_, disposition, name) => {
  expect(namesOf(leaves(`Content-Disposition: ${disposition}`, "", "x"))).toEqual([name]);
});

test("a name is taken from the type where the disposition has none", () => {
  expect(
    namesOf(leaves("Content-Type: text/plain; name=a.pdf", "Content-Disposition: inline", "", "x")),
  ).toEqual(["a.pdf"]);
});

test("a comment in a field says nothing", () => {
  // RFC 2045 §5.1
  const [leaf] = leaves("Content-Type: application/pdf (a sheet); name=a.pdf", "", "x");
  expect(leaf).toMatchObject({ type: "application/pdf", name: "a.pdf" });
});

test.each([
  ["a/b", "a/b"],
  ["my own/type", "application/octet-stream"],
  ["a/b of mine", "application/octet-stream"],
  ["a/b/c", "application/octet-stream"],
  ["text of mine", "text/plain"],
  ["", "text/plain"],
])("the type %j is %s", (type, is) => {
  // RFC 2045 §5.2
  expect(leaves(`Content-Type: ${type}`, "", "x")[0]?.type).toBe(is);
});

test("the first of two fields holds, and what continues the second is passed over", () => {
  const [leaf] = leaves("Content-Type: a/b; name=a.pdf", "Content-Type: c/d", " ; name=c.pdf", "", "x");
  expect(leaf).toMatchObject({ type: "a/b", name: "a.pdf" });
});

test.each([
  ["base64", base64("%PDF- \xff\n")],
  ["BASE64 (of course)", base64("%PDF- \xff\n")],
  ["quoted-printable", "%PDF-=20=C3=\r\n=BF=0A"],
  ["quoted-printable", "%PDF-=20=  \r\n\xff=0a="],
  ["x-uuencode", "begin 644 a.pdf\n))5!$1BT@P[\\*\n`\nend"],
  ["8bit", "%PDF- \xff\n"],
  ["x-unknown", "%PDF- \xff\n"],
])("%s is undone", (encoding, body) => {
  const [leaf] = leaves(`Content-Transfer-Encoding: ${encoding}`, "", body);
  expect(Buffer.from(leaf?.bytes ?? []).toString()).toBe("%PDF- \xff\n");
});

test("an encoding that only ends like a known one is left as it is", () => {
  const body = "begin 644 a.pdf\n))5!$1BT@P[\\*\n`\nend";
  for (const encoding of ["nouu", "x-base64", "not-quoted-printable"])
    expect(textOf(leaves(`Content-Transfer-Encoding: ${encoding}`, "", body)[0] as Leaf)).toBe(body);
});

test("what is no code of quoted-printable stays as it is", () => {
  const [leaf] = leaves("Content-Transfer-Encoding: quoted-printable", "", "a=b =ZZ =", "c = d");
  expect(Buffer.from(leaf?.bytes ?? []).toString()).toBe("a=b =ZZ c = d");
});

test("a soft line end of quoted-printable may have 77 blanks before it", () => {
  const read = (blanks: number) => {
    const [leaf] = leaves("Content-Transfer-Encoding: quoted-printable", "", `a=${" ".repeat(blanks)}`, "b");
    return Buffer.from(leaf?.bytes ?? []).toString();
  };
  expect(read(77)).toBe("ab");
  expect(read(78)).toBe(`a=${" ".repeat(78)}\r\nb`);
});

const expectBoth = (...lines: Lines): void => {
  const pdfs = leaves(...lines).filter((leaf) => textOf(leaf).startsWith("%PDF"));
  expect(pdfs.map(textOf)).toEqual([onePdf, onePdf]);
};

test.each([
  ["Hello there: one", "Hello there: one"],
  ["Grüße: one", "Grüße: one"],
  [": one", ": one"],
])("a body may begin without a blank line above it: %s", (line, body) => {
  const [leaf] = leaves("Content-Type: text/plain", line);
  expect(Buffer.from(leaf?.bytes ?? []).toString()).toBe(body);
});

test("a line that continues a field is none of its own, nor is one that begins a letter among many", () => {
  const [leaf] = leaves(
    "From x@y.example",
    "Content-Type: text/html;",
    " name: x",
    ">From me",
    "X-A : b",
    "",
    "body",
  );
  expect(leaf).toMatchObject({ type: "text/html", bytes: Buffer.from("body") });
});

test("a letter that begins with a blank line has no header", () => {
  expect(leavesOf(Buffer.from("\nHello\n")).map(textOf)).toEqual(["Hello\n"]);
  expect(leavesOf(Buffer.from("")).map(textOf)).toEqual([""]);
});

test.each([
  ["dashes and words that only begin like it", "--bridge and road"],
  ["dashes and a longer name", "--b2"],
  ["one dash", "-b"],
  ["its name behind something else than dashes", "x-b"],
  ["its name behind a dash and something else", "-xb"],
  ["its name alone", "b"],
])("no boundary is a line of %s", (_, line) => {
  const [leaf, ...others] = leaves(...mixed("b", ["", "above", line, "below"]));
  expect(textOf(leaf as Leaf)).toBe(["above", line, "below"].join("\r\n"));
  expect(others.map(textOf)).toEqual([""]);
});

describe("a leaf is not lost when", () => {
  const head = ['Content-Type: multipart/mixed; boundary="b"', ""];

  test("the last boundary has something behind it", () => {
    expectBoth(...head, "--b", ...filePart("1.pdf"), "--b--junk", ...filePart("2.pdf"), "--b-");
  });
  test("the last boundary is only half there", () => {
    expectBoth(...head, "--b", ...filePart("1.pdf"), "--b-", ...filePart("2.pdf"), "--b-");
  });
  test("the boundary that ends a file is misspelt", () => {
    expectBoth(...head, "--b", ...filePart("1.pdf"), "--c", "text", "--b", ...filePart("2.pdf"), "--b--");
  });
  test("parts follow after the last boundary", () => {
    expectBoth(...head, "--b", ...filePart("1.pdf"), "--b--", "", "--b", ...filePart("2.pdf"), "--b--");
  });
  test("the last boundary is missing", () => {
    expectBoth(...head, "--b", ...filePart("1.pdf"), "--b", ...filePart("2.pdf"));
  });
  test("boundaries have blanks behind them", () => {
    expectBoth(...head, "--b \t", ...filePart("1.pdf"), "--b ", ...filePart("2.pdf"), "--b-- ");
  });
  test("the header names another boundary, or none", () => {
    const rest = ["--b", ...filePart("1.pdf"), "--b", ...filePart("2.pdf"), "--b--"];
    expectBoth('Content-Type: multipart/mixed; boundary="c"', "", ...rest);
    expectBoth("Content-Type: multipart/mixed", "", "--no boundary", "", ...rest);
  });
  test("its boundary stands once, with no header behind it", () => {
    const found = leaves(...head, "--b", "", "the sheet");
    expect(found.map(({ within, bytes }) => [within, String(bytes)])).toEqual([["mixed", "the sheet"]]);
  });
  test("the header names another boundary than that of 200 characters below it, but none of more", () => {
    const below = (length: number): Leaf[] => {
      const line = `--${"b".repeat(length)}`;
      const part = ["Content-Type: application/pdf", "", onePdf];
      return leaves('Content-Type: multipart/mixed; boundary="c"', "", line, ...part, line, ...part);
    };
    expect(below(200)).toHaveLength(2);
    expect(below(201).map(({ type }) => type)).toEqual(["multipart/mixed"]);
  });
  test("one boundary begins like another", () => {
    const inner = mixed("b-1", filePart("1.pdf"));
    expectBoth(...head, "--b", ...inner, "--b", ...filePart("2.pdf"), "--b--");
  });
  test("a multipart within never ends", () => {
    const [type = "", blank = "", ...rest] = mixed("i", filePart("1.pdf"));
    expectBoth(...head, "--b", type, blank, ...rest.slice(0, -1), "--b", ...filePart("2.pdf"), "--b--");
  });
  test("a part has no blank line between header and body", () => {
    const [type = "", disposition = "", encoding = "", , body = ""] = filePart("1.pdf");
    expectBoth(...head, "--b", type, disposition, encoding, body, "--b", ...filePart("2.pdf"), "--b--");
  });
  test("lines end in a line feed alone", () => {
    const lines = [...head, "--b", ...filePart("1.pdf"), "--b", ...filePart("2.pdf"), "--b--"];
    expect(namesOf(leavesOf(Buffer.from(lines.join("\n"))))).toEqual(["1.pdf", "2.pdf"]);
  });
});

test("a boundary has a thousand characters at most; what has a longer one is one leaf", () => {
  const read = (length: number): unknown[] =>
    namesOf(leaves(...mixed("b".repeat(length), filePart("1.pdf"))));
  expect(read(1000)).toEqual(["1.pdf"]);
  expect(read(1001)).toEqual([]);
});

test("multiparts are opened thirty deep; what lies deeper is one leaf", () => {
  const nest = (depth: number): string[] =>
    depth === 0 ? filePart("deep.pdf") : mixed(`b${depth}`, nest(depth - 1));
  expect(namesOf(leaves(...nest(30)))).toEqual(["deep.pdf"]);
  const [whole] = leaves(...nest(31));
  expect(whole?.type).toBe("multipart/mixed");
  expect(textOf(whole as Leaf)).toContain("deep.pdf");
});

test("a letter of more than ten thousand parts is refused", () => {
  expect(() =>
    leaves('Content-Type: multipart/mixed; boundary="b"', "", ...Array(10_001).fill("--b")),
  ).toThrow("too many parts");
  expect(
    leaves('Content-Type: multipart/mixed; boundary="b"', "", ...Array(10_000).fill("--b")).length,
  ).toBeGreaterThan(9_000);
});
