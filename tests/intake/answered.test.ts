import { beforeEach, describe, expect, test } from "vitest";
import { answerByLink } from "../../src/intake/by-link.ts";
import { takeNote } from "../../src/intake/check-note.ts";
import type { Desk } from "../../src/intake/desk.ts";
import { takeDue, takeLetter } from "../../src/intake/take.ts";
import type { LetterRecord, OrderRecord } from "../../src/trade/record.ts";
import { keepingSender, temporaryDesk } from "../make/desk.ts";
import { directReader } from "../make/reader.ts";
import { answerTo, letterOf, pageTo, post, type Sent } from "../make/thread.ts";

const greta = "greta@fallowmere.example";
const salona = { mark: "B-1", legend: ["SALONA"] };
const checksOf = ({ problems }: LetterRecord): string[] => problems.map(({ check }) => check);

let desk: Desk;
beforeEach(async () => {
  desk = await temporaryDesk();
});

async function orderOf(
  number = "FM-72",
): Promise<{ verdict: string | undefined; letters: number[]; sheets: string[] }> {
  const [order] = await desk.store.orders.named(number);
  return {
    verdict: order?.verdict,
    letters: (order?.letters ?? []).map(({ letter }) => letter),
    sheets: (order?.sheets ?? []).map(({ file }) => file),
  };
}

/** Posts a reply that has no plain text. */
async function postPage(to: LetterRecord, html: string): Promise<LetterRecord> {
  const plain = Buffer.from(await letterOf({ to, text: "x" })).toString("latin1");
  const header = plain
    .slice(0, plain.indexOf("\r\n\r\n"))
    .replace(/^Content-[^]*?(?:\r\n(?![ \t])|$)/gim, "");
  const bytes = Buffer.from(`${header.trim()}\r\nContent-Type: text/html; charset=utf-8\r\n\r\n${html}\r\n`);
  const { letter } = await takeLetter(desk, bytes, desk.clock.now());
  return desk.store.letters.read(letter);
}

test("a yes where nothing was asked needs nobody, unless it says more", async () => {
  const passed = await post(desk, { sheets: [{ mark: "B-2", legend: ["SAUNA"] }] });
  expect(passed.verdict).toBe("pass");
  const long = `${"yes, ".repeat(39)}yes.`;
  for (const text of [
    "Yes",
    "Proof approved, go ahead.\n\nGreta",
    "OK, approved.\n\nGreta",
    "Looks good, go ahead!",
    "All correct, thanks.",
    "Passt.",
    "C'est bon, merci.",
    "OK as is",
    "Checked against the drawings, all ok.",
    "👍",
    long,
  ])
    expect(await post(desk, { to: passed, text }), text).toMatchObject({ verdict: "pass" });
  const more = [
    "Proof approved except B-2",
    "Yes, in red",
    "In red, yes",
    "OK but not yet",
    "Looks good, go ahead with two of them",
  ];
  for (const text of [...more, `${long}.`])
    expect(await post(desk, { to: passed, text }), text).toMatchObject({ verdict: "person" });
  // Nobody knows what it is said to.
  expect(await post(desk, { text: "Yes" })).toMatchObject({ verdict: "person" });
});

test.each(["No thanks", "Nein.", "👎", "❌"])(
  "“%s” where nothing was asked is for a person",
  async (text) => {
    const passed = await post(desk, { sheets: [{ mark: "B-2", legend: ["SAUNA"] }] });
    const order = "QX-551";
    const waiting = await post(desk, {
      sheets: [
        { mark: "B-5", legend: ["SAUNA"], kind: "plate", fill: { order, gangs: "2" } },
        { mark: "B-5", legend: ["STEAM"], fill: { order, standing: "in-plate", gangs: "2", position: "1" } },
      ],
    });
    expect([passed.verdict, waiting.verdict]).toEqual(["pass", "waiting"]);
    for (const to of [passed, waiting]) {
      const reply = await post(desk, { to, text: `${text}\n\nGreta` });
      expect(reply).toMatchObject({ verdict: "person" });
      expect(reply.problems.map(({ facts }) => facts["words"])).toContain(text);
    }
  },
);

test.each([
  ["Point 1 fixed.", "pass"],
  ["1. Shortened, new sheet attached.", "pass"],
  ["My typo, sorry. Hier das korrigierte Blatt.", "pass"],
  ["Changed it to SAUNA as suggested. OK now?", "pass"],
  ["Point 1 fixed, and the finish is Oat now.", "person"],
  ["Point 2 fixed, and make B-3 the same.", "person"],
  ["1. Shortened. The others too, please.", "person"],
])("“%s” beside the sheet that mends what nothing was asked about: %s", async (text, verdict) => {
  const failed = await post(desk, { sheets: [{ mark: "B-2", legend: ["SAUNA AND STEAM ROOM LIGHTS"] }] });
  expect(failed.verdict).toBe("fail");
  const sheets = [{ mark: "B-2", legend: ["SAUNA"] }];
  expect(await post(desk, { to: failed, text: `${text}\n\nGreta`, sheets })).toMatchObject({ verdict });
});

test("a yes where something was asked is still an answer, and is read as one", async () => {
  const asked = await post(desk, { sheets: [salona, { mark: "B-2", legend: ["SALONB"] }] });
  expect(await post(desk, { to: asked, text: "OK" })).not.toMatchObject({ verdict: "pass" });
});

