import { writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { performance } from "node:perf_hooks";
import { afterAll, expect, test } from "vitest";
import { hasProgram, run } from "../../make/program.ts";
import { asPerson, until } from "../rig/desk.ts";
import { alice, desk } from "../rig/rig.ts";
import { withRig } from "../rig/with-rig.ts";
import { answersTo, fieldOf, rowOf, rowsOf, setUp, startWorker, witness } from "./burin.ts";
import { filledSheet, letterBytes } from "./letters.ts";

await withRig("a desk at work on a real mailbox", (rig) => {
  const setup = setUp(rig, { shelves: { person: "Desk/Person" } });
  const workers = [startWorker(setup)];
  afterAll(() => Promise.all(workers.map((worker) => worker.end("SIGKILL"))));
  const idOf = (name: string): string => `<${name}@brightwire.example>`;
  const answered = (name: string) => until(async () => (await answersTo(rig, alice, idOf(name))).length > 0);

  test.skipIf(!hasProgram("swaks"))(
    "answers a letter with a sheet that another program sent, in its thread",
    async () => {
      const path = join(dirname(setup.file), "S-104 pos 1.pdf");
      writeFileSync(path, await filledSheet("BW-2207"));
      const options = {
        server: `127.0.0.1:${rig.ports.smtp}`,
        from: alice,
        to: desk,
        "h-Subject": "Stations",
        "h-Message-Id": idOf("swaks"),
        "h-References": "<first@brightwire.example>",
        body: "Please find our sheet.",
        "attach-type": "application/pdf",
        "attach-name": "S-104 pos 1.pdf",
        attach: `@${path}`,
      };
      run("swaks", ...Object.entries(options).flatMap(([name, value]) => [`--${name}`, value]));
      await answered("swaks");
      const [answer = ""] = await answersTo(rig, alice, idOf("swaks"));
      expect(fieldOf(answer, "References")).toBe(`<first@brightwire.example> ${idOf("swaks")}`);
      expect(fieldOf(answer, "Auto-Submitted")).toBe("auto-replied");
      expect(fieldOf(answer, "To")).toContain(alice);
      expect(fieldOf(answer, "Return-Path")).toBe("<bounces@quillgate.example>");
      expect(fieldOf(answer, "Subject")).toContain("order BW-2207");
      // the witness copy carries the same Message-ID
      const id = fieldOf(answer, "Message-ID");
      const copies = async () => (await rig.lettersOf(witness)).map((copy) => fieldOf(copy, "Message-ID"));
      await until(async () => (await copies()).includes(id));
    },
  );

  test("answers every letter, says how fast, and shelves what it has handled", async () => {
    const times: number[] = [];
    for (let n = 1; n <= 25; n++) {
      const bytes = await letterBytes(`timed-${n}`, { sheet: await filledSheet(`BW-${3000 + n}`) });
      await rig.deliver(alice, desk, bytes);
      const start = performance.now();
      await answered(`timed-${n}`);
      times.push(performance.now() - start);
    }
    const sorted = times.toSorted((a, b) => a - b);
    const at = (share: number) => Math.round(sorted[Math.ceil(sorted.length * share) - 1] ?? 0);
    console.log(`delivery to answer, 25 letters: median ${at(0.5)} ms, p95 ${at(0.95)} ms`);
    await rig.deliver(alice, desk, await letterBytes("no-sheet"));
    await answered("no-sheet");
    const flags = (folder: string) =>
      asPerson(rig, desk, async (client) => {
        const { exists } = await client.mailboxOpen(folder);
        return exists === 0 ? [] : client.fetchAll("1:*", { flags: true, envelope: true });
      });
    await until(async () => (await flags("INBOX")).every(({ flags: set }) => set?.has("BurinWaiting")));
    await until(async () =>
      (await flags("Desk/Person")).some(
        (row) => row.envelope?.subject === "no-sheet" && row.flags?.has("BurinPerson"),
      ),
    );
  });

  test("answers a letter once that is delivered twice", async () => {
    const bytes = await letterBytes("twice");
    await rig.deliver(alice, desk, bytes);
    await rig.deliver(alice, desk, bytes);
    await rig.deliver(alice, desk, await letterBytes("after-twice"));
    await answered("after-twice");
    expect(await answersTo(rig, alice, idOf("twice"))).toHaveLength(1);
    expect(rowsOf(setup).filter(({ subject }) => subject === "twice")).toHaveLength(1);
  });

  test("answers each letter once beside a second worker, and when the server dies in between", async () => {
    workers.push(startWorker(setup));
    const names = Array.from({ length: 12 }, (_, n) => `beside-${n}`);
    for (const [n, name] of names.entries()) {
      await rig.deliver(alice, desk, await letterBytes(name));
      if (n === 6) {
        await rig.kill9Imap();
        await rig.startImap();
      }
    }
    await Promise.all(names.map((name) => answered(name)));
    await until(() => rowsOf(setup).every(({ state }) => state === "sent"));
    for (const name of names) expect(await answersTo(rig, alice, idOf(name)), name).toHaveLength(1);
  });

  test("finishes the letter in hand when it is told to stop, and takes no other", async () => {
    const names = Array.from({ length: 8 }, (_, n) => `drained-${n}`);
    for (const name of names) await rig.deliver(alice, desk, await letterBytes(name));
    await until(() => rowOf(setup, "drained-0") !== undefined);
    expect(await Promise.all(workers.splice(0).map((worker) => worker.end("SIGTERM")))).toEqual([0, 0]);
    // What was received and not begun waits for the next.
    expect(rowsOf(setup).filter(({ state }) => state !== "sent" && state !== "received")).toEqual([]);
    workers.push(startWorker(setup));
    await Promise.all(names.map((name) => answered(name)));
    for (const name of names) expect(await answersTo(rig, alice, idOf(name)), name).toHaveLength(1);
  });
});
