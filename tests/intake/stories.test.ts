import { simpleParser } from "mailparser";
import { beforeEach, describe, expect, test } from "vitest";
import type { Desk } from "../../src/intake/desk.ts";
import { takeDue } from "../../src/intake/take.ts";
import { openBlobs } from "../../src/store/blobs.ts";
import { openSqlite } from "../../src/store/sqlite.ts";
import { openStore } from "../../src/store/store.ts";
import type { LetterRecord, OrderRecord } from "../../src/trade/record.ts";
import { temporaryDesk, temporaryFolder } from "../make/desk.ts";
import {
  aloneAt,
  deviceIn,
  plateOf,
  type QuickLetter,
  type QuickSheet,
  quickReader,
  takeQuick,
} from "../make/quick.ts";

let desk: Desk;
beforeEach(async () => {
  desk = await temporaryDesk({ reader: quickReader });
});

const minute = (n: number): Date => new Date(Date.UTC(2026, 10, 9, 14, n));

/** One letter after the other, a minute apart. */
async function story(...letters: (readonly QuickSheet[] | Partial<QuickLetter>)[]): Promise<LetterRecord[]> {
  const records: LetterRecord[] = [];
  for (const [i, one] of letters.entries()) {
    const letter = "length" in one ? { sheets: one } : one;
    const at = minute(i);
    records.push(await takeQuick(desk, { id: `letter-${i}`, dated: at, receivedAt: at, ...letter }));
  }
  return records;
}

async function orderOf(number = "BW-2207"): Promise<OrderRecord> {
  const [order] = await desk.store.orders.named(number);
  if (order === undefined) throw new Error(`no order ${number}`);
  return order;
}

async function answerTo(record: LetterRecord | undefined): Promise<string> {
  const answer = await desk.store.answers.of(record?.letter ?? 0);
  const { text = "" } = await simpleParser(Buffer.from(answer?.bytes ?? ""));
  return text.replaceAll(/\s+/g, " ");
}

const verdicts = (records: readonly LetterRecord[]) => records.map(({ verdict }) => verdict);
const checksOf = (record: LetterRecord | undefined) => [
  ...new Set(record?.problems.map(({ check }) => check)),
];
const files = ({ sheets }: OrderRecord) => sheets.map(({ file }) => file);

const whole = (mark: string) => [
  plateOf(mark, 2),
  deviceIn(mark, 1, 2, "ENTRY"),
  deviceIn(mark, 2, 2, "LOUNGE"),
];

describe("two letters of one order at once", () => {
  /** Several workers with one record, as programs of their own would have it. */
  async function workers(count: number): Promise<Desk[]> {
    const folder = temporaryFolder();
    const open = async (): Promise<Desk> =>
      temporaryDesk({
        reader: quickReader,
        store: await openStore(openSqlite(`${folder}/record.sqlite`), openBlobs(`${folder}/blobs`)),
      });
    const desks: Desk[] = [];
    for (let n = 0; n < count; n++) desks.push(await open());
    return desks;
  }

  async function atOnce(...letters: (readonly QuickSheet[])[]): Promise<LetterRecord[]> {
    const desks = await workers(letters.length);
    const first = desks[0];
    if (first === undefined) throw new Error("no worker");
    const taken = await Promise.all(
      letters.map((sheets, i) =>
        // As the two come from two people of one company, no lane keeps them apart.
        takeQuick(desks[i] ?? first, { id: `at-once-${i}`, dated: minute(i), receivedAt: minute(i), sheets }),
      ),
    );
    desk = first;
    while (await takeDue(first));
    return Promise.all(taken.map(({ letter }) => first.store.letters.read(letter)));
  }

  test("never both pass when both hold a sheet for one place", async () => {
    const both = await atOnce(whole("S-104"), [deviceIn("S-104", 2, 2, "VAULT")]);
    // Whichever is judged last names the two sheets, and the newer one stands.
    const said = (await Promise.all(both.map(answerTo))).join(" ");
    expect(said).toMatch(/“LOUNGE” → “VAULT”|“VAULT” → “LOUNGE”/);
    const { sheets } = await orderOf();
    expect(sheets.map(({ legends }) => legends[0]?.rows[0] ?? "").toSorted()).toEqual(["", "ENTRY", "VAULT"]);
  });

  test("are whole together when each has what the other lacks", async () => {
    const [plate, ...devices] = whole("S-104");
    const both = await atOnce(plate === undefined ? [] : [plate], devices);
    expect(verdicts(both).filter((verdict) => verdict === "pass")).toHaveLength(1);
    expect(await orderOf()).toMatchObject({ verdict: "pass", revision: 2, missing: [] });
  });
});

