import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readKeepLines } from "../../../src/reading/reply/keep-lines.ts";
import { takeApart } from "../../../src/reading/reply/own-text.ts";

const words = ["NIMBUS", "SALONA", "KIDS'", "CAFÉ"];
const names = ["Ines Calloway", "ines.c"];
const subject = "CONFIRM: order FM-72, 1 thing to confirm";
const answer =
  "1. “NIMBUS” in row 1 of button 1 looks misspelt.\nNo button is wrong.\nReply that it is meant so, orders@quillgate.example";

function read(text: string): { words: string[]; more: boolean } {
  const said = readKeepLines(text, { words, answer, subject, names });
  return { words: [...said.words].toSorted(), more: said.more };
}

describe("keeps what it says, and says nothing else", () => {
  test.each([
    ["KEEP NIMBUS", ["NIMBUS"]],
    ["keep: nimbus", ["NIMBUS"]],
    ["KEEP:NIMBUS", ["NIMBUS"]],
    ["2: keep nimbus", ["NIMBUS"]],
    ["2. Keep “Nimbus”", ["NIMBUS"]],
    ["- (1) KEEP 'NIMBUS'.", ["NIMBUS"]],
    ["Please keep NIMBUS as it is, thanks!", ["NIMBUS"]],
    ["KEEP NIMBUS, SALONA", ["NIMBUS", "SALONA"]],
    ["KEEP NIMBUS and SALONA", ["NIMBUS", "SALONA"]],
    ["KEEP NIMBUS SALONA as they are", ["NIMBUS", "SALONA"]],
    ["KEEP kids’; cafe", ["CAFE", "KIDS'"]],
    ["Hi team,\n\nKEEP NIMBUS\r\nkeep salona\r\n\nThanks & best regards,\nInes", ["NIMBUS", "SALONA"]],
    ["KEEP NIMBUS\n\n-- \nInes Calloway\nBrightwire Electric\n312-555-0117", ["NIMBUS"]],
    ["KEEP NIMBUS\n\nSent from my iPhone", ["NIMBUS"]],
    ["Hello Burin,\n\nthank you very much.", []],
    ["", []],
  ])("%j", (text, kept) => {
    expect(read(text)).toEqual({ words: kept, more: false });
  });
});

test("a row that was asked about is kept by all its words, and by no fewer", () => {
  const rows = ["LIGHTS O", "READING", "FAN ON/O"];
  const kept = (text: string): string[] => [
    ...readKeepLines(text, { words: rows, answer, subject, names }).words,
  ];
  expect(kept("KEEP Lights  O, reading and FAN ON/O as they are")).toEqual(rows);
  for (const text of ["KEEP O", "KEEP LIGHTS", "KEEP LIGHTS ON", "KEEP LIGHTS O READING", "KEEP FAN"])
    expect(readKeepLines(text, { words: rows, answer, subject, names })).toEqual({
      words: new Set(),
      more: true,
    });
});

describe("has more to say than that", () => {
  test.each([
    "KEEP NIMBUS\n\nWhen will this ship?",
    "KEEP NIMBUS\n\nInes Calloway\nBrightwire Electric Ltd\n312-555-0117",
    "KEEP NIMBUS\nCall me on 312-555-0117 about the rest.",
    "These are meant:\nKEEP NIMBUS",
    "This is for the new wing.\nKEEP NIMBUS",
    "For the new wing\n\nKEEP NIMBUS",
    "KEEP NIMBUS\n😕 ???",
    "KEEP NIMBUS\n\n!",
    "KEEP NIMBUS\n\nThanks 😕",
    "KEEP NIMBUS\n\n❌ ???",
    "KEEP NIMBUS\nBut SALONA should be SALON.",
    "KEEP NIMBUS, STRATUS",
    "KEEP NIMBUS, STRATUS\nKEEP SALONA",
    "KEEP STRATUS",
    "Yes",
    "1: yes, NIMBUS is meant.",
    "do not keep NIMBUS",
    "KEEP NIMBUS?",
    "Keep NIMBUS, but change SALONA to SALON",
    "Keep in mind that NIMBUS is wrong",
    "KEEP NIMBUS AND THE WORD",
    "KEEP NIMBUS/SALONA",
    "keep",
    "upkeep NIMBUS",
    `KEEP ${"NIMBUS, ".repeat(60)}SALONA`,
  ])("%j", (text) => {
    expect(read(text)).toEqual({ words: [], more: true });
  });
});

