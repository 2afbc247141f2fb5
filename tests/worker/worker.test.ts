import { expect, test } from "vitest";
import type { Desk } from "../../src/intake/desk.ts";
import { releaseOrder } from "../../src/intake/release.ts";
import type { Mail, Mailbox, Mark, Shelf } from "../../src/ports/mailbox.ts";
import { PackageThere } from "../../src/store/package-folder.ts";
import { openHealth } from "../../src/telemetry/health.ts";
import { runWorker } from "../../src/worker/worker.ts";
import { keepingSender, temporaryDesk, temporaryStore } from "../make/desk.ts";
import { aloneAt, quickBytes, quickReader, takeQuick } from "../make/quick.ts";

const receivedAt = new Date("2026-11-09T15:00:00Z");

function letterBytes(n: number): Uint8Array {
  const lines = [
    "From: ines@brightwire.example",
    "To: orders@quillgate.example",
    `Message-ID: <${n}@b.example>`,
  ];
  return new TextEncoder().encode([...lines, "Subject: Stations", "", `Hello ${n}`].join("\r\n"));
}

/** A mailbox with letters of these numbers as UIDs; `gives` is asked for their bytes. */
function mailboxOf(
  uids: readonly number[],
  gives: (uid: number) => Uint8Array | undefined = letterBytes,
): Mailbox & { readonly shelves: Map<number, Shelf> } {
  const shelves = new Map<number, Shelf>();
  const mail = (uid: number): Mail => ({
    name: `INBOX 1/${uid}`,
    size: 100,
    receivedAt,
    mark: { validity: "1", uid },
    bytes: async () => gives(uid),
    shelve: async (shelf) => void shelves.set(uid, shelf),
  });
  return {
    name: "orders",
    shelves,
    async *letters({ since }: { readonly since?: Mark }) {
      for (const uid of uids) if (uid > (since?.uid ?? 0)) yield mail(uid);
    },
    close: () => Promise.resolve(),
  };
}

const run = (desk: Desk, ...mailboxes: Mailbox[]) =>
  runWorker(desk, mailboxes, { once: true, signal: new AbortController().signal });

test("every letter of every mailbox is answered, shelved, and behind the mark", async () => {
  const sender = keepingSender();
  const desk = await temporaryDesk({ sender });
  const [one, two] = [mailboxOf([1, 2]), { ...mailboxOf([3]), name: "second" }];
  expect(await run(desk, one, two)).toEqual({ taken: 3, again: 0, left: 0, aside: 0, unread: 0 });
  expect(sender.kept).toHaveLength(3);
  expect([...one.shelves]).toEqual([
    [1, "person"],
    [2, "person"],
  ]);
  expect(await desk.store.mailboxes.markOf("orders")).toEqual({ validity: "1", uid: 2 });
  expect(await run(desk, one)).toEqual({ taken: 0, again: 0, left: 0, aside: 0, unread: 0 });
});

test("a letter that the mailbox cannot give holds up no other, and is asked for again", async () => {
  const sender = keepingSender();
  const desk = await temporaryDesk({ sender });
  const failing = mailboxOf([1, 2, 3], (uid) => {
    if (uid === 2) throw new Error("the server does not give it");
    return letterBytes(uid);
  });
  expect(await run(desk, failing)).toEqual({ taken: 2, again: 0, left: 1, aside: 0, unread: 0 });
  expect(await desk.store.mailboxes.markOf("orders")).toEqual({ validity: "1", uid: 1 });
  expect(await run(desk, mailboxOf([1, 2, 3]))).toEqual({ taken: 1, again: 1, left: 0, aside: 0, unread: 0 });
  expect(sender.kept).toHaveLength(3);
});

test("a mailbox that cannot be read is counted, and keeps nobody from reading the others", async () => {
  const desk = await temporaryDesk();
  const broken: Mailbox = {
    ...mailboxOf([]),
    name: "broken",
    letters: () => ({
      [Symbol.asyncIterator]: () => ({ next: () => Promise.reject(new Error("connection refused")) }),
    }),
  };
  expect(await run(desk, broken, mailboxOf([1]))).toEqual({
    taken: 1,
    again: 0,
    left: 0,
    aside: 0,
    unread: 1,
  });
});

test("a letter that is gone is passed over", async () => {
  const desk = await temporaryDesk();
  const gone = mailboxOf([1, 2], (uid) => (uid === 1 ? undefined : letterBytes(uid)));
  expect(await run(desk, gone)).toEqual({ taken: 1, again: 0, left: 0, aside: 0, unread: 0 });
  expect(await desk.store.mailboxes.markOf("orders")).toEqual({ validity: "1", uid: 2 });
});