describe("a guess is a question", () => {
  test("a plate under a mark that may be mistyped stays when the other plate comes", async () => {
    const devices = [deviceIn("S-1", 1, 2, "ENTRY"), deviceIn("S-1", 2, 2, "LOUNGE")];
    const [, second, third] = await story(devices, [plateOf("S-2", 2)], [plateOf("S-1", 2)]);
    expect(checksOf(second)).toContain("station-mark-near-miss");
    expect(second?.verdict).toBe("confirm");
    expect(third?.verdict).not.toBe("pass");
    expect(await answerTo(third)).toContain("S-2");
    expect(files(await orderOf())).toContain("S-2 plate.pdf");
    expect((await orderOf()).missing).toMatchObject([{ station: "S-2" }, { station: "S-2" }]);
  });

  test("an order under a number that may be mistyped stays when the right one comes", async () => {
    const slip = { order_number: "BW-2270" };
    const [, second, third] = await story(
      [plateOf("S-1", 2), deviceIn("S-1", 1, 2, "ENTRY")],
      [deviceIn("S-1", 2, 2, "LOUNGE", slip)],
      [deviceIn("S-1", 2, 2, "LOUNGE")],
    );
    expect(second?.verdict).toBe("confirm");
    expect(third?.verdict).not.toBe("pass");
    expect((await orderOf("BW-2270")).verdict).not.toBe("pass");
    expect(files(await orderOf("BW-2270"))).toEqual(["S-1 pos 2.pdf"]);
  });

  test("the same sheets under a corrected number are two orders that do not both pass", async () => {
    const renamed = (number: string) =>
      whole("S-104").map((sheet) => ({ ...sheet, values: { ...sheet.values, order_number: number } }));
    const records = await story(renamed("BW-2207"), renamed("BW-2209"));
    expect(records[1]?.verdict).toBe("confirm");
    expect(await answerTo(records[1])).toContain("BW-2207");
  });
});

describe("an order is changed by its own sheets alone", () => {
  test("sheets without a number stay with the order that they have joined when another order comes", async () => {
    const fill = (sheets: readonly QuickSheet[], more: Record<string, string>) =>
      sheets.map((one) => ({ ...one, values: { ...one.values, ...more } }));
    const bare = fill(whole("S-2"), { order_number: "" });
    const other = fill(whole("S-3"), { order_number: "KF-31", project: "Harbor" });
    const records = await story(whole("S-1"), bare, other);
    expect(verdicts(records)).toEqual(["pass", "fail", "pass"]);
    expect((await orderOf()).verdict).toBe("fail");
    expect((await orderOf()).sheets).toHaveLength(6);
  });
});

describe("however many orders a buyer has", () => {
  const orders = (count: number) =>
    Array.from({ length: count }, (_, i) => [
      aloneAt(`Z-${i + 100}`, "FOYER", { order_number: `QX-${5000 + i * 37}`, project: `Site ${i}` }),
    ]);

  test("an order of long ago that a letter names in words does not pass before a person has read them", async () => {
    desk = await temporaryDesk({
      reader: quickReader,
      rules: { ...desk.rules, mostAnswers: { toOne: 99, toAll: 600, toOneADay: 100, inThreadADay: 20 } },
    });
    await story(whole("S-1"), ...orders(31), { text: "Please cancel BW 2207." });
    expect(await orderOf()).toMatchObject({
      verdict: "person",
      carried: [{ what: "words", text: "Please cancel BW 2207." }],
    });
  });

  test("a letter without a number does not spoil the order of another project", async () => {
    const bare = whole("S-1").map((one) => ({ ...one, values: { ...one.values, order_number: "" } }));
    const records = await story(bare, orders(1)[0] ?? []);
    expect(verdicts(records)).toEqual(["fail", "pass"]);
  });
});