test.each(["1 YES", "CANCEL B-1", "CANCEL order"])(
  "“%s” under the number of another order of the buyer is for a person",
  async (text) => {
    const asked = await post(desk, { sheets: [salona] });
    await post(desk, {
      sheets: [{ mark: "B-1", legend: ["SAUNA"], fill: { order: "QX-551" } }],
    });
    const subject = "Re: Order QX-551";
    expect(await post(desk, { to: asked, subject, text })).toMatchObject({ verdict: "person" });
    expect(await orderOf()).toMatchObject({ sheets: ["B-1.pdf"] });
    expect(await orderOf("QX-551")).toMatchObject({ sheets: ["B-1.pdf"] });
  },
);

test("somebody else's answer below the sender's name answers nothing", async () => {
  const asked = await post(desk, { sheets: [salona] });
  const head = "From: Eve Marsh <eve@stranger.example>\nSent: Monday\nTo: Greta\nSubject: RE: Stations";
  for (const says of ["1 YES", "All good from our side.", "CANCEL B-1"])
    expect(await post(desk, { to: asked, text: `Thanks,\nGreta\n\n${head}\n\n${says}` }), says).toMatchObject(
      { verdict: "person" },
    );
  expect(await orderOf()).toMatchObject({ verdict: "person", sheets: ["B-1.pdf"] });
});

test("a yes without a number is for a person where something must be fixed as well", async () => {
  const asked = await post(desk, { sheets: [salona, { mark: "B-2", legend: ["RECEPTION"] }] });
  expect(asked.verdict).toBe("fail");
  expect(checksOf(await post(desk, { to: asked, text: "Yes" }))).toContain("letter-says-more");
});

test("a word that its buyer keeps lets the order pass, and its record, answer and proof say so", async () => {
  const asked = await post(desk, { sheets: [salona, { mark: "B-2", legend: ["SAUNA"] }] });
  expect(asked).toMatchObject({ verdict: "confirm", orders: ["FM-72"] });
  expect(checksOf(asked)).toEqual(["spelling"]);
  expect(await answerTo(desk, asked)).toContain("Or reply “1 YES” if it is meant as it stands.");

  const kept = await post(desk, { to: asked, text: "Hello,\n\n1: yes\n\nThanks, Greta" });
  expect(kept).toMatchObject({ verdict: "pass", state: "sent", orders: ["FM-72"], sheets: 0 });
  expect(checksOf(kept)).toEqual(["question-answered", "question-answered"]);
  expect(await orderOf()).toEqual({
    verdict: "pass",
    letters: [asked.letter, kept.letter],
    sheets: ["B-1.pdf", "B-2.pdf"],
  });
  const answer = await answerTo(desk, kept);
  expect(answer).toMatch(/^PASS: order FM-72 is complete, nothing to fix\./);
  expect(answer).toMatch(/“SALONA” is kept as it stands, and is not asked about again for Mill\s+Race Baths/);
  expect(answer).toContain("Enclosed: proof FM-72.pdf.");
  expect(await desk.store.orders.openAt(new Date("2026-11-10T00:00:00Z"))).toEqual([]);
});

test("it is not asked about again for that project, and still for every other and for everybody else", async () => {
  const asked = await post(desk, { sheets: [salona] });
  await post(desk, { to: asked, text: "1 YES" });
  const of = async (project: string, order: string, from?: string): Promise<string[]> => {
    const sheets = [
      { mark: order === "FM-81" ? "X-2" : "X-1", legend: ["SALONA"], fill: { project, order } },
    ];
    return checksOf(await post(desk, { sheets, ...(from === undefined ? {} : { from }) }));
  };
  expect(await of("Mill Race Baths", "FM-80")).toEqual([]);
  expect(await of("MILL RACE  baths", "FM-81")).toEqual([]);
  expect(await of("Mill Race Hotel", "FM-90")).toEqual(["spelling"]);
  expect(await of("Mill Race Baths", "XX-1", "Noor Vale <noor@otterlane.example>")).toEqual(["spelling"]);
});

test("whoever asks to leave the word that we ask about says yes", async () => {
  const asked = await post(desk, { sheets: [salona] });
  expect(await post(desk, { to: asked, text: "Leave SALONA as it is." })).toMatchObject({ verdict: "pass" });
});

test("a row that may be cut off is kept as a whole, not by its last letter", async () => {
  const rows = [["LIGHTS O"], ["READING "]];
  const sheets = rows.map((legend, i) => ({ mark: `B-${i + 1}`, legend }));
  const asked = await post(desk, { sheets });
  expect(asked.verdict).toBe("confirm");
  expect(checksOf(asked)).toEqual(["row-maybe-cut-off", "row-maybe-cut-off"]);
  const kept = await post(desk, { to: asked, text: "1, 2: yes" });
  expect(kept).toMatchObject({ verdict: "pass", state: "sent", orders: ["FM-72"] });
  const again = { mark: "B-7", legend: ["LIGHTS O"] };
  expect(checksOf(await post(desk, { sheets: [again, { mark: "B-8", legend: ["STAIRS O"] }] }))).toEqual([
    "row-maybe-cut-off",
  ]);
});