test("no letter is taken up while the record's disk is nearly full", async () => {
  const sender = keepingSender();
  const desk = await temporaryDesk({ sender });
  const full = { ...desk, store: { ...desk.store, room: () => Promise.resolve(1_000_000) } };
  expect(await run(full, mailboxOf([1]))).toEqual({ taken: 0, again: 0, left: 1, aside: 0, unread: 0 });
  expect(await desk.store.letters.states()).toEqual({});
  expect(await run(desk, mailboxOf([1]))).toEqual({ taken: 1, again: 0, left: 0, aside: 0, unread: 0 });
});

test("a letter that finds no room halfway is not answered, and is when there is room", async () => {
  const sender = keepingSender();
  let now = receivedAt;
  const desk = await temporaryDesk({ sender, clock: { now: () => now } });
  const settle = () =>
    Promise.reject(Object.assign(new Error("no space left on device"), { code: "ENOSPC" }));
  const mailbox = mailboxOf([1]);
  await run({ ...desk, store: { ...desk.store, letters: { ...desk.store.letters, settle } } }, mailbox);
  expect(sender.kept).toEqual([]);
  expect(await desk.store.letters.states()).toEqual({ received: 1 });
  now = new Date(now.getTime() + 61_000);
  await run(desk);
  expect(sender.kept).toHaveLength(1);
  expect(await desk.store.letters.states()).toEqual({ sent: 1 });
});

test("a failure after the answer was stored does not have the letter checked again", async () => {
  const sender = keepingSender();
  let now = receivedAt;
  const desk = await temporaryDesk({ sender, clock: { now: () => now } });
  const mark: Desk["store"]["letters"]["mark"] = (claim, state, ...rest) =>
    state === "sending"
      ? Promise.reject(new Error("disk full"))
      : desk.store.letters.mark(claim, state, ...rest);
  await run({ ...desk, store: { ...desk.store, letters: { ...desk.store.letters, mark } } }, mailboxOf([1]));
  expect(await desk.store.letters.states()).toEqual({ unknown: 1 });
  now = new Date(now.getTime() + 121_000);
  await run(desk);
  expect(sender.kept).toHaveLength(1);
});

test("a letter in another worker's hands is shelved when that one is done with it", async () => {
  const desk = await temporaryDesk();
  const mailbox = mailboxOf([1]);
  const nothing = () => Promise.resolve(undefined);
  const letters = { ...desk.store.letters, claim: nothing, claimDue: nothing };
  const stop = new AbortController();
  const working = runWorker({ ...desk, store: { ...desk.store, letters } }, [mailbox], {
    once: false,
    signal: stop.signal,
  });
  await expect.poll(() => desk.store.letters.states()).toEqual({ received: 1 });
  expect(mailbox.shelves.size).toBe(0);
  await run(desk);
  await expect.poll(() => mailbox.shelves.get(1)).toBe("person");
  stop.abort();
  await working;
});

test("while a record fails the worker goes on trying", async () => {
  const sender = keepingSender();
  const desk = await temporaryDesk({ sender });
  let failures = 0;
  const markOf: Desk["store"]["mailboxes"]["markOf"] = (mailbox) =>
    failures++ === 0 ? Promise.reject(new Error("disk I/O error")) : desk.store.mailboxes.markOf(mailbox);
  const stop = new AbortController();
  const working = runWorker(
    { ...desk, store: { ...desk.store, mailboxes: { ...desk.store.mailboxes, markOf } } },
    [mailboxOf([1])],
    {
      once: false,
      signal: stop.signal,
    },
  );
  await expect.poll(() => sender.kept.length).toBe(1);
  stop.abort();
  await working;
});

test("a letter put aside by a fault of the program's own is counted", async () => {
  const desk = await temporaryDesk();
  const letter = () => Promise.reject(new Error("out of order"));
  const broken = { ...desk, reader: { ...desk.reader, letter } };
  expect(await run(broken, mailboxOf([1]))).toEqual({ taken: 1, again: 0, left: 0, aside: 1, unread: 0 });
});

/** A letter of some company, with its number. */
function letterFrom(company: string, n: number): Uint8Array {
  const id = `${company}-${n}`;
  return quickBytes({
    id,
    from: `Ines Calloway <ines@${company}.example>`,
    dated: receivedAt,
    receivedAt,
    sheets: [aloneAt(`T-${n}`, "SALONA")],
  });
}