describe("keeps nothing where anything speaks against it", () => {
  test.each([
    ["That was a slip of ours, all of it we do not want you to\nkeep SALONA."],
    ["We would like to see the new one and\nkeep SALONA"],
    ["Keep SALONA\nout of it"],
    ["No!\nKEEP SALONA"],
    ["KEEP SALONA, no"],
    ["Keep SALONA, wrong."],
    ["Keep SALONA and never"],
    ["KEEP SALONA\n\nSorry, that is a mistake."],
    ["KEEP SALONA\n\nPlease cancel."],
    ["KEEP SALONA\n\nWe changed it to SALON."],
    ["KEEP SALONA\n\nDon’t cut it yet"],
    ["KEEP SALONA\n\ndont"],
    ["KEEP SALONA\n\nIt isn't so"],
    ["KEEP SALONA\n\nｎｏ"],
    ["KEEP SALONA\n\nn\u00ado"],
    ["KEEP SALONA\n\nKeep it off the plate"],
    ["KEEP SALONA\n\n-- \nInes\nNB: hold the order"],
    ["KEEP SALONA\n\n-- \nInes\nKEEP STRATUS"],
    ["KEEP SALONA\n\n--- BUT HOLD THE ORDER UNTIL MONDAY ---"],
    ["KEEP SALONA\n\n-----\nNo, it looks misspelt."],
    ["KEEP SALONA\n\nFrom: Ines\nSubject: do NOT keep it"],
    ["KEEP SALONA\n\nFrom: Ines\nSent: Monday\nTo: Burin\nSubject: do NOT keep it\n\n1."],
    ["KEEP SALONA\n\nFrom: Ines\nSent: Monday\nTo: Burin, but hold the order\n\n1."],
    ["KEEP SALONA\n> 1. NIMBUS\nthis one is wrong\n> 2."],
    ["KEEP SALONA\n> Noor: and change SAUNA to SPA"],
    ["KEEP SALONA\n> don't"],
    ["KEEP SALONA\n> button 1 looks wrong\n> in row 1"],
    ["KEEP SALONA\n> No"],
    ["KEEP SALONA\n> Noor: wrong"],
    ["KEEP SALONA\n> NIMBUS wrong"],
    ["KEEP SALONA\n\n-----Original Message-----\nno: 1"],
    ["KEEP SALONA\n> 1.\n\n-- \nInes: stop"],
  ])("%j", (text) => {
    expect(read(text)).toEqual({ words: [], more: true });
  });

  test("nor is a word of doubt part of a sender's name, unless it was asked about", () => {
    const said = { answer, subject, names: ["No Reply"] };
    expect(readKeepLines("KEEP SALONA\nNo", { ...said, words }).words.size).toBe(0);
    expect(readKeepLines("KEEP STOP", { ...said, words: ["STOP"] })).toEqual({
      words: new Set(["STOP"]),
      more: false,
    });
  });
});

/** How mail programs lead in what a reply quotes without a mark at each line. */
const leads = [
  "-----Original Message-----\nFrom: Burin <orders@quillgate.example>\nSent: Monday, November 9, 2026 9:00 AM\nTo: Ines\nSubject: RE: [EXTERNAL] CONFIRM: order FM-72, 1 thing\nto confirm\n",
  "________________________________\nFrom: Burin <orders@quillgate.example>\nSent: Monday, 9 November 2026\n",
  "--------------------------------------------------------------------------------\n\nFrom: Burin\nDate: Monday\n",
  "From: Burin <orders@quillgate.example>\nSent: Monday\nTo: Ines\nSubject: CONFIRM\n",
  "*Von:* Burin\n*Gesendet:* Montag\n*An:* Ines\n*Betreff:* CONFIRM\n",
  "De : Burin\nEnvoyé : lundi\nÀ : Ines\nObjet : CONFIRM\n",
  "On Mon, Nov 9, 2026 at 9:00 AM Burin <orders@quillgate.example> wrote:",
  "On Mon, Nov 9, 2026 at 9:00 AM Burin, the intake desk of Quillgate Stations\n<orders@quillgate.example>\nwrote:",
  "Am 09.11.2026 um 09:00 schrieb Burin <orders@quillgate.example>:",
  "Le lun. 9 nov. 2026 à 09:00, Burin <orders@quillgate.example> a écrit :",
  "El lun, 9 nov 2026 a las 9:00, Burin (<orders@quillgate.example>) escribió:",
];