describe("a person reads what says anything else", () => {
  test.each([
    "When will this ship?",
    "Scrap that, please write SALON.",
    "Subject to the client's approval.",
    "SALON",
  ])("and keeps nothing until then, as with %j", async (words) => {
    const asked = await post(desk, { sheets: [salona] });
    for (const text of [`1 YES\n${words}`, `${words}\n\n1 YES`]) {
      const reply = await post(desk, { to: asked, text });
      expect(reply).toMatchObject({ verdict: "person", orders: ["FM-72"] });
      expect(checksOf(reply)).toContain("letter-says-more");
    }
    expect((await orderOf()).verdict).toBe("person");
    expect(await desk.store.buyers.keptWords(greta)).toEqual([]);
    expect(checksOf(await post(desk, { sheets: [{ ...salona, mark: "B-9" }] }))).toContain("spelling");
  });

  test.each([
    ["a number that nobody asked about", "7 YES"],
    ["an answer in other words", "You know what we want there."],
    ["a condition above", "If the client signs tomorrow:\n1 YES"],
    ["a sentence that is broken before it", "We would like to see it once more and\n1 YES."],
    ["a refusal above", "No!\n1 YES"],
    ["a refusal in its line", "1 YES, no"],
    ["an apology that takes it back", "1 YES. Sorry that is wrong"],
    ["an apology that means another", "1 YES, sorry I meant the other"],
    ["a courtesy that takes it back", "1 YES. Thanks but hold it"],
    ["a remark among what is quoted", "1 YES\n\n> Noor: and change SAUNA to SPA\n"],
    ["what looks like a rule", "1 YES\n\n--- BUT HOLD THE ORDER UNTIL MONDAY ---"],
    ["a remark below the signature", "1 YES\n\n-- \nGreta\nNB: hold the order until Monday"],
  ])("%s keeps nothing", async (_, text) => {
    const asked = await post(desk, { sheets: [salona] });
    const reply = await post(desk, { to: asked, text });
    expect(reply).toMatchObject({ verdict: "person", orders: ["FM-72"] });
    expect(checksOf(reply)).toContain("letter-says-more");
    expect(await desk.store.buyers.keptWords(greta)).toEqual([]);
    expect((await orderOf()).verdict).toBe("person");
  });

  test("what stands in its way is told beside it, once, and a person gets the whole", async () => {
    const asked = await post(desk, { sheets: [salona] });
    const tale = "My father kept algae in big tanks there during the war.";
    const said = async (text: string): Promise<unknown[]> =>
      (await post(desk, { to: asked, text })).problems
        .filter(({ check }) => check === "letter-says-more")
        .map(({ wording, facts }) => [wording, facts["words"]]);
    expect(await said(`1 YES\n${tale}\n\nThanks, Greta`)).toEqual([["answer", `1 YES … ${tale}`]]);
    expect(await said("1 YES\nPlease make it gold.")).toEqual([
      ["answer", "1 YES"],
      ["reply", "Please make it gold."],
    ]);
    expect(await said("Please make it gold.")).toEqual([["reply", "Please make it gold."]]);
    const horse = "It's the racehorse that they named the place after.";
    expect(await said(`${horse}\n\nGreta`)).toEqual([["reply", horse]]);
    expect(await said("Yep, meant so. And can you make it gold?")).toEqual([
      ["reply", "Yep, meant so."],
      ["reply", "And can you make it gold?"],
    ]);
  });

  test.each([
    ["what Outlook quotes", "\n\nFrom: Burin\nSent: Monday\nTo: Greta\nSubject: CONFIRM\n\n1 YES"],
    ["what is quoted with marks", "> 1 YES\n"],
  ])("%s keeps nothing, and says nothing", async (_, text) => {
    const asked = await post(desk, { sheets: [salona] });
    const reply = await post(desk, { to: asked, text });
    expect(reply).toMatchObject({ verdict: "confirm", orders: ["FM-72"] });
    expect(await desk.store.buyers.keptWords(greta)).toEqual([]);
  });

  test.each([
    ["a page", "Not 1 yes."],
    // it is broken after 80 characters
    ["a page", "Thank you for asking. That was a slip of ours, all of it, so do not take this as 1 YES."],
    ["a page with the word struck out", "<s>1 YES</s>"],
    ["a page with hidden words", '<div style="display:none">1 YES</div>'],
  ])("%s that says otherwise keeps nothing", async (_, words) => {
    const asked = await post(desk, { sheets: [salona] });
    const reply = await postPage(asked, `<html><body><p>${words}</p><p>Greta</p></body></html>`);
    expect(reply).toMatchObject({ verdict: "person", orders: ["FM-72"] });
    expect(await desk.store.buyers.keptWords(greta)).toEqual([]);
  });

  test.each([
    "Put a dot after the first letter.",
    "Swap the top two around.",
    "Grandpa's plate gets the big letters.",
    "The garage one is no longer required.",
    "Ours is a left hander.",
  ])("where a sheet came too, as with %j", async (words) => {
    const sheets = [{ mark: "B-2", legend: ["SAUNA"] }];
    const asked = await post(desk, { sheets: [salona] });
    const reply = await post(desk, {
      to: asked,
      text: `1 YES\n${words}\n\nOne more sheet attached.`,
      sheets,
    });
    expect(reply).toMatchObject({ verdict: "person", orders: ["FM-72"] });
    expect(checksOf(reply)).toContain("letter-says-more");
    expect(await desk.store.buyers.keptWords(greta)).toEqual([]);
  });

  test("a sheet with another word than the reply says shall stand there", async () => {
    const asked = await post(desk, { sheets: [salona] });
    const sheets = [{ ...salona, legend: ["SALON"] }];
    const reply = await post(desk, { to: asked, text: "1 NO, should be SALOON, sheet attached.", sheets });
    expect(reply).toMatchObject({ verdict: "person", orders: ["FM-72"] });
    expect(checksOf(reply)).toContain("letter-says-more");
  });

  test("but not one with that word", async () => {
    const asked = await post(desk, { sheets: [salona] });
    const sheets = [{ ...salona, legend: ["SALON"] }];
    const reply = await post(desk, { to: asked, text: "1 NO, should be Salon, sheet attached.", sheets });
    expect(reply).toMatchObject({ verdict: "pass", orders: ["FM-72"] });
  });

  test.each([
    ["Slate", "person"],
    ["Oat", "pass"],
  ])("a sheet in another finish than the reply says it has: %s, %s", async (finish, verdict) => {
    const plate: Sent = {
      mark: "B-1",
      kind: "plate",
      legend: ["SAUNA"],
      fill: { gangs: "2", finish: "Oat", lettering: "Ink" },
    };
    const inPlate = (position: string, legend: string, colours: Readonly<Record<string, string>>): Sent => ({
      mark: `B-1 position ${position}`,
      legend: [legend],
      fill: { mark: "B-1", standing: "in-plate", gangs: "2", position, ...colours },
    });
    const oat = { finish: "Oat", lettering: "Ink" };
    const slate = inPlate("2", "STEAM", { finish: "Slate", lettering: "Milk" });
    const asked = await post(desk, { sheets: [plate, inPlate("1", "SHOWER", oat), slate] });
    expect(checksOf(asked)).toEqual(["finish-differs-in-plate"]);
    const text = `1 changed to ${finish}, sheet attached`;
    const reply = await post(desk, { to: asked, text, sheets: [inPlate("2", "STEAM", oat)] });
    expect(reply).toMatchObject({ verdict });
  });

  test("a wish behind our subject", async () => {
    const asked = await post(desk, { sheets: [salona] });
    const subject = "Re: CONFIRM: order FM-72, 1 question - and in gold please";
    const reply = await post(desk, { to: asked, text: "1 YES", subject });
    expect(reply).toMatchObject({ verdict: "person", orders: ["FM-72"] });
  });

  test("but not that a sheet came too", async () => {
    const sheets = [{ mark: "B-2", legend: ["SAUNA"] }];
    const asked = await post(desk, { sheets: [salona] });
    const reply = await post(desk, { to: asked, text: "1 YES\n\nOne more sheet attached.", sheets });
    expect(reply).toMatchObject({ verdict: "pass", orders: ["FM-72"] });
  });

  test.each([
    "On B-2 please cut POOL HALL in place of SAUNA, as Noor wrote:\n> POOL HALL please",
    "On B-2 please cut POOL HALL, as Noor wrote:",
    "😕 ???",
  ])("beside the word it says %j", async (words) => {
    const asked = await post(desk, { sheets: [salona] });
    const reply = await post(desk, { to: asked, text: `1 YES\n\n${words}` });
    expect(reply).toMatchObject({ verdict: "person", orders: ["FM-72"] });
    expect((await orderOf()).verdict).toBe("person");
    expect(await desk.store.buyers.keptWords(greta)).toEqual([]);
  });

  test("our own answer alone says and keeps nothing, even quoted without any mark", async () => {
    const asked = await post(desk, { sheets: [salona] });
    const reply = await post(desk, { to: asked, text: await answerTo(desk, asked) });
    expect(reply.verdict).toBe("confirm");
    expect(await desk.store.buyers.keptWords(greta)).toEqual([]);
  });

  test("below an answer it is known again, and remarks among it are seen", async () => {
    const asked = await post(desk, { sheets: [salona] });
    const answer = await answerTo(desk, asked);
    const quoted = `1 YES\n\n-----Original Message-----\nFrom: Burin\nSent: Monday\n\n${answer}`;
    const remark = quoted.replace("PLEASE CONFIRM", "PLEASE CONFIRM\nno: B-2 must go");
    expect(await post(desk, { to: asked, text: quoted })).toMatchObject({ verdict: "pass" });
    expect(await post(desk, { to: asked, text: remark })).toMatchObject({ verdict: "person" });
  });

  test("as it is where it is quoted with marks, or as a page", async () => {
    const lead = "On Mon, Nov 9, 2026 at 9:00 AM Burin <orders@quillgate.example> wrote:";
    const asked = await post(desk, { sheets: [salona] });
    const answer = (await answerTo(desk, asked)).trimEnd();
    const marked = `${lead}\n\n${answer.replace(/^/gm, "> ")}`;
    const remark = marked.replace("> PLEASE CONFIRM", "> PLEASE CONFIRM\n> see Noor's letter");
    expect(remark).not.toBe(marked);
    const html = (await pageTo(desk, asked)).replace(/^[^]*<body[^>]*>|<\/body>[^]*$/g, "");
    const page = `<div>1 YES</div><br><div>${lead.replace("<", "&lt;")}<br></div><blockquote>${html}</blockquote>`;
    expect(await postPage(asked, page)).toMatchObject({ verdict: "pass" });
    expect(await post(desk, { to: asked, text: `1 YES\n\n${marked}` })).toMatchObject({
      verdict: "pass",
    });
    expect(await post(desk, { to: asked, text: `1 YES\n\n${remark}` })).toMatchObject({
      verdict: "person",
    });
  });

  test("files and links beside the words are for a person too", async () => {
    const asked = await post(desk, { sheets: [salona] });
    const files = [{ file: "plan.txt", bytes: new TextEncoder().encode("see here") }];
    expect(await post(desk, { to: asked, text: "1 YES", files })).toMatchObject({
      verdict: "person",
      orders: ["FM-72"],
    });
    const link = "1 YES\nhttps://share.fallowmere.example/f/8c1b2d90a7";
    expect(await post(desk, { to: asked, text: link })).toMatchObject({
      verdict: "person",
      orders: ["FM-72"],
    });
  });

  test("a letter that replies to nothing of ours keeps nothing", async () => {
    await post(desk, { sheets: [salona] });
    expect(checksOf(await post(desk, { text: "1 YES" }))).toEqual(["no-sheet"]);
    expect(await desk.store.buyers.keptWords(greta)).toEqual([]);
  });
});

