import { describe, expect, test } from "vitest";
import { composeAnswer } from "../../src/answer/answer.ts";
import { maySettle } from "../../src/checks/asked.ts";
import { wordsOf } from "../../src/checks/run.ts";
import { everyProblem, makeReport, type Report } from "../../src/judging/report.ts";
import { type BuyerState, newBuyer } from "../../src/judging/state.ts";
import { statementsBeside } from "../../src/reading/reply/beside.ts";
import type { ReadFile } from "../../src/trade/attachment.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";
import { sentEarlier } from "../make/report.ts";
import { aloneDevice, completeOrder, deviceAt, plate } from "../make/sample.ts";
import { stateWith } from "../make/state.ts";

interface Letter {
  readonly text?: string;
  readonly list?: string;
  readonly sheets: readonly Sheet[];
  readonly files?: readonly ReadFile[];
  readonly state?: BuyerState;
}

/** A letter, from its words to the report on it. */
function judge({ text = "", list, sheets, files = [], state = newBuyer() }: Letter): Report {
  const own = sheets.map(({ id, file }): ReadFile => ({ id, file, kind: "sheet" }));
  const all = [
    ...own,
    ...files,
    ...(list === undefined ? [] : [{ id: "1/90", file: "list.csv", kind: "text" } as const]),
  ];
  const letter = { subject: "Order BW-2207", text, references: [], attachments: [] };
  const statements = statementsBeside(letter, {
    files: all,
    texts: list === undefined ? [] : [{ file: "list.csv", text: list }],
    sheets,
    earlier: state.orders.flatMap((order) => order.sheets),
    catalogue,
    furniture: new Set(),
    quoted: [],
    understood: new Set(),
  });
  const came = { receivedAt: new Date("2026-03-02T15:00:00Z") };
  return makeReport({ files: all, sheets, statements, letter: { number: "1", came } }, catalogue, state);
}

const told = (report: Report): string[] =>
  everyProblem(report)
    .filter(({ check }) => check === "count-differs" || check === "letter-says-more")
    .map(
      (problem) =>
        `${problem.check === "count-differs" ? problem.wording : "person"}: ${wordsOf(problem).says}`,
    );

const [first, ...others] = completeOrder();
const twoOfAnother = [
  aloneDevice({ id: "1/20", file: "a.pdf", mark: "T-1" }),
  aloneDevice({ id: "1/21", file: "b.pdf", mark: "T-2", finish: "CHK" }),
];

describe("a count that agrees with what came says nothing", () => {
  test.each([
    "Total: 4 devices, 1 plate",
    "1 four-gang plate and 4 devices attached",
    "5 sheets",
    "Attached are 5 PDFs.",
    "4 devices + 1 plate = 5 sheets",
    "4 device sheets (four-button: 4)",
    "Plates: 1\nDevices: 4",
    "Total of five sheets for BW-2207.",
    "1 plate (4-gang), 4 keypads",
  ])("%j", (text) => {
    const report = judge({ text, sheets: completeOrder() });
    expect([told(report), report.verdict]).toEqual([[], "pass"]);
  });

  test("in a list as well", () => {
    const report = judge({ list: "Item,Qty\nDevices,4\n4-gang plates,1\nTotal,5", sheets: completeOrder() });
    expect([told(report), report.verdict]).toEqual([[], "pass"]);
  });

  test("nor does one of the letter's own sheets, where earlier letters brought the others", () => {
    const state = stateWith(sentEarlier(others));
    const report = judge({ text: "1 sheet attached.", sheets: [first as Sheet], state });
    expect([told(report), report.verdict]).toEqual([[], "pass"]);
  });

  test("nor one of all of them together", () => {
    const state = stateWith(sentEarlier(others));
    const report = judge({ text: "That makes 5 sheets in all.", sheets: [first as Sheet], state });
    expect([told(report), report.verdict]).toEqual([[], "pass"]);
  });
});