describe("what is quoted keeps nothing", () => {
  test.each(leads)("%j", (lead) => {
    expect(read(`Hello\n\n${lead}\nKEEP SALONA\n`).words).toEqual([]);
    expect(read(`KEEP NIMBUS\n\n${lead}\n\n${answer}\n`)).toEqual({ words: ["NIMBUS"], more: false });
    // A remark within a quotation that is not marked: the answer has no such words.
    expect(read(`KEEP NIMBUS\n\n${lead}\n\n${answer}\nno, this is wrong\n`).more).toBe(true);
  });

  test("nor where the quotation is marked", () => {
    expect(read("KEEP NIMBUS\n> KEEP SALONA\n>> KEEP SALONA")).toEqual({ words: [], more: true });
    expect(read("KEEP NIMBUS\n> in row\n> 1 of button 1\n>\n> Reply")).toEqual({
      words: ["NIMBUS"],
      more: false,
    });
    expect(read("KEEP NIMBUS\n> No button\n> is wrong.").more).toBe(false);
    expect(read("KEEP NIMBUS\n> 1. looks misspelt 😕")).toEqual({ words: [], more: true });
    expect(read("KEEP NIMBUS\n> 1. looks misspelt\nthis one too\n> 1.")).toEqual({
      words: [],
      more: true,
    });
    expect(read(`> ${answer}\nKEEP NIMBUS`)).toEqual({ words: [], more: true });
    expect(read("KEEP NIMBUS\n> in row 1\n\n-- \nInes, Brightwire Electric").more).toBe(false);
  });

  test.each(leads.filter((lead) => lead.endsWith(":")))("nor where %j is marked too", (lead) => {
    const marked = `${lead}\n\n${answer}`.replace(/^/gm, "> ");
    expect(read(`KEEP NIMBUS\n\n${marked}`)).toEqual({ words: ["NIMBUS"], more: false });
  });

  test.each([
    "On B-2 please cut POOL HALL in place of SAUNA, as Noor wrote:\n> POOL HALL please",
    "On B-2 please cut POOL HALL, as Noor wrote:\n> in row 1",
    "On B-2 please cut POOL HALL, as Noor wrote:",
    "On plate 2 at 10:30 we saw POOL HALL, as Noor wrote:\n> in row 1",
    "On Monday 9 November 2026 please cut POOL HALL, as Noor wrote:\n> in row 1",
    "--- POOL HALL ON B-2 ---",
    "--- POOL HALL ON B-2 ---\n\nreply",
    "-----\nReply",
    "From: Noor\nSubject: POOL HALL on B-2\n\n1.",
    "From: Noor\nSent: Monday\nTo: Burin\nSubject: POOL HALL on B-2\n\n1.",
    "From: Noor\nFrom: POOL HALL\nTo: Burin\nSent: Monday\n\n1.",
  ])("and %j leads in nothing that is known to be quoted", (words) => {
    expect(read(`KEEP NIMBUS\n\n${words}`)).toEqual({ words: [], more: true });
    expect(read(`${words}\nKEEP NIMBUS`).words).toEqual([]);
  });

  test("nor is a lead one that leads nothing in", () => {
    expect(read(`KEEP NIMBUS\n\n${leads[6]}\n\n`)).toEqual({ words: [], more: true });
  });

  test("and a mail program's links do not count as remarks", () => {
    const quoted = answer.replace(/(orders@\S+)/, "$1<mailto:$1>");
    expect(read(`KEEP NIMBUS\n\n${leads[0]}\n${quoted}`).more).toBe(false);
    expect(read(`KEEP NIMBUS\n\n${leads[0]}\n${answer} [orders@quillgate.example]`).more).toBe(false);
  });
});

const asked = fc.uniqueArray(fc.stringMatching(/^[A-Z]{2,9}$/), { minLength: 1, maxLength: 6 });
const anyCase = (word: string): fc.Arbitrary<string> =>
  fc.constantFrom(word, word.toLowerCase(), `“${word}”`);
