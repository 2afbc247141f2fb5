import { simpleParser } from "mailparser";
import { expect, test } from "vitest";
import { settleOrder } from "../../src/intake/settle.ts";
import { takeDue } from "../../src/intake/take.ts";
import type { PackageFile } from "../../src/release/release.ts";
import { keepingSender, temporaryDesk } from "../make/desk.ts";
import { pagedDesk } from "../make/desk-page.ts";
import { post } from "../make/thread.ts";

const unknownWord = { mark: "P-1", legend: ["SALONA"], fill: { order: "FM-80" } } as const;
const right = { ...unknownWord, legend: ["POOL"] } as const;

test("a point is settled in the name of whoever is signed in, and its sender is answered", async () => {
  const { desk, as } = await pagedDesk();
  await post(desk, { sheets: [unknownWord] });
  const own = await as("act");
  const response = await own.post("/orders/FM-80/points", { number: "1", act: "yes", why: "Greta said so" });
  expect(response.status).toBe(200);
  expect(await response.text()).toContain("Order FM-80: pass. The worker sends the answer.");
  const [order] = await desk.store.orders.named("FM-80");
  expect(order?.verdict).toBe("pass");
  const [confirmed] = await desk.store.orders.confirmed("greta@fallowmere.example", "FM-80");
  expect(confirmed).toMatchObject({ by: "Rosa act", why: "Greta said so" });
});

test("what cannot be done is said, and nothing changes", async () => {
  const { desk, as } = await pagedDesk();
  await post(desk, { sheets: [unknownWord] });
  const own = await as("release");
  for (const [path, fields, says] of [
    ["/orders/FM-80/points", { number: "9", act: "yes", why: "x" }, "has no open point 9"],
    ["/orders/FM-80/points", { number: "1", act: "waive", why: "x" }, "is a question"],
    ["/orders/FM-80/release", {}, "name no folder"],
    ["/orders/FM-80/cut", {}, "Nothing is recorded"],
    ["/orders/FM-80/place", { sheet: "7/7", mark: "P-2", why: "x" }, "No sheet 7/7 stands"],
    ["/letters/1/let-in", { why: "x" }, "there is nothing to let in"],
  ] as const) {
    const response = await own.post(path, fields);
    expect([path, response.status >= 400]).toEqual([path, true]);
    expect(await response.text(), path).toContain(says);
  }
  expect((await desk.store.orders.named("FM-80"))[0]).toMatchObject({ verdict: "confirm", revision: 1 });
});

test("words for the sender go out above how the order stands", async () => {
  const { desk, as } = await pagedDesk();
  await post(desk, { sheets: [unknownWord] });
  const own = await as("act");
  await own.post("/orders/FM-80/write", { words: "We try to reach you on the telephone." });
  const answer = await desk.store.answers.of(2);
  const { text = "" } = await simpleParser(Buffer.from(answer?.bytes ?? []));
  expect(answer?.recipient).toBe("greta@fallowmere.example");
  expect(text.replaceAll(/\s+/g, " ")).toContain("Rosa act writes: “We try to reach you on the telephone.”");
  expect(text).toContain("SALONA");
});

/** The hidden fields of the form of a page that leads there. */
async function formOn(response: Promise<Response>, action: string): Promise<Record<string, string>> {
  const [, form = ""] = (await (await response).text()).split(`action="${action}"`);
  const fields = (form.split("</form>")[0] ?? "").matchAll(/type="hidden" name="(\w+)" value="([^"]*)"/g);
  return Object.fromEntries([...fields].map(([, name = "", value = ""]) => [name, value]));
}

test("a form that is sent twice is one act, and other words in it are another", async () => {
  const { desk, as } = await pagedDesk();
  await post(desk, { sheets: [unknownWord] });
  const own = await as("act");
  const page = own.get("/orders/FM-80");
  const form = await formOn(page, "/orders/FM-80/write");
  const write = async (words: string) => (await own.post("/orders/FM-80/write", { ...form, words })).text();
  expect(await write("We try to reach you.")).toContain("Order FM-80: confirm. The worker sends the answer.");
  expect(await write("We try to reach you.")).toContain("That is done already. Order FM-80: confirm.");
  expect(await write("We have reached you.")).toContain("Order FM-80: confirm. The worker sends the answer.");
  const point = await formOn(own.get("/orders/FM-80"), "/orders/FM-80/points");
  const yes = async () =>
    (await own.post("/orders/FM-80/points", { ...point, act: "yes", why: "Greta said so" })).text();
  expect(await yes()).toContain("Order FM-80: pass. The worker sends the answer.");
  expect(await yes()).toContain("That is done already. Order FM-80: pass.");
  expect((await desk.store.orders.named("FM-80"))[0]?.revision).toBe(4);
});