describe("one that does not is asked about, and no person need read it", () => {
  test.each([
    ["Total: 5 devices, 1 plate", "fewer: Your letter says 5 devices; 4 came."],
    ["12 devices, 1 plate", "fewer: Your letter says 12 devices; 4 came."],
    ["4 devices, 2 plates", "fewer: Your letter says 2 plates; 1 came."],
    ["3 devices, 1 plate", "more: Your letter says 3 devices, but 4 came."],
    ["1 three-gang plate, 4 devices", "fewer: Your letter says 1 plate of 3 gangs; none came."],
    ["4 two-button devices", "fewer: Your letter says 4 devices of 2 buttons; none came."],
    ["17 sheets", "fewer: Your letter says 17 sheets; 5 came."],
    ["Attached are 6 PDFs.", "fewer: Your letter says 6 files; 5 came."],
  ])("%j", (text, says) => {
    const report = judge({ text, sheets: completeOrder() });
    expect([told(report), report.verdict]).toEqual([[says], "confirm"]);
  });

  test("of a list", () => {
    const report = judge({ list: "Item,Qty\nDevices,6\nPlates,1", sheets: completeOrder() });
    expect(told(report)).toEqual(["fewer: The file list.csv says 6 devices; 4 came."]);
  });

  test("of one finish", () => {
    const report = judge({ text: "2 Chalk devices", sheets: twoOfAnother });
    expect(told(report)).toEqual(["fewer: Your letter says 2 devices in Chalk; 1 came."]);
  });

  test("a sheet that came twice counts once", () => {
    const again = aloneDevice({ id: "1/22", file: "c.pdf", mark: "T-1" });
    const report = judge({ text: "3 devices", sheets: [...twoOfAnother, again] });
    expect(told(report)).toEqual(["fewer: Your letter says 3 devices; 2 came."]);
  });

  test("no YES settles it, since it could mean either number", () => {
    const report = judge({ text: "5 devices", sheets: completeOrder() });
    expect(report.orders.flatMap(({ problems }) => problems).filter(maySettle)).toEqual([]);
    const { text } = composeAnswer(report, catalogue);
    expect(text).toContain("Your letter says 5 devices; 4 came.");
    expect(text.replace(/\s+/g, " ")).toContain("Reply “1:” and your answer. A person reads it.");
    expect(text).not.toContain("YES");
  });
});

