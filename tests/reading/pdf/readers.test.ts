import { PDFDict, PDFDocument, PDFHexString, PDFName, type PDFRef, PDFString } from "pdf-lib";
import { expect, test } from "vitest";
import { compareForms } from "../../../src/reading/pdf/compare.ts";
import { readFormByWalking } from "../../../src/reading/pdf/walked-form.ts";
import { openForWalking } from "../../../src/reading/pdf/walked-pdf.ts";
import { type OddForm, oddForm } from "../../make/odd-pdf.ts";
import { readBoth } from "../../make/read-both.ts";

/** A form with one field, "a", and what is read from it. */
type Odd = readonly [make: (form: OddForm) => PDFRef, ...values: string[]];

const text = (value: string): PDFString => PDFString.of(value);
const hex = (value: string): PDFHexString => PDFHexString.of(value);
const typed =
  (value: PDFString | PDFHexString): Odd[0] =>
  ({ widget }) =>
    widget({ FT: "Tx", T: text("a"), V: value });

// Bit positions of ISO 32000-1:2008 tables 226, 228 and 230
const flags = { radio: 1 << 15, push: 1 << 16, combo: 1 << 17, multiSelect: 1 << 21, comb: 1 << 24 };

const texts: Readonly<Record<string, Odd>> = {
  "plain text": [typed(text("LOBBY")), "LOBBY"],
  "an empty field": [({ widget }) => widget({ FT: "Tx", T: text("a") }), ""],
  // ISO 32000-1:2008 Annex D.2
  "PDFDocEncoding: 90 is ’, A0 is €, 83 is …, 1A is ˆ, 9E is ž, E9 is é": [
    typed(hex("4F90A0831A9EE9")),
    "O’€…ˆžé",
  ],
  // ISO 32000-1:2008 §7.9.2.2
  "UTF-16BE": [typed(hex("FEFF004B00C4D83DDE00")), "KÄ😀"],
  // Common practice, no source: ISO 32000 has no such mark.
  "UTF-16LE": [typed(hex("FFFE4B00C400")), "KÄ"],
  // ISO 32000-2:2020 §7.9.2.2
  "UTF-8": [typed(hex("EFBBBF4BC384E282AC")), "KÄ€"],
  "a language escape in UTF-16": [typed(hex("FEFF001B0065006E001B004F004B")), "OK"],
  "a field name in UTF-16": [({ widget }) => widget({ FT: "Tx", T: hex("FEFF0061"), V: text("x") }), "x"],
  "lines ended by \\r": [typed(text("A\\rB")), "A\nB"],
  "lines ended by \\n": [typed(text("A\\nB")), "A\nB"],
  "lines ended by \\r\\n": [typed(text("A\\r\\nB")), "A\nB"],
  "blanks around the text": [typed(text("  A  B ")), "  A  B "],
  "more than MaxLen allows": [
    ({ widget }) => widget({ FT: "Tx", MaxLen: 2, T: text("a"), V: text("LOBBY") }),
    "LOBBY",
  ],
  "a comb": [
    ({ widget }) => widget({ FT: "Tx", Ff: flags.comb, MaxLen: 8, T: text("a"), V: text("S104") }),
    "S104",
  ],
  "a value that only the kids have": [
    ({ widget, field }) =>
      field({ FT: "Tx", T: text("a") }, [widget({ V: text("FOYER") }), widget({ V: text("FOYER") })]),
    "FOYER",
  ],
  "type and value handed down through a nameless field": [
    ({ widget, field }) => field({ FT: "Tx", V: text("DOWN"), T: text("a") }, [field({}, [widget({})])]),
    "DOWN",
  ],
};