test("an order that has changed since its page was opened is neither released nor engraved from there", async () => {
  const { desk, as } = await pagedDesk({ put: (name) => Promise.resolve(`out/${name}`) });
  await post(desk, { sheets: [right] });
  const own = await as("release");
  const stale = await formOn(own.get("/orders/FM-80"), "/orders/FM-80/release");
  await post(desk, { sheets: [{ ...right, mark: "P-2" }] });
  const says = "order FM-80 has changed since this page was opened";
  const refused = await own.post("/orders/FM-80/release", stale);
  expect([refused.status, (await refused.text()).includes(says)]).toEqual([409, true]);
  const now = await formOn(own.get("/orders/FM-80"), "/orders/FM-80/release");
  expect(await (await own.post("/orders/FM-80/release", now)).text()).toContain("Released: out/FM-80");
  const cut = await formOn(own.get("/orders/FM-80"), "/orders/FM-80/cut");
  await post(desk, { sheets: [{ ...right, mark: "P-3" }] });
  expect(await (await own.post("/orders/FM-80/cut", cut)).text()).toContain(says);
  const [order] = await desk.store.orders.named("FM-80");
  expect(order?.released?.pieces.map(({ engraved }) => engraved)).toEqual([false, false]);
});

test("a NO of the sender stands beside its point, and no YES counts from a page that is older", async () => {
  const { desk, as } = await pagedDesk();
  const asked = await post(desk, { sheets: [unknownWord] });
  const own = await as("act");
  const stale = await formOn(own.get("/orders/FM-80"), "/orders/FM-80/points");
  const { letter } = await post(desk, { to: asked, text: "1 NO" });
  const yes = async (form: Record<string, string>) =>
    (await own.post("/orders/FM-80/points", { ...form, act: "yes", why: "it is a name" })).text();
  expect(await yes(stale)).toContain(`letter ${letter} has answered 1 with NO since this page was opened`);
  const page = await (await own.get("/orders/FM-80")).text();
  expect(page).toContain(`Answered with NO in <a href="/letters/${letter}">letter ${letter}</a>.`);
  // The list of people does not say who has answered with NO.
  expect(await yes({ number: "1", buyer: "", no: "" })).toContain(
    `letter ${letter} has answered 1 with NO; see the order here before you decide.`,
  );
  expect(await yes(await formOn(own.get("/orders/FM-80"), "/orders/FM-80/points"))).toContain("FM-80: pass.");
});

test("what came without a number is put aside on the list of people", async () => {
  const { desk, as } = await pagedDesk();
  const sheets = [{ ...right, fill: { order: "" } }];
  const { letter } = await post(desk, { sheets, text: "Make it blue if you can." });
  const own = await as("act");
  const form = await formOn(own.get("/people"), `/letters/${letter}/aside`);
  await own.post(`/letters/${letter}/aside`, { ...form, why: "called" });
  expect(await (await own.get("/people")).text()).toContain("Nothing waits for a person.");
});

test("the list of people says how many wait, and each is on one of its pages", async () => {
  const { desk, as } = await pagedDesk();
  for (let n = 1; n <= 32; n++)
    await post(desk, {
      from: `ada@vale-${n}.example`,
      subject: `Question ${n}.`,
      text: "Do you engrave brass?",
    });
  const own = await as("see");
  const text = async (path: string) => (await own.get(path)).text();
  const subjects = (page: string) => [...page.matchAll(/“(Question \d+)\.”/g)].map(([, one]) => one);
  const first = await text("/people");
  expect(first).toContain("1 to 30 of 32 that wait.");
  expect(subjects(first)).toHaveLength(30);
  const [, next = ""] = /<a href="([^"]+)">The next 2<\/a>/.exec(first) ?? [];
  const second = await text(next);
  expect(second).toContain("31 to 32 of 32 that wait.");
  expect(subjects(second)).toEqual(["Question 31", "Question 32"]);
  expect(second).toContain('<a href="/people?from=0">The 30 before</a>');
  // Whatever else is asked for is the first page.
  for (const from of ["-1", "x", "32", "9999999"])
    expect(subjects(await text(`/people?from=${from}`))).toEqual(subjects(first));
});