describe("what is said of an order before its first sheet comes", () => {
  test("keeps it from passing until a person has read it", async () => {
    const words = "Please add two blank plates to BW-2207 when the sheets come.";
    const records = await story({ text: words }, whole("S-1"), [deviceIn("S-1", 2, 2, "VAULT")]);
    expect(verdicts(records)).toEqual(["person", "person", "person"]);
    expect(await answerTo(records[1])).toContain(`An earlier letter about this order says: “${words}”`);
  });

  test("says nothing of other orders, nor of other buyers'", async () => {
    const records = await story(
      { text: "Please add two blank plates to KF-31." },
      { text: "Please hold BW-2207.", from: "Eve Moran <eve@stranger.example>" },
      { text: "Hello, our order BW-2207 follows tomorrow.\n\nThanks" },
      whole("S-1"),
    );
    expect(verdicts(records)).toEqual(["person", "person", "person", "pass"]);
  });
});

describe("no dead ends", () => {
  test("a plate of three gangs that becomes two asks about the third device, and says why", async () => {
    const three = [1, 2, 3].map((n) => deviceIn("S-1", n, 3, ["ENTRY", "LOUNGE", "STAIRS"][n - 1] ?? ""));
    const records = await story(
      [plateOf("S-1", 3), ...three],
      [plateOf("S-1", 2)],
      [deviceIn("S-1", 1, 2, "ENTRY"), deviceIn("S-1", 2, 2, "LOUNGE")],
    );
    expect(verdicts(records)).toEqual(["pass", "fail", "confirm"]);
    expect(checksOf(records[2])).toEqual(["which-sheet-counts", "sheet-replaced"]);
    expect(await answerTo(records[2])).toContain(
      "S-1 pos 3.pdf, sent before, is for position 3. S-1 plate.pdf says that plate S-1 has fewer gangs now.",
    );
    const order = await orderOf();
    expect(order.problems.map(({ check }) => check)).toEqual(["which-sheet-counts"]);
    expect(order.questions).toHaveLength(1);
  });

  test("a device alone whose station becomes a plate is asked about", async () => {
    const records = await story([aloneAt("S-1", "ENTRY")], whole("S-1"));
    expect(verdicts(records)).toEqual(["pass", "confirm"]);
    expect(checksOf(records[1])).toEqual(["which-sheet-counts"]);
    // resending any other sheet changes nothing of that
    const [again] = await story({
      id: "again",
      sheets: whole("S-1").slice(0, 1),
      receivedAt: minute(9),
      dated: minute(9),
    });
    expect(again?.verdict).toBe("confirm");
  });

  test("two sheets for one position: the advice, followed step by step, ends in a pass", async () => {
    const entry = deviceIn("S-1", 1, 2, "ENTRY");
    const lounge = { ...deviceIn("S-1", 1, 2, "LOUNGE"), file: "LOUNGE.pdf" };
    const mended = { ...deviceIn("S-1", 2, 2, "LOUNGE"), file: "LOUNGE.pdf" };
    const records = await story([plateOf("S-1", 2), entry, lounge], [mended]);
    expect(verdicts(records)).toEqual(["fail", "pass"]);
    expect(await answerTo(records[1])).toContain(
      "LOUNGE.pdf takes the place of the sheet LOUNGE.pdf, sent before. Changed: Position: “1” → “2”.",
    );
  });

  test("the same when both are sent again", async () => {
    const [plate, entry, lounge] = whole("S-1");
    if (plate === undefined || entry === undefined || lounge === undefined) throw new Error("no sheets");
    const wrong = { ...lounge, values: { ...lounge.values, position: "1" } };
    const records = await story([plate, entry, wrong], [entry, lounge]);
    expect(verdicts(records)).toEqual(["fail", "pass"]);
  });

  test("a device that says another number of gangs: corrected alone, it is enough", async () => {
    const [plate, entry] = whole("S-1");
    if (plate === undefined || entry === undefined) throw new Error("no sheets");
    const records = await story(
      [plate, entry, deviceIn("S-1", 2, 3, "LOUNGE")],
      [deviceIn("S-1", 2, 2, "LOUNGE")],
    );
    expect(verdicts(records)).toEqual(["fail", "pass"]);
    expect((await orderOf()).sheets).toHaveLength(3);
  });

  test("a stopped sheet keeps its order from passing until it has come again", async () => {
    const long = deviceIn("S-1", 2, 2, "RECEPTION");
    const [plate, entry] = whole("S-1");
    if (plate === undefined || entry === undefined) throw new Error("no sheets");
    const records = await story([plate, entry, long], [entry], [deviceIn("S-1", 2, 2, "RECEPTN")]);
    expect(verdicts(records)).toEqual(["fail", "fail", "pass"]);
    expect(await answerTo(records[1])).toContain("has 9 characters; 8 can be cut");
  });

  test("a sheet without a number is mended by the same one with its number", async () => {
    const [plate, entry, lounge] = whole("S-1");
    if (plate === undefined || entry === undefined || lounge === undefined) throw new Error("no sheets");
    const bare = { ...lounge, values: { ...lounge.values, order_number: "" } };
    const records = await story([plate, entry], [bare], [lounge]);
    expect(verdicts(records)).toEqual(["waiting", "fail", "pass"]);
    expect(await answerTo(records[2])).toContain("Order number: (empty) → “BW-2207”");
  });

  test("a sheet without a number has that of the sheets that it comes with", async () => {
    const [plate, entry, lounge] = whole("S-1");
    if (plate === undefined || entry === undefined || lounge === undefined) throw new Error("no sheets");
    const records = await story([
      plate,
      entry,
      { ...lounge, values: { ...lounge.values, order_number: "" } },
    ]);
    expect(verdicts(records)).toEqual(["pass"]);
    expect(await answerTo(records[0])).toContain("Left out on 1 sheet: the order number.");
  });
});