describe("what else stands in the way of the order stays there", () => {
  const tooLong = { mark: "B-2", legend: ["RECEPTION"] };

  test("a sheet that has to be mended", async () => {
    const asked = await post(desk, { sheets: [salona, tooLong] });
    expect(asked.verdict).toBe("fail");
    const kept = await post(desk, { to: asked, text: "2 YES" });
    expect(kept).toMatchObject({ verdict: "fail", orders: ["FM-72"] });
    expect(checksOf(kept).toSorted()).toEqual(["question-answered", "question-answered", "row-too-long"]);
    expect(await answerTo(desk, kept)).toMatch(/^FAIL: 1 to fix before order FM-72 can be engraved\./);
    expect(await orderOf()).toMatchObject({ verdict: "fail", sheets: ["B-1.pdf", "B-2.pdf"] });
    const mended = await post(desk, { to: kept, sheets: [{ ...tooLong, legend: ["RECEPTN"] }] });
    expect(mended.verdict).toBe("pass");
    expect(checksOf(mended)).toEqual(["sheet-replaced"]);
    expect(await orderOf()).toMatchObject({ verdict: "pass", sheets: ["B-1.pdf", "B-2.pdf"] });
  });

  test("a sheet that is mended in the same reply", async () => {
    const asked = await post(desk, { sheets: [salona, tooLong] });
    const both = await post(desk, {
      to: asked,
      text: "2 YES",
      sheets: [{ ...tooLong, legend: ["RECEPTN"] }],
    });
    expect(both).toMatchObject({ verdict: "pass", orders: ["FM-72"], sheets: 1 });
    expect(checksOf(both)).toEqual(["sheet-replaced", "question-answered", "question-answered"]);
  });

  test("another order of the reply is judged again beside the one whose sheet came", async () => {
    const other = { ...tooLong, fill: { order: "FM-73" } };
    const asked = await post(desk, { sheets: [salona, other] });
    const both = await post(desk, {
      to: asked,
      text: "1 YES",
      sheets: [{ ...other, legend: ["RECEPTN"] }],
    });
    expect(both.verdict).toBe("pass");
    expect(both.orders.toSorted()).toEqual(["FM-72", "FM-73"]);
    expect(await orderOf()).toMatchObject({ verdict: "pass" });
  });

  test("another question", async () => {
    const asked = await post(desk, { sheets: [salona, { mark: "B-2", legend: ["LOUNJA"] }] });
    const one = await post(desk, { to: asked, text: "1 YES" });
    expect(one).toMatchObject({ verdict: "confirm" });
    expect(await answerTo(desk, one)).toContain("“LOUNJA” in row 1");
    expect(await post(desk, { to: one, text: "2 YES" })).toMatchObject({ verdict: "pass" });
  });

  test("a sheet that is still to come", async () => {
    const place = { gangs: "2", standing: "in-plate", position: "1" };
    const sheets = [
      { mark: "B-5", legend: ["SALONA"], kind: "plate" as const, fill: { gangs: "2" } },
      { mark: "B-5", legend: ["STEAM"], fill: place },
    ];
    const asked = await post(desk, { sheets });
    expect(asked.verdict).toBe("confirm");
    const kept = await post(desk, { to: asked, text: "1 YES" });
    expect(kept.verdict).toBe("waiting");
    expect(await answerTo(desk, kept)).toMatch(/^WAITING: order FM-72 is right so far, 1 sheet to come\./);
    const last = await post(desk, {
      sheets: [{ mark: "B-5", legend: ["SAUNA"], fill: { ...place, position: "2" } }],
    });
    expect(last.verdict).toBe("pass");
  });

  test("a file that has to come as a sheet", async () => {
    const files = [{ file: "B-2.pdf", bytes: new TextEncoder().encode("%PDF-1.7 cut short") }];
    const asked = await post(desk, { sheets: [salona], files });
    expect(checksOf(asked)).toContain("sheet-damaged");
    const kept = await post(desk, { to: asked, text: "2 YES" });
    expect(kept).toMatchObject({ verdict: "confirm", orders: ["FM-72"] });
    expect(checksOf(kept).toSorted()).toEqual([
      "file-still-unread",
      "question-answered",
      "question-answered",
    ]);
  });
});

