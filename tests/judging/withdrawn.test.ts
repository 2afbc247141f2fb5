import { describe, expect, test } from "vitest";
import { without } from "../../src/checks/sample.ts";
import { changesOf } from "../../src/judging/changes.ts";
import { makeReport } from "../../src/judging/report.ts";
import type { OrderState } from "../../src/judging/state.ts";
import { mayWithdraw, sheetsNamed } from "../../src/judging/withdrawn.ts";
import { answersBeside } from "../../src/reading/reply/answers-beside.ts";
import { statementsIn } from "../../src/reading/reply/statements.ts";
import type { DeviceSheet, FileId, Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";
import { aloneDevice, completeOrder, deviceAt, plate } from "../make/sample.ts";
import { stateWith } from "../make/state.ts";

// The sample's order BW-2207: S-104 is a plate with four devices. S-105 stands alone, and so does the sauna bar.
const s104 = completeOrder();
const s105 = aloneDevice({ id: "1/8", mark: "S-105", file: "S-105.pdf" });
const bar = aloneDevice({ id: "1/9", mark: "Sauna & Bar", file: "bar.pdf" });
const sheets: readonly Sheet[] = [...s104, s105, bar];
const orders: readonly OrderState[] = [{ number: "BW-2207", sheets, carried: [], questions: [] }];
const ids = (some: readonly Sheet[]): FileId[] => some.map(({ id }) => id);
const at = (position: number): FileId =>
  s104.find((sheet) => sheet.kind === "device" && sheet.position === position)?.id ?? "";
const station = ids(s104);
const whole = ids(sheets);

const subject = "CONFIRM: order BW-2207, 1 question to answer";
const answer = "CONFIRM: 1 question to answer.\n\n  3. “CANCEL” in row 1 of button 1 looks misspelt.\n";

/** What a reply withdraws, and what a person reads of it. */
function read(text: string, among = orders): { withdrawn: FileId[]; yes: number[]; said: number } {
  const facts = {
    numbers: ["BW-2207"],
    projects: ["Larkspur Library"],
    marks: ["S-104", "S-105", "Sauna & Bar"],
    names: ["Ines Calloway"],
    finishes: [],
    otherFinishes: [],
    called: new Map(),
    sheets: [],
    earlier: [],
    files: [],
    plates: [1],
    devices: [6],
    attached: [0],
  };
  const { answers, statements } = answersBeside(
    text,
    {
      open: [3],
      others: 0,
      answer,
      subject,
      isFurniture: () => false,
      names: ["Ines Calloway"],
      bringsSheets: false,
      isOnSheets: () => false,
      sheetsNamed: (words) => sheetsNamed(words, among),
    },
    (understood) =>
      statementsIn(
        { subject: `Re: ${subject}`, text },
        { facts, goods: catalogue, furniture: new Set(), quoted: [{ text: answer, subject }], understood },
      ),
  );
  return { withdrawn: [...answers.withdraws], yes: [...answers.yes], said: statements.length };
}

describe("a reply withdraws", () => {
  test.each<[string, readonly FileId[]]>([
    ["CANCEL S-104 position 2", [at(2)]],
    ["Cancel S-104, pos. 2", [at(2)]],
    ["Please cancel S-104, pos. 2", [at(2)]],
    ["Please cancel S-104 pos 2, thanks.", [at(2)]],
    ["cancel s104 position 3", [at(3)]],
    ["CANCEL S-104 (position 2)", [at(2)]],
    ["CANCEL S-104 position 2 of 4", [at(2)]],
    ["CANCEL position 2 of S-104", [at(2)]],
    ["Cancel position 2 at station S-104.", [at(2)]],
    ["CANCEL S-104 position 2 and 3", [at(2), at(3)]],
    ["CANCEL S-104 position 2, 3", [at(2), at(3)]],
    ["CANCEL S-104 position 2 and position 4", [at(2), at(4)]],
    ["CANCEL S-104 position 2 and S-105", [at(2), s105.id]],
    ["- CANCEL S-104 position 2", [at(2)]],
    ["*CANCEL S-104 position 2*", [at(2)]],
    ["CANCEL S-104", station],
    ["Cancel S-104!", station],
    ["Cancel: S-104", station],
    ["cancel station S 104", station],
    ["Please cancel station S-104.", station],
    ["Withdraw S-104", station],
    ["We withdraw S-104.", station],
    ["We would like to cancel S-104.", station],
    ["I’d like to cancel S-104, please.", station],
    ["We have to cancel S-104, sorry.", station],
    ["S-104 is cancelled.", station],
    ["Storno S-104", station],
    ["Bitte S-104 stornieren", station],
    ["Bitte stornieren Sie S-104, Position 2.", [at(2)]],
    ["Veuillez annuler S-104.", station],
    ["Merci d'annuler S-105", [s105.id]],
    ["Por favor cancelar S-104", station],
    ["CANCEL S-104 and S-105", [...station, s105.id]],
    ["CANCEL S-104, S-105", [...station, s105.id]],
    ["CANCEL sauna & bar", [bar.id]],
    ["CANCEL S-105 of order BW-2207", [s105.id]],
    ["CANCEL S-105, order bw 2207", [s105.id]],
    ["CANCEL order", whole],
    ["Please cancel the order.", whole],
    ["Please cancel our entire order", whole],
    ["cancel order BW-2207", whole],
    ["Cancel order no. bw2207", whole],
    ["Cancel BW-2207", whole],
    ["We hereby cancel order BW-2207.", whole],
    ["Cancellation of order BW-2207", whole],
    ["Bitte den Auftrag BW-2207 stornieren", whole],
    ["Veuillez annuler la commande BW-2207", whole],
    ["CANCEL S-105\nCANCEL S-104 position 2", [s105.id, at(2)]],
    ["Hello,\n\nCANCEL S-105\n\nKind regards\nInes Calloway\nBrightwire Electric, 312-555-0117", [s105.id]],
    [
      "CANCEL S-105\n\nSent from my iPhone\n\nOn Mon, Nov 9, 2026 at 9:12 AM Desk <o@quillgate.example> wrote:\n> 3.",
      [s105.id],
    ],
    ["> 3. “CANCEL” in row 1 of button 1 looks misspelt.\nCANCEL S-105", [s105.id]],
  ])("%j", (text, withdrawn) => {
    expect(read(text)).toEqual({ withdrawn, yes: [], said: 0 });
  });
});

describe("a reply withdraws nothing, and a person reads it", () => {
  test.each([
    "Don't cancel S-104",
    "Do not cancel S-104.",
    "dont cancel order BW-2207",
    "Never cancel S-104",
    "Please don’t cancel the order.",
    "No need to cancel S-104",
    "CANCEL not S-104 but S-105",
    "Cancel my earlier question",
    "Cancel that.",
    "Cancel",
    "CANCEL",
    "Please cancel",
    "Cancel the last e-mail",
    "Cancel my reply to question 3",
    "Should we cancel S-104?",
    "Can we still cancel S-104?",
    "Could you cancel S-104",
    "CANCEL S-104?",
    "What does it cost to cancel order BW-2207?",
    "CANCEL S-104 if it is not cut yet",
    "CANCEL S-104 unless it has shipped",
    "CANCEL S-104, if possible",
    "CANCEL S-104\nif the client has not signed",
    "If you have not started:\nCANCEL S-104",
    "CANCEL S-104 and send it again in black",
    "CANCEL S-104, we order it elsewhere",
    "CANCEL S-104 only",
    "CANCEL S-104 maybe",
    "We may have to cancel S-104",
    "We would cancel S-104",
    "We might cancel order BW-2207",
    "We will cancel S-104 tomorrow",
    "CANCEL S-104 tomorrow",
    "CANCEL S-104 for now",
    "Hold S-104",
    "CANCEL S-106",
    "CANCEL S-1O4",
    "CANCEL S-10",
    "CANCEL S-1044",
    "CANCEL S-104 and S-106",
    "CANCEL S-104 position 5",
    "CANCEL S-104 position 2 of 3",
    "CANCEL S-104 position",
    "CANCEL S-105 position 1",
    "CANCEL S-104 and position 2",
    "CANCEL S-104, S-105, position 2",
    "CANCEL position 2",
    "CANCEL order BW-2270",
    "CANCEL order BW-3110",
    "CANCEL S-104 of order BW-3110",
    "CANCEL order and reorder S-104",
    "CANCEL everything",
    "CANCEL all",
    "CANCEL the sheets",
    "CANCEL the other order",
    "CANCEL orders",
    "The legend of S-104 is CANCEL",
    "S-104: CANCEL",
    "Button 3: CANCEL",
    "CANCEL is right",
    "“CANCEL”",
    "The client says: cancel S-104",
    "My boss wants to know whether to\ncancel S-104",
    "You asked me to write\nCANCEL S-104",
    "We do not want to\ncancel S-104",
    "Yes\nCANCEL S-104",
    "CANCEL S-104\nScrap that.",
    "CANCEL S-104\nS-105 in black please",
    "CANCEL S-104\nNo!",
    "CANCEL S-104\n3 maybe",
    "Please cancel S-104 and tell me the new price.",
    "CANCEL S-104 - no, wait",
    "cancel subscription",
    "To cancel your subscription, reply CANCEL",
    "I cancel the meeting of Friday",
    "I had to cancel S-104 once before, this time we keep it.",
    "CANCEL S-104\n\nInes Calloway\n\nPS: all but the plate",
    "CANCEL S-104\n\n--- unless it is cut already ---",
    "Undo CANCEL S-104",
    "Un-cancel S-104",
    "Stornieren Sie S-104 nicht",
    "S-104 bitte nicht stornieren",
    "Ne pas annuler S-104",
    "No cancelar S-104",
  ])("%j", (text) => {
    const { withdrawn, said } = read(text);
    expect(withdrawn).toEqual([]);
    expect(said).toBeGreaterThan(0);
  });

  test.each([
    "> CANCEL S-104\n",
    "On Mon, Nov 9, 2026 at 9:12 AM Desk <o@quillgate.example> wrote:\n> CANCEL S-104\n",
    "-----Original Message-----\nFrom: Desk\nSent: Monday\nTo: Ines\nSubject: CONFIRM\n\nCANCEL S-104",
  ])("nor by what it quotes: %j", (text) => {
    expect(read(text).withdrawn).toEqual([]);
  });
});

describe("where two things may be meant, nothing is withdrawn", () => {
  const other = deviceAt(1, { id: "2/1", order: "BW-3110" });
  const two: readonly OrderState[] = [
    ...orders,
    { number: "BW-3110", sheets: [other], carried: [], questions: [] },
  ];

  test("a mark of two orders, unless the order is named", () => {
    expect(sheetsNamed("S-104", two)).toBeUndefined();
    expect(sheetsNamed("order", two)).toBeUndefined();
    expect(sheetsNamed("S-104 of order BW-3110", two)).toEqual([other.id]);
    expect(sheetsNamed("S-105", two)).toEqual([s105.id]);
  });

  const withMore = (...more: readonly Sheet[]): readonly OrderState[] => [
    { number: "BW-2207", sheets: [...sheets, ...more], carried: [], questions: [] },
  ];
  test("two devices at one position", () => {
    const among = withMore(deviceAt(2, { id: "2/1", finish: "SLT" }));
    expect(sheetsNamed("S-104 position 2", among)).toBeUndefined();
    expect(sheetsNamed("S-104", among)).toEqual([...station, "2/1"]);
  });
  test("a mark that is the order's number as well", () => {
    const among = withMore(aloneDevice({ id: "2/1", mark: "BW 2207" }));
    expect(sheetsNamed("BW-2207", among)).toBeUndefined();
    expect(sheetsNamed("S-105", among)).toEqual([s105.id]);
  });
  test("a mark and a number, or a longer mark", () => {
    const among = withMore(aloneDevice({ id: "2/1", mark: "S-1042" }));
    expect(sheetsNamed("S-104 2", among)).toBeUndefined();
    expect(sheetsNamed("S-1042", among)).toEqual(["2/1"]);
  });
  test("a station that only the notes of a sheet name", () => {
    const { mark: _, ...unmarked } = plate({ id: "2/1", notes: "plate S-105" });
    expect(sheetsNamed("S-105", withMore(unmarked))).toBeUndefined();
  });
});

describe("an order is judged without what was withdrawn", () => {
  const state = stateWith(sheets.map((sheet) => ({ ...sheet, id: sheet.id.replace(/^\d+/, "0") })));
  const earlier = (id: FileId): FileId => id.replace(/^\d+/, "0");
  const reportWithout = (...gone: readonly FileId[]) =>
    makeReport(
      { files: [], sheets: [], reply: true, about: ["BW-2207"], withdraws: gone.map(earlier) },
      catalogue,
      state,
    );

  test("a plate that lacks a device waits for it", () => {
    const report = reportWithout(at(2));
    expect(report.verdict).toBe("waiting");
    expect(report.orders[0]?.missing).toEqual([{ station: "S-104", kind: "device", position: 2 }]);
    const [revision, ...more] = changesOf(report, state, () => 0);
    expect(more).toEqual([]);
    expect(revision?.withdrawn).toEqual([earlier(at(2))]);
    expect(revision?.sheets).toHaveLength(sheets.length - 1);
  });

  test("an order of which nothing is left has no verdict", () => {
    const report = reportWithout(...whole);
    expect(report.orders).toEqual([]);
    const [revision, ...more] = changesOf(report, state, () => 0);
    expect(more).toEqual([]);
    expect(revision).toEqual({
      number: "BW-2207",
      missing: [],
      sheets: [],
      withdrawn: whole.map(earlier),
      carried: [],
      problems: [],
      questions: [],
    });
  });

  test("nothing is withdrawn by a letter that is held", () => {
    expect(changesOf({ ...reportWithout(at(2)), held: true }, state, () => 0)).toEqual([]);
  });
});

describe("sheets are withdrawn", () => {
  const at = (day: number) => new Date(`2026-11-0${day}T12:00:00Z`);
  const earlier = [...s104, s105];
  const arrivals = new Map([["1", { receivedAt: at(5), dated: at(5) }]]);
  const state = stateWith(earlier, { arrivals });
  const may = (gone: readonly string[], brought: readonly Sheet[] = [], dated = at(6)) =>
    mayWithdraw(gone, state, { number: "2", came: { receivedAt: at(6), dated } }, brought);
  const again = (changes: Partial<Sheet>): Sheet => ({ ...s105, id: "2/1", ...changes });

  test("by a letter that is newer by its date too", () => {
    expect(may([s105.id])).toBe(true);
    expect(may([s105.id], [], at(4))).toBe(false);
  });

  test("unless it brings one for their station, or for an order of which nothing would be left", () => {
    expect(may([s105.id], [again({})])).toBe(false);
    expect(may([s105.id], [again({ mark: "s 105" })])).toBe(false);
    expect(may([s105.id], [again({ mark: "S-106" })])).toBe(true);
    expect(may([s105.id], [without(again({}) as DeviceSheet, "mark")])).toBe(false);
    expect(may([s105.id], [again({ order: "KX-1185" })])).toBe(true);
    expect(may([s105.id], [without(again({}) as DeviceSheet, "order")])).toBe(false);
    expect(may(ids(earlier), [again({ mark: "S-106" })])).toBe(false);
    expect(may(ids(earlier))).toBe(true);
  });
});