const keepLine = (list: readonly string[]): fc.Arbitrary<string> =>
  fc
    .tuple(
      fc.constantFrom("", "2: ", "3. ", "- ", "(4) ", "12 "),
      fc.constantFrom("KEEP ", "keep ", "Keep: ", "KEEP :  "),
      fc.constantFrom(", ", ",", "; ", " and ", ", and "),
      fc.tuple(...list.map(anyCase)),
    )
    .map(([number, keep, between, items]) => `${number}${keep}${items.join(between)}`);
const anyText = fc.oneof(
  fc.string({ unit: "binary", maxLength: 200 }),
  fc
    .array(
      fc.constantFrom(...words, "KEEP ", "keep:", "\n", "> ", ", ", "-- \n", "wrote:", "On ", "From: "),
      { maxLength: 30 },
    )
    .map((parts) => parts.join("")),
);

test("every word on every line is kept, in whatever form it is written", () => {
  fc.assert(
    fc.property(
      asked
        .filter((list) => !list.includes("AND"))
        .chain((list) =>
          fc.record({
            list: fc.constant(list),
            line: keepLine(list),
            end: fc.constantFrom("", "\n\nThanks, Ines", "\r\n"),
          }),
        ),
      ({ list, line, end }) => {
        const said = readKeepLines(`Hello,\n${line}${end}`, { words: list, answer, subject, names });
        expect([...said.words].toSorted()).toEqual(list.toSorted());
        expect(said.more).toBe(false);
      },
    ),
  );
});

test("nothing that was not asked about is ever kept, nor anything after a quotation begins", () => {
  fc.assert(
    fc.property(anyText, fc.constantFrom(...leads, "> "), anyText, (own, lead, quoted) => {
      const said = readKeepLines(`${own}\n${lead}\n${quoted}`, { words, answer, subject, names });
      const above = readKeepLines(own, { words, answer, subject, names });
      for (const word of said.words) expect(above.words).toContain(word);
      for (const word of said.words) expect(["NIMBUS", "SALONA", "KIDS'", "CAFE"]).toContain(word);
    }),
  );
});

test("a line of any other words is left to a person", () => {
  const polite = /^(hi|hello|dear|good|thanks?|thank|you|ines|calloway|c)$/;
  fc.assert(
    fc.property(
      fc.stringMatching(/^[b-z]{3,12}x[b-z]{0,5}$/).filter((word) => !polite.test(word)),
      (word) => {
        expect(read(`KEEP NIMBUS\n\n${word}`)).toEqual({ words: [], more: true });
      },
    ),
  );
});

test("a text taken apart holds no line that was not there, and long texts take little time", () => {
  fc.assert(
    fc.property(anyText, (text) => {
      const lines = text
        .split(/\r\n|\r|\n/)
        .flatMap((line) => [line, line.replace(/^\s*>/, "")])
        .map((line) => line.trim());
      const { own, quoted, aside } = takeApart(text, subject);
      for (const line of [...own, ...quoted, ...aside]) expect(lines).toContain(line);
    }),
  );
});

test("a long text is taken apart in no more than its length needs", { timeout: 2000 }, () => {
  const long = [
    "On a ".repeat(50_000),
    "KEEP NIMBUS, ".repeat(50_000),
    "On \n".repeat(100_000),
    "-".repeat(500_000),
    "From: Burin\n\n".repeat(50_000),
    "keep NIMBUS\ndo so\n".repeat(50_000),
    "> From: Burin\n> do so\n".repeat(50_000),
  ];
  for (const text of long) {
    const { own, quoted, aside } = takeApart(text, subject);
    expect([...own, ...quoted, ...aside].join("").length).toBeLessThanOrEqual(2 * text.length);
  }
});

// Each would take minutes if every way to read it were tried: far longer than a test may take.
test.each([
  ["a link without end", `> <${":".repeat(29_000)}`, false],
  ["links in links", `> ${"[@/".repeat(9_000)}`, false],
  ["words run together", `> ${"aaaaaaa ".repeat(3_500)}`, true],
  ["ten megabytes", "KEEP ".repeat(2_000_000), true],
])("%s holds the reader up no longer than others", (_, text, more) => {
  const asked = { words: ["NIMBUS"], answer: "a aa aaa aaaa", subject: "", names: [] };
  expect(readKeepLines(`KEEP NIMBUS\n\n${text}`, asked)).toEqual({
    words: new Set(more ? [] : ["NIMBUS"]),
    more,
  });
});