const choices: Readonly<Record<string, Odd>> = {
  "a tick": [
    ({ widget, looks }) => widget({ FT: "Btn", T: text("a"), V: "Yes", AS: "Yes", ...looks("Yes", "Off") }),
    "Yes",
  ],
  "no tick": [
    ({ widget, looks }) => widget({ FT: "Btn", T: text("a"), V: "Off", AS: "Off", ...looks("Yes", "Off") }),
  ],
  "a tick that only its look shows": [
    ({ widget, looks }) => widget({ FT: "Btn", T: text("a"), AS: "On", ...looks("On") }),
    "On",
  ],
  "a tick without looks": [({ widget }) => widget({ FT: "Btn", T: text("a"), V: "Yes" }), "Yes"],
  // ISO 32000-1:2008 §7.3.5: names are UTF-8, bytes beyond ASCII written as #xx
  "a state with a letter beyond ASCII": [
    ({ widget, looks }) =>
      widget({ FT: "Btn", T: text("a"), V: "Gr#C3#BCn", AS: "Gr#C3#BCn", ...looks("Gr#C3#BCn") }),
    "Grün",
  ],
  "two boxes of one name, the second ticked": [
    ({ widget, field, looks }) =>
      field({ FT: "Btn", T: text("a"), V: "2" }, [
        widget({ AS: "Off", ...looks("1") }),
        widget({ AS: "2", ...looks("2") }),
      ]),
    "2",
  ],
  "radio buttons": [
    ({ widget, field, looks }) =>
      field({ FT: "Btn", Ff: flags.radio, T: text("a"), V: "in" }, [
        widget({ AS: "Off", ...looks("out") }),
        widget({ AS: "in", ...looks("in") }),
      ]),
    "in",
  ],
  // ISO 32000-1:2008 table 227
  "radio buttons whose states count into Opt": [
    ({ widget, field, looks }) =>
      field({ FT: "Btn", Ff: flags.radio, T: text("a"), V: "1", Opt: [text("one"), text("two")] }, [
        widget({ AS: "Off", ...looks("0") }),
        widget({ AS: "1", ...looks("1") }),
      ]),
    "two",
  ],
  "radio buttons that stand for letters beyond Latin-1": [
    ({ widget, field, looks }) =>
      field({ FT: "Btn", Ff: flags.radio, T: text("a"), V: "1", Opt: [text("one"), hex("FEFF01410041")] }, [
        widget({ AS: "Off", ...looks("0") }),
        widget({ AS: "1", ...looks("1") }),
      ]),
    "ŁA",
  ],
  "radio buttons left alone": [
    ({ widget, field, looks }) =>
      field({ FT: "Btn", Ff: flags.radio, T: text("a") }, [widget({ AS: "Off", ...looks("x") })]),
  ],
  "a choice": [
    ({ widget }) =>
      widget({ FT: "Ch", Ff: flags.combo, T: text("a"), V: text("OAT"), Opt: [text("CHK"), text("OAT")] }),
    "OAT",
  ],
  "no choice": [({ widget }) => widget({ FT: "Ch", Ff: flags.combo, T: text("a"), Opt: [text("OAT")] })],
  "several choices in a list": [
    ({ widget }) =>
      widget({
        FT: "Ch",
        Ff: flags.multiSelect,
        T: text("a"),
        V: [text("A"), text("C")],
        Opt: [text("A"), text("B"), text("C")],
      }),
    "A",
    "C",
  ],
};

test.each(Object.entries({ ...texts, ...choices }))("both readers read %s", async (_, [make, ...values]) => {
  const { one, other } = await readBoth(await oddForm((form) => [make(form)]));
  expect(one.map(({ name, values: read }) => ({ name, values: read }))).toEqual([{ name: "a", values }]);
  expect(other).toEqual(one);
});