/** Which company's letters are being opened or answered, and how many of one and of all at most. */
function watched(desk: Desk) {
  const inHand = new Map<string, number>();
  const most = { ofOne: 0, ofAll: 0 };
  const order: string[] = [];
  const companyOf = (bytes: Uint8Array) =>
    /ines@(\w+)\.example/.exec(new TextDecoder().decode(bytes))?.[1] ?? "";
  const change = (company: string, by: number) => {
    inHand.set(company, (inHand.get(company) ?? 0) + by);
    most.ofOne = Math.max(most.ofOne, ...inHand.values());
    most.ofAll = Math.max(most.ofAll, [...inHand.values()].filter((count) => count > 0).length);
  };
  const pause = () => new Promise((resolve) => setTimeout(resolve, 5));
  const reader: Desk["reader"] = {
    ...quickReader,
    letter: async (bytes, time) => {
      change(companyOf(bytes), 1);
      order.push(/Message-ID: <([^@]*)@/.exec(new TextDecoder().decode(bytes))?.[1] ?? "");
      await pause();
      return quickReader.letter(bytes, time);
    },
  };
  const sender: Desk["sender"] = {
    ...desk.sender,
    send: async (answer) => {
      await pause();
      change(companyOf(new TextEncoder().encode(answer.recipient)), -1);
      return desk.sender.send(answer);
    },
  };
  return { desk: { ...desk, reader, sender }, most, order };
}

test("letters of several buyers are judged at once, those of one never, and in their order", async () => {
  const sender = keepingSender();
  const { desk, most, order } = watched(await temporaryDesk({ sender }));
  const companies = ["brightwire", "brightwire", "fallowmere", "brightwire", "copperdown", "fallowmere"];
  const letters = [...companies, ...companies].map((company, i) => letterFrom(company, i + 1));
  await run(
    desk,
    mailboxOf(
      letters.map((_, i) => i + 1),
      (uid) => letters[uid - 1],
    ),
  );
  expect(sender.kept).toHaveLength(letters.length);
  expect(most).toEqual({ ofOne: 1, ofAll: 2 });
  for (const company of new Set(companies)) {
    const judged = order.filter((id) => id.startsWith(company)).map((id) => Number(id.split("-")[1]));
    expect(judged).toEqual(judged.toSorted((a, b) => a - b));
  }
});

test("a worker that is told to stop finishes what is in hand and takes up no more", async () => {
  const sender = keepingSender();
  const { desk, most } = watched(await temporaryDesk({ sender }));
  const stop = new AbortController();
  const mailbox = mailboxOf([1, 2, 3, 4, 5, 6], (uid) => {
    if (uid === 3) stop.abort();
    return letterFrom(uid % 2 === 0 ? "fallowmere" : "brightwire", uid);
  });
  await runWorker(desk, [mailbox], { once: false, signal: stop.signal });
  const { sent = 0, received = 0, ...others } = await desk.store.letters.states();
  expect(others).toEqual({});
  expect(sent).toBeGreaterThan(0);
  expect(sent + received).toBeLessThanOrEqual(3);
  expect(sender.kept).toHaveLength(sent);
  expect(most.ofOne).toBe(1);
});

test("a letter that waited for another of its lane is put on its shelf, and only then is behind the mark", async () => {
  const { desk } = watched(await temporaryDesk());
  const mailbox = mailboxOf([1, 2, 3], (uid) => letterFrom("brightwire", uid));
  await run(desk, mailbox);
  expect(new Set(mailbox.shelves.keys())).toEqual(new Set([1, 2, 3]));
  expect(await desk.store.mailboxes.markOf("orders")).toEqual({ validity: "1", uid: 3 });
});

/** A worker that goes on, with what it says of its health. */
async function working(changes: Partial<Desk>, mailbox: Mailbox) {
  const desk = await temporaryDesk(changes);
  const health = openHealth(desk.clock);
  const stop = new AbortController();
  const ended = runWorker(desk, [mailbox], { once: false, signal: stop.signal, health });
  const parts = () => health.troubles().map(({ part }) => part);
  return { parts, health, desk, end: () => (stop.abort(), ended) };
}

test("a mailbox that cannot be read is trouble until it can be", async () => {
  let works = false;
  const mailbox: Mailbox = {
    ...mailboxOf([]),
    async *letters({ looked, failed, signal }) {
      yield* [];
      while (!signal.aborted) {
        if (works) looked?.();
        else failed?.("sign-in refused");
        await new Promise((resolve) => setTimeout(resolve, 10));
      }
    },
  };
  const { health, parts, end } = await working({}, mailbox);
  await expect
    .poll(() => health.troubles())
    .toEqual([{ part: "mailbox orders", why: "it cannot be read: sign-in refused" }]);
  works = true;
  await expect.poll(parts).toEqual([]);
  await end();
});

test("a full disk is trouble until there is room", async () => {
  const store = await temporaryStore();
  let room = 1_000_000;
  const full = { ...store, room: () => Promise.resolve(room) };
  const { parts, end } = await working({ store: full }, mailboxOf([1]));
  await expect.poll(parts).toContain("the record's disk");
  room = 1e12;
  await expect.poll(parts).not.toContain("the record's disk");
  await end();
});