describe("a question that is not about a word", () => {
  const inPlate = (position: string, legend: string): Sent => ({
    mark: "B-5",
    legend: [legend],
    fill: { gangs: "2", standing: "in-plate", position },
  });
  const plate: Sent = { mark: "B-5", kind: "plate", legend: ["STEAM"], fill: { gangs: "2" } };
  const both = [plate, inPlate("1", "STEAM"), inPlate("2", "STEAM")];

  test("is settled by YES, and not asked again of the same", async () => {
    const asked = await post(desk, { sheets: both });
    expect(checksOf(asked)).toContain("device-copied-in-plate");
    expect(await answerTo(desk, asked)).toContain("Or reply “1 YES” if it is meant as it stands.");
    const settled = await post(desk, { to: asked, text: "1 YES" });
    expect(settled).toMatchObject({ verdict: "pass", orders: ["FM-72"] });
    expect(await answerTo(desk, settled)).toContain("You answered YES to 1 question: 1.");
    expect(await post(desk, { sheets: [{ mark: "B-9", legend: ["FOYER"] }] })).toMatchObject({
      verdict: "pass",
    });
  });

  test("is another question where the sheets are others", async () => {
    const asked = await post(desk, { sheets: both });
    await post(desk, { to: asked, text: "1 YES" });
    const other = await post(desk, { sheets: [inPlate("1", "SAUNA"), inPlate("2", "SAUNA")] });
    expect(checksOf(other)).toContain("device-copied-in-plate");
    expect(await answerTo(desk, other)).toContain("Or reply “2 YES”");
    expect(await post(desk, { to: asked, text: "2 YES" })).toMatchObject({ verdict: "person" });
    expect(await post(desk, { to: other, text: "1 YES\n2 YES" })).toMatchObject({ verdict: "person" });
  });

  test("stays open after NO, which nobody else has to read", async () => {
    const asked = await post(desk, { sheets: both });
    const refused = await post(desk, { to: asked, text: "1 NO, new sheet follows" });
    expect(refused).toMatchObject({ verdict: "confirm", orders: ["FM-72"] });
    expect(checksOf(refused)).toEqual(
      expect.arrayContaining(["device-copied-in-plate", "question-answered"]),
    );
    const mended = await post(desk, { to: refused, sheets: [inPlate("2", "SAUNA")] });
    expect(mended.verdict).toBe("pass");
    expect(await post(desk, { to: refused, text: "1 YES" })).toMatchObject({ verdict: "person" });
  });

  test("keeps its number when others are gone", async () => {
    const asked = await post(desk, { sheets: [salona, ...both] });
    const text = await answerTo(desk, asked);
    const number = /(\d)\. (?:The devices for positions 1 and 2)/.exec(text)?.[1] ?? "";
    const word = number === "1" ? "2" : "1";
    const one = await post(desk, { to: asked, text: `${word} YES` });
    expect(await answerTo(desk, one)).toContain(`${number}. The devices for positions 1 and 2`);
    expect(await post(desk, { to: one, text: `${number} YES` })).toMatchObject({ verdict: "pass" });
  });

  test("is not settled by a YES that comes with a sheet which changes it", async () => {
    const asked = await post(desk, { sheets: both });
    const reply = await post(desk, { to: asked, text: "1 YES", sheets: [inPlate("2", "SAUNA")] });
    expect(reply.verdict).not.toBe("confirm");
    const [order] = await desk.store.orders.named("FM-72");
    expect(order?.questions).toEqual([]);
  });
});