describe("every replacement is said", () => {
  test("by field, old and new", async () => {
    const [, second] = await story(whole("S-1"), [
      deviceIn("S-1", 2, 2, "VAULT", { finish: "SLT", lettering: "MLK" }),
    ]);
    expect(await answerTo(second)).toContain(
      "S-1 pos 2.pdf takes the place of the sheet S-1 pos 2.pdf, sent before. Changed: Finish: “Oat” → “Slate”. Lettering: “Ink” → “Milk”. Button 1, row 1: “LOUNGE” → “VAULT”.",
    );
  });

  test("a device moved to another position names what it has taken the place of, and asks about what it left", async () => {
    const [, second] = await story(whole("S-1"), [deviceIn("S-1", 2, 2, "ENTRY")]);
    expect(await answerTo(second)).toContain("“LOUNGE” → “ENTRY”");
    expect(second?.verdict).not.toBe("pass");
  });

  test("a letter dated earlier that arrives later replaces nothing and is asked about", async () => {
    const late = { sheets: [deviceIn("S-1", 2, 2, "VAULT")], dated: new Date("2026-11-08T10:00:00Z") };
    const records = await story(whole("S-1"), late);
    expect(verdicts(records)).toEqual(["pass", "confirm"]);
    expect(checksOf(records[1])).toContain("which-sheet-counts");
    const order = await orderOf();
    expect(order.verdict).toBe("confirm");
    expect(order.sheets).toHaveLength(4);
    // a third one, newer than both, settles it
    const [third] = await story({
      id: "third",
      sheets: [deviceIn("S-1", 2, 2, "VAULT")],
      dated: minute(30),
      receivedAt: minute(30),
    });
    expect(third?.verdict).toBe("pass");
    expect((await orderOf()).sheets).toHaveLength(3);
  });
});