/** Forms that one may read this way or that: what reader one takes, and what the other. */
const doubtful: Readonly<Record<string, Odd>> = {
  "a box whose look contradicts its value": [
    ({ widget, looks }) => widget({ FT: "Btn", T: text("a"), V: "Yes", AS: "Off", ...looks("Yes", "Off") }),
    "",
    "Yes",
  ],
  "radio buttons whose looks contradict their value": [
    ({ widget, field, looks }) =>
      field({ FT: "Btn", Ff: flags.radio, T: text("a"), V: "in" }, [
        widget({ AS: "out", ...looks("out") }),
        widget({ AS: "Off", ...looks("in") }),
      ]),
    "in",
    "out",
  ],
  "text kept in a stream": [
    ({ widget, context }) =>
      widget({ FT: "Tx", T: text("a"), V: context.register(context.flateStream("LONG")) }),
    "",
    "LONG",
  ],
  "a preset that nobody confirmed": [
    ({ widget }) => widget({ FT: "Tx", T: text("a"), DV: text("preset") }),
    "preset",
    "",
  ],
  "a field that stands on no page": [
    ({ field }) => field({ FT: "Tx", T: text("a"), V: text("HIDDEN") }),
    "",
    "HIDDEN",
  ],
  "widgets of one field with two values": [
    ({ widget, field }) =>
      field({ FT: "Tx", T: text("a") }, [widget({ V: text("A") }), widget({ V: text("B") })]),
    "A",
    "B",
  ],
};

test.each(Object.entries(doubtful))("nobody is sure of %s", async (_, [make, one, other]) => {
  const read = await readBoth(await oddForm((form) => [make(form)]));
  expect(compareForms(read.one, read.other)).toMatchObject([{ name: "a", unsure: { one, other } }]);
});

test("nobody is sure of two fields of one name with two values", async () => {
  const { one, other } = await readBoth(
    await oddForm(({ widget }) =>
      ["A", "B"].map((value) => widget({ FT: "Tx", T: text("a"), V: text(value) })),
    ),
  );
  expect(compareForms(one, other)).toMatchObject([{ values: ["A"], unsure: { one: "A", other: "B" } }]);
});

test("a widget that the form does not list is seen by both readers, as it is by viewers", async () => {
  const { one, other } = await readBoth(
    await oddForm(({ widget }) => {
      widget({ FT: "Tx", T: text("stray"), V: text("HERE") });
      return [widget({ FT: "Tx", T: text("a"), V: text("x") })];
    }),
  );
  expect(compareForms(one, other)).toEqual([
    { name: "a", kind: "text", values: ["x"] },
    { name: "stray", kind: "text", values: ["HERE"] },
  ]);
});

test("widgets of every kind that the form does not list are seen by both readers", async () => {
  const { one, other } = await readBoth(
    await oddForm(({ widget, looks }) => {
      widget({ FT: "Btn", T: text("box"), V: "Yes", AS: "Yes", ...looks("Yes", "Off") });
      widget({ FT: "Btn", Ff: flags.radio, T: text("round"), V: "in", AS: "in", ...looks("in", "Off") });
      widget({ FT: "Btn", Ff: flags.push, T: text("push") });
      widget({ FT: "Ch", Ff: flags.combo, T: text("choice"), V: text("B"), Opt: [text("A"), text("B")] });
      widget({ FT: "Sig", T: text("sign") });
      widget({ T: text("nothing") });
      return [];
    }),
  );
  expect(one).toEqual([
    { name: "box", kind: "tick", values: ["Yes"] },
    { name: "round", kind: "tick", values: ["in"] },
    { name: "push", kind: "button", values: [] },
    { name: "choice", kind: "choice", values: ["B"] },
    { name: "sign", kind: "signature", values: [] },
  ]);
  expect(other).toEqual(one);
});

test("names of parents are joined with dots", async () => {
  const bytes = await oddForm(({ widget, field }) => [
    field({ T: text("MS") }, [
      field({ T: text("Key1"), FT: "Tx" }, [widget({ T: text("Line1"), V: text("ON") })]),
    ]),
  ]);
  const { one, other } = await readBoth(bytes);
  expect(one).toEqual([{ name: "MS.Key1.Line1", kind: "text", values: ["ON"] }]);
  expect(other).toEqual(one);
});