test("a letter's page offers what can be done with it, and nothing else", async () => {
  const { desk, as } = await pagedDesk();
  const { letter } = await post(desk, { sheets: [unknownWord] });
  const held = await post(desk, { from: "", text: "Hello." });
  const own = await as("act");
  const order = { buyer: "greta@fallowmere.example", number: "FM-80" };
  const by = { name: "Rosa", why: "x" };
  await settleOrder(desk, order, [{ kind: "write", words: "Good morning." }], by);
  await settleOrder(desk, order, [{ kind: "release", on: "2026-11-09" }], by);
  const { letter: next } = await desk.store.letters.receive("next", new Uint8Array(), new Date(0), "");
  const offers = async (number: number) => {
    const page = await (await own.get(`/letters/${number}`)).text();
    return ["let-in", "aside"].filter((what) => page.includes(`action="/letters/${number}/${what}"`));
  };
  const [note, wrong] = [held.letter + 1, held.letter + 2];
  expect(await offers(letter)).toEqual(["aside"]);
  expect(await offers(held.letter)).toEqual(["let-in", "aside"]);
  expect([await offers(note), await offers(wrong), await offers(next)]).toEqual([[], ["aside"], []]);
  const people = await (await own.get("/people")).text();
  expect(people).toContain("Order FM-80, what one of us did could not be taken");
  expect(people).not.toContain(`action="/letters/${wrong}/let-in"`);
});

test("an answer is sent again as it is, and the record says at whose wish", async () => {
  const sender = keepingSender();
  const { desk, as } = await pagedDesk({ desk: await temporaryDesk({ sender }) });
  const { letter } = await post(desk, { sheets: [unknownWord] });
  while (await takeDue(desk));
  expect(sender.kept).toHaveLength(1);
  const own = await as("act");
  expect((await own.post(`/letters/${letter}/again`, { why: "it went astray" })).status).toBe(200);
  while (await takeDue(desk));
  expect(sender.kept).toHaveLength(2);
  expect(sender.kept[1]?.bytes).toEqual(sender.kept[0]?.bytes);
  const history = await desk.store.letters.history(letter);
  expect(history).toContainEqual(
    expect.objectContaining({ actor: "Rosa act", what: "sent again", words: "it went astray" }),
  );
  expect((await desk.store.letters.read(letter)).state).toBe("sent");
});

test("an answer is not sent again once its order has changed, and the letter that changed it is named", async () => {
  const sender = keepingSender();
  const { desk, as } = await pagedDesk({ desk: await temporaryDesk({ sender }) });
  const passed = await post(desk, { sheets: [right] });
  const { letter } = await post(desk, { sheets: [{ ...right, legend: ["SALONA"] }] });
  while (await takeDue(desk));
  const own = await as("act");
  const again = (one: number) => own.post(`/letters/${one}/again`, { why: "it went astray" });
  const refused = await again(passed.letter);
  expect([refused.status, await refused.text()]).toEqual([
    409,
    expect.stringContaining(
      `It is not sent again: order FM-80 has changed since, by letter ${letter}. Send the answer to that one`,
    ),
  ]);
  expect((await again(letter)).status).toBe(200);
  while (await takeDue(desk));
  expect(sender.kept).toHaveLength(3);
  expect(sender.kept[2]?.bytes).toEqual(sender.kept[1]?.bytes);
});