describe("who may answer", () => {
  const proved = async (): Promise<Desk> => {
    const made = await temporaryDesk({
      reader: { ...directReader, sender: () => Promise.resolve({ ok: true, value: "pass" }) },
    });
    return { ...made, rules: { ...made.rules, nameServers: [] } };
  };
  const omar = "Omar Bell <omar@fallowmere.example>";

  test("a colleague of the same proved domain may, for the buyer", async () => {
    desk = await proved();
    const asked = await post(desk, { sheets: [salona] });
    const kept = await post(desk, { from: omar, to: asked, text: "1 YES\n\nOmar Bell" });
    expect(kept).toMatchObject({ verdict: "pass", orders: ["FM-72"] });
    expect(await desk.store.buyers.keptWords(greta)).toHaveLength(1);
    expect(await desk.store.buyers.keptWords("omar@fallowmere.example")).toEqual([]);
  });

  test.each([
    ["a stranger", "Eve Holt <eve@stranger.example>", true],
    ["one of the buyer's domain, unproved", omar, false],
  ] as const)("%s who knows a Message-ID keeps nothing and learns nothing", async (_, from, isProved) => {
    if (isProved) desk = await proved();
    const asked = await post(desk, { sheets: [salona] });
    const told = await answerTo(desk, await post(desk, { from, to: asked, text: "Hello" }));
    const reply = await post(desk, { from, to: asked, text: "1 YES" });
    expect(reply).toMatchObject({ verdict: "person", orders: [] });
    // the same answer as to any other words
    expect(await answerTo(desk, reply)).toBe(told);
    expect(told).not.toMatch(/SALONA|FM-72|Mill Race/);
    for (const buyer of [greta, from.slice(from.indexOf("<") + 1, -1)])
      expect(await desk.store.buyers.keptWords(buyer)).toEqual([]);
    expect(await orderOf()).toMatchObject({ verdict: "confirm", letters: [asked.letter] });
  });

  test("a stranger who names the order keeps nothing of the buyer's either", async () => {
    desk = await proved();
    await post(desk, { sheets: [salona] });
    const from = "Eve Holt <eve@stranger.example>";
    const own = await post(desk, { from, sheets: [{ ...salona, mark: "E-1" }] });
    expect(checksOf(own)).toContain("sender-unproven");
    expect(await post(desk, { from, to: own, text: "1 YES" })).toMatchObject({ verdict: "person" });
    expect(await desk.store.buyers.keptWords(greta)).toEqual([]);
    expect(await desk.store.buyers.keptWords("eve@stranger.example")).toEqual([]);
  });

  test("a letter too many in an hour waits, and the order stays as it was", async () => {
    const { rules } = desk;
    desk = { ...desk, rules: { ...rules, mostAnswers: { ...rules.mostAnswers, toOne: 1 } } };
    const asked = await post(desk, { sheets: [salona] });
    expect(await post(desk, { to: asked, text: "1 YES" })).toMatchObject({ state: "received" });
    expect(await desk.store.buyers.keptWords(greta)).toEqual([]);
    expect(await orderOf()).toMatchObject({ verdict: "confirm", letters: [asked.letter] });
  });

  test("a machine's reply keeps nothing", async () => {
    const asked = await post(desk, { sheets: [salona] });
    const words = Buffer.from(await letterOf({ to: asked, text: "1 YES" }));
    const machine = Buffer.concat([Buffer.from("Auto-Submitted: auto-replied\r\n"), words]);
    const { letter } = await takeLetter(desk, machine, desk.clock.now());
    expect(await desk.store.letters.read(letter)).toMatchObject({ state: "silent" });
    expect(await desk.store.buyers.keptWords(greta)).toEqual([]);
  });
});