test("a sender whose sign-in fails is tried before there is anything to send", async () => {
  let tried = 0;
  const tryOut = () => {
    tried++;
    return Promise.reject(new Error("sign-in refused"));
  };
  const { end } = await working({ sender: { ...keepingSender(), tryOut } }, mailboxOf([]));
  await expect.poll(() => tried).toBe(1);
  await end();
});

/** A desk with one letter of November, and a clock that can be set. */
async function oldDesk(at: string): Promise<Desk> {
  const clock = { now: receivedAt };
  const made = await temporaryDesk({ reader: quickReader, clock: { now: () => clock.now } });
  const desk = { ...made, rules: { ...made.rules, erasing: { afterDays: 30 } } };
  await takeQuick(desk, { id: "a", dated: receivedAt, receivedAt, sheets: [aloneAt("T-9", "SALONA")] });
  clock.now = new Date(at);
  return desk;
}

const isErased = async ({ store }: Desk): Promise<boolean> => (await store.letters.read(1)).isErased === true;

test("what is older than the settings say is erased at night, and by a run that ends whenever it comes", async () => {
  // In Chicago it is 03:00, and 15:00.
  const [night, noon] = [await oldDesk("2026-12-20T09:00:00Z"), await oldDesk("2026-12-20T21:00:00Z")];
  const stop = new AbortController();
  const workers = [night, noon].map((desk) => runWorker(desk, [], { once: false, signal: stop.signal }));
  await expect.poll(() => isErased(night), { timeout: 20_000 }).toBe(true);
  await new Promise((resolve) => setTimeout(resolve, 1_000));
  expect(await isErased(noon)).toBe(false);
  stop.abort();
  await Promise.all(workers);
  await run(noon);
  expect(await isErased(noon)).toBe(true);
}, 40_000);

test("what an erasing has left undone the worker does", async () => {
  const desk = await oldDesk("2026-11-10T21:00:00Z");
  const whom = { address: "ines@brightwire.example", givesUp: true };
  await desk.store.erasures.erase(whom, { name: "Rosa Imhoff", why: "asked" }, receivedAt);
  await run(desk);
  expect(await desk.store.erasures.finish(() => Promise.resolve(true))).toEqual({
    bytes: 0,
    packages: [],
    notFound: [],
    isFree: true,
  });
});

test("a package that a death has kept its writer of is written at the next start, once, and not while it changes", async () => {
  const made = await temporaryDesk();
  let now = receivedAt;
  const written: string[] = [];
  const packages = (name: string): Promise<string> => {
    written.push(name);
    return Promise.resolve(name);
  };
  const desk: Desk = {
    ...made,
    reader: quickReader,
    clock: { now: () => now },
    rules: { ...made.rules, packages },
  };
  await takeQuick(desk, { id: "a", dated: now, receivedAt: now, sheets: [aloneAt("T-9", "POOL")] });
  const dies = () => Promise.reject(new Error("the power is gone"));
  await expect(releaseOrder(desk, "BW-2207", "Rosa Imhoff", dies)).rejects.toThrow("power");
  // Its writer may be at it still.
  await run(desk);
  expect(written).toEqual([]);
  now = new Date(now.getTime() + 61_000);
  const [order] = await desk.store.orders.named("BW-2207");
  await takeQuick(desk, { id: "b", dated: now, receivedAt: now, sheets: [aloneAt("T-9", "SPA")] });
  await run(desk);
  expect(written).toEqual([]);
  await takeQuick(desk, { id: "c", dated: now, receivedAt: now, sheets: [aloneAt("T-9", "POOL")] });
  await run(desk);
  const [as] = await desk.store.orders.named("BW-2207");
  expect(as?.released).toEqual(order?.released);
  expect(written).toEqual([`BW-2207 revision ${order?.released?.revision}`]);
  await run(desk);
  expect(written).toHaveLength(1);
});

test("a package that was written before the death is left as it is", async () => {
  const made = await temporaryDesk();
  let now = receivedAt;
  const tries: string[] = [];
  const packages = (name: string): Promise<string> => {
    tries.push(name);
    return Promise.reject(new PackageThere(`${name} is there already`));
  };
  const desk: Desk = {
    ...made,
    reader: quickReader,
    clock: { now: () => now },
    rules: { ...made.rules, packages },
  };
  await takeQuick(desk, { id: "a", dated: now, receivedAt: now, sheets: [aloneAt("T-9", "POOL")] });
  const orders = { ...desk.store.orders, packed: () => Promise.reject(new Error("the power is gone")) };
  const dying = { ...desk, store: { ...desk.store, orders } };
  await expect(
    releaseOrder(dying, "BW-2207", "Rosa Imhoff", () => Promise.resolve("here")),
  ).rejects.toThrow();
  now = new Date(now.getTime() + 61_000);
  await run(desk);
  await run(desk);
  expect(tries).toHaveLength(1);
});