test("push buttons and signatures have no value", async () => {
  const bytes = await oddForm(({ widget }) => [
    widget({ FT: "Btn", Ff: flags.push, T: text("push"), V: "Yes" }),
    widget({ FT: "Sig", T: text("sign") }),
  ]);
  const { one, other } = await readBoth(bytes);
  expect(one).toEqual([
    { name: "push", kind: "button", values: [] },
    { name: "sign", kind: "signature", values: [] },
  ]);
  expect(other).toEqual(one);
});

test("fields in a circle end the reading, not the program", async () => {
  const bytes = await oddForm(({ widget, field, context }) => {
    const kid = widget({ FT: "Tx", T: text("b") });
    const top = field({ T: text("a") }, [kid]);
    context.lookup(kid, PDFDict).set(PDFName.of("Kids"), context.obj([top]));
    return [top, widget({ FT: "Tx", T: text("c"), V: text("x") })];
  });
  const { one, other } = await readBoth(bytes);
  expect(one).toContainEqual({ name: "c", kind: "text", values: ["x"] });
  expect(other).toEqual([{ name: "c", kind: "text", values: ["x"] }]);
});

/** A field so many levels deep. */
const nested = (depth: number) =>
  oddForm(({ widget, field }) => {
    let ref = widget({ FT: "Tx", T: text("x"), V: text("deep") });
    for (let level = 1; level < depth; level++) ref = field({}, [ref]);
    return [ref];
  });
/** So many fields that no page shows. */
const many = (count: number) =>
  oddForm(({ field }) => Array.from({ length: count }, (_, i) => field({ FT: "Tx", T: text(`${i}`) })));
/** One field with a name of so many letters, half of them its parent's. */
const named = (length: number) =>
  oddForm(({ widget, field }) => [
    field({ T: text("x".repeat(999)) }, [widget({ FT: "Tx", T: text("x".repeat(length - 1000)) })]),
  ]);
/** So many widgets on a page, of which the form lists one. */
const strays = (count: number) =>
  oddForm(({ widget }) => {
    const [listed] = Array.from({ length: count }, (_, i) => widget({ FT: "Tx", T: text(`${i}`) }));
    return listed === undefined ? [] : [listed];
  });

test.each([
  ["nested 50 levels deep", () => nested(50), 1],
  ["nested 51 levels deep", () => nested(51), "too deep"],
  ["of 10,000 fields", () => many(10_000), 10_000],
  ["of 10,001 fields", () => many(10_001), "too large"],
  ["with a name of 2,000 letters", () => named(2_000), 1],
  ["with a name of 2,001 letters", () => named(2_001), "endless names"],
  ["with 10,000 fields on its page", () => strays(10_000), 10_000],
  ["with 10,001 fields on its page", () => strays(10_001), "too large"],
])("a form %s is read up to the bounds, and refused beyond", async (_, make, comes) => {
  const pdf = await openForWalking(await make());
  if (typeof comes === "number") expect(readFormByWalking(pdf)).toHaveLength(comes);
  else expect(() => readFormByWalking(pdf)).toThrow(comes);
});

test("fields that the form does not list are looked for on 200 pages, below parents that lead in a circle", async () => {
  const pdf = await PDFDocument.create();
  const { context } = pdf;
  for (let n = 1; n <= 201; n++) {
    const [stray, parent] = [context.nextRef(), context.nextRef()];
    const name = { FT: "Tx", V: text("x"), Subtype: "Widget" };
    context.assign(stray, context.obj({ ...name, T: text(`${n}`), ...(n === 1 ? { Parent: parent } : {}) }));
    context.assign(parent, context.obj({ Parent: parent, Kids: [stray] }));
    pdf.addPage().node.set(PDFName.of("Annots"), context.obj([stray, parent]));
  }
  const names = readFormByWalking(pdf).map((field) => field.name);
  expect(names).toEqual(Array.from({ length: 200 }, (_, i) => `${i + 1}`));
});

test("a file without a form has no fields", async () => {
  const pdf = await PDFDocument.create();
  pdf.addPage();
  expect(await readBoth(await pdf.save())).toEqual({ one: [], other: [] });
});
