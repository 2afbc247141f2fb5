import { type PDFDict, PDFDocument, PDFName, PDFString } from "pdf-lib";
import { describe, expect, test } from "vitest";
import { annotationKey } from "../../../src/reading/page/held.ts";
import { inTheFile, runs } from "../../../src/reading/page/in-the-file.ts";
import { extrasOf, lineOf, nameOf } from "../../../src/reading/page/widget-extras.ts";
import { firstPages } from "../../../src/reading/pdf/walked-pages.ts";
import type { Entries } from "../../make/odd-pdf.ts";

const pdf = await PDFDocument.create();
const { context } = pdf;
const dict = (entries: object): PDFDict => context.obj(entries as Entries);
const text = PDFString.of;
const script = (words = "app.beep();") => dict({ S: "JavaScript", JS: text(words) });

// ISO 32000-1:2008 table 198
test.each<[string, unknown, boolean]>([
  ["a program", script(), true],
  ["to a place", dict({ S: "GoTo" }), false],
  ["to a page of the web", dict({ S: "URI" }), false],
  ["to the next page", dict({ S: "Named" }), false],
  ["to a place, and then a program", dict({ S: "GoTo", Next: script() }), true],
  ["to another file", dict({ S: "GoToR" }), true],
  ["a program when it is entered", dict({ E: script() }), true],
  ["to a place when it is entered", dict({ E: dict({ S: "GoTo" }) }), false],
  [
    "to a place when it is entered, a program when it is left",
    dict({ E: dict({ S: "GoTo" }), X: script() }),
    true,
  ],
  ["nothing", dict({}), false],
  ["no action", dict({ E: 7 }), false],
  ["a mere number", 7, false],
])("an action that leads %s runs something: %s", (_, action, is) => {
  expect(runs(dict({ A: action }), "A")).toBe(is);
});

/** What a document with these entries holds besides its pages. */
async function held(entries: object, ofPage: object = {}) {
  const document = await PDFDocument.create();
  const page = document.addPage();
  for (const [key, value] of Object.entries(entries))
    document.catalog.set(PDFName.of(key), document.context.obj(value));
  for (const [key, value] of Object.entries(ofPage))
    page.node.set(PDFName.of(key), document.context.obj(value));
  return inTheFile(document, firstPages(document, 9), new Set());
}
const names = (tree: object, key = "EmbeddedFiles") => ({ Names: { [key]: tree } });

// ISO 32000-1:2008 table 28, ISO 32000-2:2020 §14.13
test.each<[string, object, object, unknown[]]>([
  ["nothing", {}, {}, []],
  ["a file", names({ Names: [text("a.pdf"), 7] }), {}, [{ what: "file", page: 0, text: "a.pdf" }]],
  [
    "a file in a branch of its list",
    names({ Names: [], Kids: [dict({ Kids: [dict({ Names: [text("a.pdf"), 7] })] })] }),
    {},
    [{ what: "file", page: 0, text: "a.pdf" }],
  ],
  [
    "a name of a file alone",
    names({ Names: [text("a.pdf")] }),
    {},
    [{ what: "file", page: 0, text: "a.pdf" }],
  ],
  ["files without a name", names({}), {}, [{ what: "file", page: 0, text: "" }]],
  [
    "a file with a long name",
    names({ Names: [text("x".repeat(201)), 7] }),
    {},
    [{ what: "file", page: 0, text: "x".repeat(200) }],
  ],
  [
    "a file of the document and one of a page",
    { AF: [1] },
    { AF: [2] },
    [
      { what: "file", page: 0 },
      { what: "file", page: 0 },
    ],
  ],
  ["layers", { OCProperties: {} }, {}, [{ what: "layer", page: 0 }]],
  ["a program", names({}, "JavaScript"), {}, [{ what: "program", page: 0 }]],
  [
    "a program when it is opened, and one when it is closed",
    { OpenAction: script(), AA: { WC: script() } },
    {},
    [
      { what: "program", page: 0 },
      { what: "program", page: 0 },
    ],
  ],
  ["a place where it is opened", { OpenAction: { S: "GoTo" } }, {}, []],
  ["a program of a page", {}, { AA: { O: script() } }, [{ what: "program", page: 0 }]],
  ["a place to which a page leads", {}, { AA: { O: { S: "GoTo" } } }, []],
  ["a second form", { AcroForm: { XFA: [text("template"), 7] } }, {}, [{ what: "twin", page: 0 }]],
  ["names of nothing", { Names: 7 }, {}, []],
])("a document holds %s", async (_, entries, ofPage, differences) => {
  const found = await held(entries, ofPage);
  expect(found.map(({ difference }) => difference)).toEqual(differences);
  for (const { key, difference } of found)
    expect(key).toMatch(new RegExp(`^${difference.what} [0-9a-f]{64}$`));
});

test("a list of files that leads in a circle has no first name", async () => {
  const tree = dict({});
  tree.set(PDFName.of("Kids"), context.obj([context.register(tree)]));
  const [found] = inTheFile({ catalog: dict({ Names: { EmbeddedFiles: tree } }) } as never, [], new Set());
  expect(found?.difference.text).toBe("");
});