describe("while sheets are still to come", () => {
  const some = [plate(), deviceAt(1), deviceAt(2), deviceAt(3)];
  test("a total that is not reached is only told", () => {
    const report = judge({ text: "4 devices, 1 plate", sheets: some });
    expect([told(report), report.verdict]).toEqual([
      ["soFar: Your letter says 4 devices; 3 came so far."],
      "waiting",
    ]);
    expect(report.orders[0]?.carried.map(({ text }) => text)).toEqual(["4 devices"]);
  });

  test("one that is exceeded is asked about", () => {
    const report = judge({ text: "2 devices, 1 plate", sheets: some });
    expect([told(report), report.verdict]).toEqual([
      ["more: Your letter says 2 devices, but 3 came."],
      "confirm",
    ]);
  });

  const waiting = (text: string): BuyerState => {
    const report = judge({ text, sheets: sentEarlier(some) });
    const state = stateWith(sentEarlier(some));
    const carried = report.orders[0]?.carried ?? [];
    return { ...state, orders: state.orders.map((order) => ({ ...order, carried })) };
  };

  test("the order passes once it has come to it, and nothing of it stays", () => {
    const report = judge({ sheets: [deviceAt(4)], state: waiting("4 devices, 1 plate") });
    expect([told(report), report.verdict]).toEqual([[], "pass"]);
    expect(report.orders[0]?.carried).toEqual([]);
  });

  test("it is asked about once the order is complete without it", () => {
    const report = judge({ sheets: [deviceAt(4)], state: waiting("9 devices, 1 plate") });
    expect([told(report), report.verdict]).toEqual([
      ["fewer: Your letter says 9 devices; 4 came."],
      "confirm",
    ]);
    expect(report.orders[0]?.carried.map(({ text }) => text)).toEqual(["9 devices"]);
  });

  test("a later letter's total takes the place of an earlier one's", () => {
    const report = judge({
      text: "4 devices in total.",
      sheets: [deviceAt(4)],
      state: waiting("9 devices, 1 plate"),
    });
    expect([told(report), report.verdict]).toEqual([[], "pass"]);
  });

  test("but a count of the later letter's own sheets does not", () => {
    const report = judge({
      text: "1 device attached.",
      sheets: [deviceAt(4)],
      state: waiting("9 devices, 1 plate"),
    });
    expect(told(report)).toEqual(["fewer: Your letter says 9 devices; 4 came."]);
  });

  test("files are all that is attached, whatever they hold", () => {
    const words: ReadFile = { id: "1/51", file: "readme.txt", kind: "text" };
    const sheets = completeOrder();
    const count = sheets.length;
    expect(told(judge({ text: `${count + 1} files`, sheets, files: [words] }))).toEqual([]);
    expect(told(judge({ text: `${count + 2} files`, sheets, files: [words] }))).toHaveLength(1);
  });

  test("a file that could not be read may be the sheet that is missing", () => {
    const scan: ReadFile = { id: "1/50", file: "scan.pdf", kind: "scanned" };
    expect(told(judge({ text: "5 devices", sheets: completeOrder(), files: [scan] }))).toEqual([]);
    expect(told(judge({ text: "6 devices", sheets: completeOrder(), files: [scan] }))).toEqual([
      "fewer: Your letter says 6 devices; 4 came.",
    ]);
  });
});

describe("a person reads a wrong count", () => {
  test("that may be of any of several orders", () => {
    const other = aloneDevice({ id: "1/30", file: "x.pdf", order: "BW-3110", mark: "T-1" });
    const sheets = [...completeOrder(), other];
    expect(told(judge({ text: "7 devices", sheets }))).toEqual([
      "person: “7 devices” stands in your letter. The program acts on sheets only.",
    ]);
    expect(told(judge({ text: "5 devices, 1 plate", sheets }))).toEqual([]);
  });

  test("that may be of a part of an order", () => {
    const state = stateWith(sentEarlier(others));
    const report = judge({ text: "2 sheets attached.", sheets: [first as Sheet], state });
    expect(told(report)).toHaveLength(1);
    expect([told(report)[0]?.slice(0, 7), report.verdict]).toEqual(["person:", "person"]);
  });

  test("that another contradicts", () => {
    const report = judge({ text: "4 devices.\n\n8 devices.", sheets: completeOrder() });
    expect(told(report).map((one) => one.slice(0, 7))).toEqual(["person:", "person:"]);
  });
});

describe("in the notes of a sheet", () => {
  const noted = (notes: string) =>
    judge({ sheets: [deviceAt(1, { notes }), deviceAt(2), deviceAt(3), deviceAt(4), plate()] });
  test.each([
    ["Total: 4 devices, 1 plate", []],
    ["qty 4 x four-button, 1 plate", []],
    ["5 sheets", []],
    ["Total: 6 devices", ["fewer: A note on a sheet says 6 devices; 4 came."]],
    [
      "qty 14 x four-button, 2 plates",
      [
        "fewer: A note on a sheet says 14 devices of 4 buttons; 4 came.",
        "fewer: A note on a sheet says 2 plates; 1 came.",
      ],
    ],
  ])("%j", (notes, says) => {
    const report = noted(notes);
    expect([told(report), report.verdict]).toEqual([says, says.length > 0 ? "confirm" : "pass"]);
  });

  test.each(["QTY 4", "qty 4 devices", "4 x four-button", "TYP OF 4"])(
    "%j may ask for four of what is on the sheet",
    (notes) => {
      expect(noted(notes).verdict).toBe("person");
    },
  );
});