test("an order is released and cut in the name of whoever is signed in", async () => {
  const packed: string[] = [];
  const put = (name: string, files: readonly PackageFile[]): Promise<string> => {
    packed.push(`${name}: ${files.length > 5}`);
    return Promise.resolve(`out/${name}`);
  };
  const { desk, as } = await pagedDesk({ put });
  await post(desk, { sheets: [right] });
  const own = await as("release");
  expect(await (await own.post("/orders/FM-80/release", {})).text()).toContain(
    "Released: out/FM-80 revision 2",
  );
  expect(packed).toEqual(["FM-80 revision 2: true"]);
  const page = await (await own.post("/orders/FM-80/cut", { stations: "P-1" })).text();
  expect(page).toContain("Order FM-80 is engraved: 1 of 1 pieces.");
  expect((await desk.store.orders.named("FM-80"))[0]?.released).toMatchObject({ by: "Rosa release" });
});

test("a search finds an order by each thing that people know of it, and by nothing else", async () => {
  const { desk, as } = await pagedDesk();
  await post(desk, {
    sheets: [
      { ...right, mark: "S-104", legend: ["LOBBY"], fill: { order: "FM-80", project: "Larkspur Library" } },
    ],
  });
  await post(desk, { sheets: [{ ...right, fill: { order: "FM-81", project: "Quarry Street School" } }] });
  const own = await as("see");
  const [{ contact } = { contact: {} }] = (await desk.store.orders.named("FM-80"))[0]?.sheets ?? [];
  const phone = "phone" in contact ? String(contact.phone) : "";
  expect(phone).not.toBe("");
  const found = async (search: string): Promise<string[]> => {
    const page = await (await own.get(`/orders?search=${encodeURIComponent(search)}`)).text();
    return [...page.matchAll(/<a href="\/orders\/([^"]+)">/g)].map(([, number = ""]) => number);
  };
  for (const search of ["fm80", "FM-80", "larkspur", "lark libr", "s-104", "lobby", "LARKSPUR LOBBY"])
    expect([search, await found(search)]).toEqual([search, ["FM-80"]]);
  for (const search of [phone, phone.replaceAll("-", " "), "greta", "greta@fallowmere.example"])
    expect([search, await found(search)]).toEqual([search, ["FM-81", "FM-80"]]);
  for (const search of ["ark", "FM-8O", "larkspur school"])
    expect([search, await found(search)]).toEqual([search, []]);
});

test("an administrator erases a person once the address is typed twice, and nobody else may", async () => {
  const { desk, as } = await pagedDesk();
  await post(desk, { sheets: [unknownWord] });
  const address = "greta@fallowmere.example";
  const fields = { address, confirm: address, why: "asked for by letter" };
  const other = await as("release");
  expect((await other.get(`/erase?address=${address}`)).status).toBe(403);
  expect((await other.post("/erase", { ...fields, "gives-up": "yes" })).status).toBe(403);
  expect(await (await other.get("/orders/FM-80")).text()).not.toContain("/erase");
  const own = await as("administer");
  expect(await (await own.get("/orders/FM-80")).text()).toContain(
    `href="/erase?address=${encodeURIComponent(address)}"`,
  );
  expect(await (await own.get(`/erase?address=${address}`)).text()).toContain(
    "order FM-80: it is not done with",
  );
  for (const [changed, says, code] of [
    [{ confirm: "greta@fallowmere.exampel" }, "is another", 400],
    [{ why: "" }, "Say why", 400],
    [{ why: `${address} asked` }, "name nobody in it", 400],
    [{}, "something is in the way", 409],
  ] as const) {
    const response = await own.post("/erase", { ...fields, ...changed });
    expect([says, response.status]).toEqual([says, code]);
    expect(await response.text()).toContain(says);
  }
  expect((await desk.store.orders.named("FM-80")).length).toBe(1);
  const erased = await own.post("/erase", { ...fields, "gives-up": "yes" });
  expect(await erased.text()).toContain("Erased: 1 letter, 1 order. They are counted as erased-1.");
  expect((await own.get("/orders/FM-80")).status).toBe(404);
  const letter = await (await own.get("/letters/1")).text();
  expect(letter).toContain("What it said is erased. It had 1 sheets.");
  expect(letter).toContain('href="/checks/spelling"');
  for (const path of ["/letters/1", "/letters", "/orders", "/orders?search=pool", "/people", "/day", "/"])
    expect([path, /greta|FM-80/.exec(await (await own.get(path)).text())]).toEqual([path, null]);
  for (const path of ["/letters/1/original", "/letters/1/answer", "/files/1/1"])
    expect([path, (await own.get(path)).status]).toEqual([path, 404]);
});