describe("an annotation has the same key", () => {
  const key = (entries: object) => annotationKey(dict({ Subtype: "Link", Rect: [1, 2, 3, 4], ...entries }));
  test.each<[string, object, boolean]>([
    ["as it is", {}, true],
    [
      "on another page, under another name, saved at another time",
      { P: 7, NM: text("x"), M: text("now") },
      true,
    ],
    ["leading elsewhere", { Dest: [7], A: dict({ S: "URI", URI: text("x") }) }, true],
    ["with a program", { A: script() }, false],
    ["saying something", { Contents: text("x") }, false],
    ["elsewhere", { Rect: [1, 2, 3, 5] }, false],
  ])("%s: %#", (_, entries, same) => {
    expect(key(entries) === key({})).toBe(same);
  });

  test("as no other, if it is endless", () => {
    const endless = Array.from({ length: 2_001 }, () => dict({}));
    expect(key({ Endless: endless })).toBeUndefined();
    expect(key({})).toMatch(/^annotation /);
  });
});

describe("a field", () => {
  const child = (parent: PDFDict, entries: object): PDFDict =>
    dict({ Parent: context.register(parent), ...entries });
  test("has the names of all above it, nameless ones left out, and no more than fifty", () => {
    const widget = child(child(dict({ T: text("MS") }), {}), { T: text("Line1") });
    expect(nameOf(widget)).toBe("MS.Line1");
    const circle = dict({ T: text("x") });
    circle.set(PDFName.of("Parent"), context.register(circle));
    expect(lineOf(circle)).toHaveLength(50);
  });

  const plain = { FT: "Tx", T: text("a") };
  const extras = (entries: object, values: readonly string[] = [], above: object = {}) =>
    extrasOf(child(dict(above), { ...plain, ...entries }), "a", values, pdf).map(
      ({ difference: { what, page, field, text } }) => [
        what,
        page,
        field,
        ...(text === undefined ? [] : [text]),
      ],
    );
  const looks = (key: string) => ({ AP: dict({ [key]: context.register(context.stream("q")) }) });
  test.each<[string, object, string[], unknown[]]>([
    ["nothing", {}, [], []],
    ["a program when it is clicked", { A: script() }, [], [["program", 0, "a"]]],
    ["a program when it is entered", { AA: { E: script() } }, [], [["program", 0, "a"]]],
    ["a tip", { TU: text("First line") }, [], [["laid", 0, "a", "First line"]]],
    ["a long tip", { TU: text("x".repeat(201)) }, [], [["laid", 0, "a", "x".repeat(200)]]],
    ["words", { Contents: text("EXIT") }, [], [["laid", 0, "a", "EXIT"]]],
    [
      "words that its tip says too",
      { Contents: text("EXIT"), TU: text("EXIT") },
      [],
      [["laid", 0, "a", "EXIT"]],
    ],
    ["words that it holds", { Contents: text("EXIT") }, ["EXIT"], []],
    ["its value with a format", { RV: text("<body><p>EXIT</p></body>") }, ["EXIT"], []],
    ["another value with a format", { RV: text("<p>EXIT</p>") }, ["ENTRY"], [["field", 0, "a"]]],
    ["signs with a format", { RV: text("<p>A &amp; &lt;B&gt;</p>") }, ["A & <B>"], []],
    ["a format without words", { RV: text("<p></p>") }, ["A"], []],
    ["choices", { Opt: [text("A"), text("B")] }, [], [["field", 0, "a"]]],
    ["no choices", { Opt: [] }, [], []],
    ["another look under the pointer", looks("R"), [], [["field", 0, "a"]]],
    ["another look while it is pressed", looks("D"), [], [["field", 0, "a"]]],
    ["its own look alone", looks("N"), [], []],
  ])("shows or does %s", (_, entries, values, found) => {
    expect(extras(entries, values)).toEqual(found);
  });

  test("has from those above it what it has not itself", () => {
    expect(extras({}, [], { TU: text("above"), AA: { E: script() }, RV: text("<p>X</p>") })).toEqual([
      ["program", 0, "a"],
      ["laid", 0, "a", "above"],
      ["field", 0, "a"],
    ]);
    expect(extras({ TU: text("own") }, [], { TU: text("above") })).toEqual([["laid", 0, "a", "own"]]);
  });

  test("that is a button may look otherwise under the pointer", () => {
    expect(extras({ FT: "Btn", ...looks("D") })).toEqual([]);
  });

  test("has other choices under other words, and the same in words of its own", () => {
    const key = (...Opt: unknown[]) => extrasOf(dict({ ...plain, Opt }), "a", [], pdf).map((one) => one.key);
    const pair = (...both: string[]) => context.obj(both.map((one) => text(one)) as never);
    expect(key(pair("A", "Ash"))).not.toEqual(key(pair("A", "Oak")));
    expect(key(text("A"))).toEqual(key(pair("A", "A")));
  });

  test("in a font at which viewers guess says so, in its drawing or its style", async () => {
    const document = await PDFDocument.create();
    const Font = { F: { BaseFont: "Klingon" }, G: { BaseFont: "Arial" } };
    document.catalog.set(PDFName.of("AcroForm"), document.context.obj({ DR: { Font } }));
    const found = (entries: object) =>
      extrasOf(document.context.obj({ ...plain, ...entries } as Entries), "a", [], document).map(
        ({ key }) => key,
      );
    const drawn = (content: string) => ({
      AP: document.context.obj({
        N: document.context.register(document.context.stream(content, { Resources: { Font } })),
      }),
    });
    const guess = ["field a font klingon"];
    expect(found({ DA: text("0 g /F 9 Tf") })).toEqual(guess);
    expect(found({ DA: text("/F -9.5 Tf 0 g") })).toEqual(guess);
    expect([
      found({ DA: text("/G 9 Tf") }),
      found({ DA: text("/H 9 Tf") }),
      found({ DA: text("9 Tf") }),
    ]).toEqual([[], [], []]);
    expect(found(drawn("/F 9 Tf"))).toEqual(guess);
    expect(found(drawn("/G 9 Tf"))).toEqual([]);
  });
});