describe("what could not be read is not forgotten", () => {
  test("a scan keeps an order from passing until its sheet has come", async () => {
    const records = await story(
      { sheets: whole("S-1"), scans: ["T-7.pdf"] },
      [aloneAt("T-9", "STAIRS")],
      [aloneAt("T-7", "FOYER")],
    );
    expect(verdicts(records)).toEqual(["fail", "confirm", "pass"]);
    expect(await answerTo(records[1])).toContain("T-7.pdf, sent before, could not be read");
    expect((await orderOf()).carried).toEqual([]);
  });

  test("a sheet for the place that was missing settles it", async () => {
    const [plate, entry, lounge] = whole("S-1");
    if (plate === undefined || entry === undefined || lounge === undefined) throw new Error("no sheets");
    const records = await story({ sheets: [plate, entry], scans: ["scan0001.pdf"] }, [lounge]);
    expect(verdicts(records)).toEqual(["fail", "pass"]);
  });

  test.each([
    ["S-1.pdf", aloneAt("S-10", "FOYER")],
    ["device.pdf", { ...aloneAt("T-8", "FOYER"), file: "device 2.pdf" }],
    ["S-5 pos 1.pdf", deviceIn("S-1", 2, 2, "LOUNGE")],
  ])("%s is not settled by a sheet of a longer name or for another place", async (scan, other) => {
    const records = await story({ sheets: whole("S-1").slice(0, 2), scans: [scan] }, [other]);
    expect(records[1]?.verdict).not.toBe("pass");
    expect((await orderOf()).carried).toMatchObject([{ text: scan }]);
  });

  test.each([
    ["T-7 signed scan (2).pdf", aloneAt("T-7", "FOYER")],
    ["T-7.pdf", { ...aloneAt("T-7", "FOYER"), file: "form.pdf" }],
    ["S-1 pos 2 scan.pdf", { ...deviceIn("S-1", 2, 2, "VAULT"), file: "vault.pdf" }],
  ])("%s is settled by the sheet for the place that it names", async (scan, sheet) => {
    const records = await story({ sheets: whole("S-1"), scans: [scan] }, [sheet]);
    expect(verdicts(records)).toEqual(["fail", "pass"]);
  });

  test("a scan beside sheets of two orders is settled in both by the sheet for one", async () => {
    const other = { order_number: "KF-31", project: "Harbor" };
    const both = [
      ...whole("S-1"),
      ...whole("S-2").map((one) => ({ ...one, values: { ...one.values, ...other } })),
    ];
    const records = await story({ sheets: both, scans: ["T-7.pdf"] }, [aloneAt("T-7", "FOYER")]);
    expect(verdicts(records)).toEqual(["fail", "pass"]);
    expect((await orderOf("KF-31")).verdict).toBe("pass");
  });

  test("one of two files of one name is settled by a sheet of that name, and not by one that came again", async () => {
    const [plate, entry, lounge] = whole("S-1");
    if (plate === undefined || entry === undefined || lounge === undefined) throw new Error("no sheets");
    const named = (sheet: QuickSheet) => ({ ...sheet, file: "device.pdf" });
    const records = await story(
      { sheets: [plate, named(entry), lounge], scans: ["device.pdf"] },
      [named(entry)],
      [named(aloneAt("T-3", "FOYER"))],
    );
    expect(verdicts(records)).toEqual(["fail", "confirm", "pass"]);
  });
});

describe("dates and words that mislead nobody", () => {
  test("a clock that is months ahead keeps no later correction from counting", async () => {
    const ahead = { sheets: whole("S-1"), dated: new Date("2027-02-01T10:00:00Z") };
    const records = await story(ahead, [deviceIn("S-1", 2, 2, "VAULT")]);
    expect(verdicts(records)).toEqual(["pass", "pass"]);
    expect((await orderOf()).sheets).toHaveLength(3);
  });

  test("a device alone is asked about beside the plate, not beside a device of it", async () => {
    const [, second] = await story([aloneAt("S-1", "ENTRY")], whole("S-1"));
    expect(await answerTo(second)).toContain("S-1 plate.pdf says that a multi-gang plate stands there now.");
  });
});

describe("a device whose plate has not come", () => {
  const first = deviceIn("S-1", 2, 2, "ENTRY");

  test("stays beside a like one for another position of the plate", async () => {
    const records = await story([first], [deviceIn("S-1", 1, 2, "ENTRY")], [plateOf("S-1", 2)]);
    const checks = records.map(({ problems }) => problems.map(({ check }) => check));
    expect(checks.flat()).not.toContain("sheet-replaced");
    // Whether they are meant to be alike is asked, as of any two.
    expect((await orderOf()).problems.map(({ check }) => check)).toEqual(["device-copied-in-plate"]);
    expect((await orderOf()).sheets).toHaveLength(3);
  });

  test("gives way to one that says that it stands alone", async () => {
    const records = await story([first], [aloneAt("S-1", "ENTRY", { plate_plain: "" })]);
    expect(records[1]?.problems.map(({ check }) => check)).toContain("sheet-replaced");
    expect((await orderOf()).sheets).toMatchObject([{ standing: "alone" }]);
  });
});