test.each(["before", "after"])(
  "a death just %s the outcome is stored costs no answer and doubles nothing",
  async (when) => {
    let now = new Date("2026-11-09T15:00:00Z");
    const sender = keepingSender();
    desk = await temporaryDesk({ sender, clock: { now: () => now } });
    const asked = await post(desk, { sheets: [salona] });
    let deaths = 0;
    const dying: Desk = {
      ...desk,
      store: {
        ...desk.store,
        letters: {
          ...desk.store.letters,
          settle: async (...given) => {
            if (when === "after") await desk.store.letters.settle(...given);
            deaths += 1;
            throw new Error("the process ends here");
          },
        },
      },
    };
    const letter = await letterOf({ to: asked, text: "1 YES" });
    await takeLetter(dying, letter, now);
    expect(deaths).toBe(1);
    now = new Date(now.getTime() + 3_600_000);
    expect(await takeDue(desk)).toBe(true);
    const { letters, verdict } = await orderOf();
    expect(verdict).toBe("pass");
    expect(letters).toHaveLength(2);
    expect(sender.kept).toHaveLength(2);
    expect(await desk.store.buyers.keptWords(greta)).toEqual([{ word: "SALONA", project: "MILLRACEBATHS" }]);
    expect(await desk.store.letters.read(letters[1] ?? 0)).toMatchObject({ state: "sent", verdict: "pass" });
  },
);

describe("a subject that names an order", () => {
  const at = (number: string, legend: string) => ({
    mark: "B-1",
    legend: [legend],
    fill: { order: number, project: `Project ${number}` },
  });
  const verdictOf = async (subject: string, number: string, to?: LetterRecord) =>
    (await post(desk, { subject, sheets: [at(number, "SPA")], ...(to === undefined ? {} : { to }) })).verdict;
  const two = async () => {
    await post(desk, { sheets: [at("FM-107", "POOL")] });
    return post(desk, { sheets: [at("FM-114", "GYM")] });
  };

  test("of which no sheet came is for a person", async () => {
    await two();
    const letter = { subject: "Corrected B-1 for FM-114", sheets: [at("FM-107", "SPA")] };
    expect(await post(desk, letter)).toMatchObject({ verdict: "person" });
    expect((await orderOf("FM-107")).verdict).toBe("person");
    expect((await orderOf("FM-114")).verdict).toBe("person");
  });

  test("of which sheets came, of which the number goes on, or in whose thread the letter is, is none", async () => {
    const other = await two();
    expect(await verdictOf("Corrected B-1 for FM-107, as in FM-114", "FM-107")).toBe("pass");
    // Whether one order goes on in the other is a question of its own.
    expect(await verdictOf("FM-114-B", "FM-114-B")).toBe("confirm");
    expect(await verdictOf("Re: FM-114", "FM-121", other)).toBe("pass");
  });
});

test("a reply with sheets is about their order alone, whatever else its answer was about", async () => {
  const fill = { order: "FM-73" };
  const sheets = [
    { mark: "B-1", legend: ["NORTH"] },
    { mark: "C-1", legend: ["SOUTH"], fill },
  ];
  const both = await post(desk, { sheets });
  const reply = await post(desk, { to: both, sheets: [{ mark: "B-2", legend: ["EAST"] }] });
  expect([both.orders, reply.orders]).toEqual([["FM-72", "FM-73"], ["FM-72"]]);
});

