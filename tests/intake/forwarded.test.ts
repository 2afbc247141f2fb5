import { expect, test } from "vitest";
import { forwardedBy } from "../../src/intake/forwarded.ts";
import { takeLetter } from "../../src/intake/take.ts";
import { tryFiles } from "../../src/intake/try.ts";
import { keepingSender, temporaryDesk } from "../make/desk.ts";
import { letterOf, post } from "../make/thread.ts";

const staff = "sam@quillgate.example";
const rules = { staff: [staff], ours: ["orders@quillgate.example"] };

const inner = (from: string): string =>
  `--b\r\nContent-Type: message/rfc822\r\n\r\nFrom: ${from}\r\nTo: ${staff}\r\nMessage-ID: <${from}>\r\nSubject: Stations\r\n\r\nPlease see to it.\r\n`;

function forward(...attached: string[]): Uint8Array {
  const header = `From: Sam <${staff}>\r\nTo: orders@quillgate.example\r\nMessage-ID: <f@quillgate.example>\r\nSubject: Fwd: Stations\r\nContent-Type: multipart/mixed; boundary="b"`;
  return Buffer.from(`${header}\r\n\r\n--b\r\n\r\nFor the desk.\r\n${attached.join("")}--b--\r\n`);
}

const ask = (bytes: Uint8Array, proof: Parameters<typeof forwardedBy>[2] = "pass", from = staff) =>
  forwardedBy(rules, { from, bytes }, proof);

test("a letter that our staff attached whole is its sender's", async () => {
  expect(await ask(forward(inner("ines@brightwire.example")))).toEqual({
    kind: "of",
    buyer: "ines@brightwire.example",
  });
  expect(await ask(forward(inner("ines@brightwire.example")), "not asked")).toMatchObject({ kind: "of" });
});

test.each([
  ["no letter is attached", forward()],
  ["letters of two are", forward(inner("ines@brightwire.example"), inner("jo@oakmoor.example"))],
  ["its sender is nobody", forward(inner(""))],
  ["it is one of our own", forward(inner(staff))],
])("where %s, it is for a person", async (_, bytes) => {
  expect(await ask(bytes)).toMatchObject({ kind: "unclear" });
});

test.each(["none", "fail", "temporary"] as const)(
  "an address of our staff that proves %s forwards nothing",
  async (proof) => {
    expect(await ask(forward(inner("ines@brightwire.example")), proof)).toEqual({ kind: "no" });
  },
);

test("whoever is not our staff forwards letters as files of his own", async () => {
  const bytes = forward(inner("ines@brightwire.example"));
  expect(await ask(bytes, "pass", "eve@stranger.example")).toEqual({ kind: "no" });
});

test("the answer to a forwarded letter goes to whoever forwarded it, and the letter is its sender's", async () => {
  const sender = keepingSender();
  const made = await temporaryDesk({ sender });
  const desk = { ...made, rules: { ...made.rules, staff: [staff] } };
  const buyers: string[] = [];
  const settle: typeof made.store.letters.settle = (claim, outcome, now) => {
    buyers.push(outcome.buyer);
    return made.store.letters.settle(claim, outcome, now);
  };
  const bytes = forward(inner("ines@brightwire.example"));
  await takeLetter(
    { ...desk, store: { ...desk.store, letters: { ...desk.store.letters, settle } } },
    bytes,
    new Date("2026-11-09T15:00:00Z"),
  );
  expect(buyers).toEqual(["ines@brightwire.example"]);
  expect(sender.kept.map(({ recipient }) => recipient)).toEqual([staff]);
});

/** What is asked where our staff forwards two letters of Greta's as one, each with a sheet for T-1. */
async function forwardedAsOne(...letters: readonly (readonly [date: string, legend: string])[]) {
  const made = await temporaryDesk({ sender: keepingSender() });
  const desk = { ...made, rules: { ...made.rules, staff: [staff] } };
  const inner = await Promise.all(
    letters.map(async ([date, legend]) => {
      const bytes = await letterOf({ date, sheets: [sheetOf(legend)] });
      return `--b\r\nContent-Type: message/rfc822\r\n\r\n${Buffer.from(bytes).toString("latin1")}\r\n`;
    }),
  );
  const bytes = Buffer.from(forward(...inner).toString(), "latin1");
  const { letter } = await takeLetter(desk, bytes, desk.clock.now());
  return { desk, bytes, letter: await desk.store.letters.read(letter) };
}

const sheetOf = (legend: string) => ({ mark: "T-1", legend: [legend], fill: { order: "FM-90" } });
const [older, later] = ["2026-11-02T14:00:00Z", "2026-11-05T14:00:00Z"];

test("of two letters forwarded as one, the sheet of the older is asked about, whichever stands first", async () => {
  for (const letters of [
    [[older, "NORTH"] as const, [later, "SOUTH"] as const],
    [[later, "SOUTH"] as const, [older, "NORTH"] as const],
  ]) {
    const { desk, bytes, letter } = await forwardedAsOne(...letters);
    expect(letter.verdict).toBe("confirm");
    const { report } = await tryFiles(desk, [{ name: "forward.eml", bytes }]);
    expect(report.orders.flatMap(({ problems }) => problems).map(({ check }) => check)).toContain(
      "which-sheet-counts",
    );
    expect(letter.problems.map(({ check }) => check)).toContain("which-sheet-counts");
    const [order] = (await desk.store.buyers.stateOf("greta@fallowmere.example", [])).orders;
    const legends = order?.sheets.map(({ written, legends: [first] }) => [
      written?.slice(0, 10),
      first?.rows[0],
    ]);
    expect(legends?.toSorted()).toEqual([
      ["2026-11-02", "NORTH"],
      ["2026-11-05", "SOUTH"],
    ]);
    // The right one sent again takes the place of both.
    const again = await post(desk, { date: "2026-11-09T14:30:00Z", sheets: [sheetOf("SOUTH")] });
    expect(again.verdict).toBe("pass");
  }
});

test("two letters forwarded as one whose sheets say the same, or of one date, ask nothing of dates", async () => {
  const same = await forwardedAsOne([older, "NORTH"], [later, "NORTH"]);
  expect(same.letter.verdict).toBe("pass");
  const atOnce = await forwardedAsOne([later, "NORTH"], [later, "SOUTH"]);
  expect(atOnce.letter.verdict).toBe("fail");
});