describe("a question that was answered NO", () => {
  const omar = "Omar Pell <omar@fallowmere.example>";
  beforeEach(async () => {
    const sender = () => Promise.resolve({ ok: true, value: "pass" } as const);
    const made = await temporaryDesk({ reader: { ...directReader, sender } });
    desk = { ...made, rules: { ...made.rules, nameServers: [] } };
  });
  const verdictWith = async (
    ...replies: readonly Omit<Parameters<typeof post>[1], "to">[]
  ): Promise<string[]> => {
    const asked = await post(desk, { sheets: [salona] });
    const all = [];
    for (const reply of replies) all.push((await post(desk, { to: asked, ...reply })).verdict ?? "");
    return all;
  };

  test("is asked again where somebody else says YES, until that is said to what asks again", async () => {
    const asked = await post(desk, { sheets: [salona] });
    await post(desk, { to: asked, from: omar, text: "1 NO, corrected sheet follows tomorrow." });
    const again = await post(desk, { to: asked, text: "1 YES" });
    expect(again.verdict).not.toBe("pass");
    const words = (await answerTo(desk, again)).replace(/\s+/g, " ");
    expect(words).toContain("You answered YES to 1 question, and another answer says NO: 1.");
    expect(words).toContain("Or reply “1 YES” if it is meant as it stands.");
    expect(words).not.toContain("is kept as it stands");
    await post(desk, { to: again, text: "1 YES" });
    expect(await desk.store.orders.named("FM-72")).toMatchObject([{ verdict: "pass", questions: [] }]);
  });

  test("is asked again where a letter that is older than the NO says YES", async () => {
    const [no, yes] = ["2026-11-09T14:19:00Z", "2026-11-09T14:12:00Z"];
    expect(await verdictWith({ date: no, text: "1 NO" }, { date: yes, text: "1 YES" })).toEqual([
      "confirm",
      "confirm",
    ]);
  });

  test("is settled by who said NO and now says YES", async () => {
    expect(await verdictWith({ text: "1 NO" }, { text: "1 YES" })).toEqual(["confirm", "pass"]);
  });

  test("is settled by who said NO, whatever somebody else said between", async () => {
    const back = [{ from: omar, text: "1 NO" }, { text: "1 YES" }, { from: omar, text: "1 YES" }];
    expect(await verdictWith(...back)).toEqual(["confirm", "confirm", "pass"]);
  });

  test("by one of our own people is asked again where an answer that did not tell of it says YES", async () => {
    const asked = await post(desk, { sheets: [salona] });
    const note = { id: "no", buyer: greta, order: "FM-72", by: "Rosa Imhoff", why: "told by phone" };
    const no = await takeNote(desk, { ...note, acts: [{ kind: "no", number: 1 }] });
    const again = await post(desk, { to: asked, text: "1 YES" });
    expect(again.verdict).toBe("confirm");
    expect((await answerTo(desk, again)).replace(/\s+/g, " ")).toContain("another answer says NO: 1.");
    while (await takeDue(desk));
    const told = await desk.store.letters.read(no.kind === "judged" ? no.letter : 0);
    expect((await post(desk, { to: told, text: "1 YES" })).verdict).toBe("pass");
  });

  test("on the page of a link holds against a colleague, and not against who said it", async () => {
    const asked = await post(desk, { sheets: [salona] });
    const order = async () => (await desk.store.orders.named("FM-72"))[0] as OrderRecord;
    const behind = { letter: asked.letter, recipient: greta, orders: [] };
    await answerByLink(desk, behind, await order(), [{ kind: "no", number: 1 }]);
    expect((await post(desk, { to: asked, from: omar, text: "1 YES" })).verdict).toBe("confirm");
    expect((await post(desk, { to: asked, text: "1 YES" })).verdict).toBe("pass");
  });

  test("is not answered YES on the page of a link that did not tell of it", async () => {
    const asked = await post(desk, { sheets: [salona] });
    const no = await post(desk, { to: asked, from: omar, text: "1 NO" });
    const yes = async (letter: number) => {
      const [order] = await desk.store.orders.named("FM-72");
      const behind = { letter, recipient: greta, orders: [] };
      return answerByLink(desk, behind, order as OrderRecord, [{ kind: "yes", number: 1 }]);
    };
    expect(await yes(asked.letter)).toEqual({
      done: false,
      words: "It could not be taken: point 1 was answered NO since: answer it in a reply to our last letter.",
    });
    expect((await yes(no.letter)).done).toBe(true);
    expect((await desk.store.orders.named("FM-72"))[0]?.verdict).toBe("pass");
  });

  test("is not settled by its word in another order of the project", async () => {
    const asked = await post(desk, { sheets: [salona] });
    await post(desk, { to: asked, text: "1 NO" });
    const other = await post(desk, { sheets: [{ ...salona, mark: "B-2", fill: { order: "FM-80" } }] });
    expect(await post(desk, { to: other, text: "1 YES" })).toMatchObject({
      verdict: "pass",
      orders: ["FM-80"],
    });
    expect((await post(desk, { sheets: [{ mark: "B-3", legend: ["SAUNA"] }] })).verdict).toBe("confirm");
    expect(await post(desk, { to: asked, text: "1 YES" })).toMatchObject({ verdict: "pass" });
  });
});
