import { expect, onTestFinished, test } from "vitest";
import { openBlobs } from "../../../src/store/blobs.ts";
import { openSqlite } from "../../../src/store/sqlite.ts";
import { openStore } from "../../../src/store/store.ts";
import { until } from "../rig/desk.ts";
import { alice, desk } from "../rig/rig.ts";
import { withRig } from "../rig/with-rig.ts";
import { answersTo, fieldOf, hasten, rowOf, setUp, startWorker } from "./burin.ts";
import { letterBytes } from "./letters.ts";

await withRig("a desk whose answers are not taken", (rig) => {
  test.each(["451 4.3.0 try later", "450 4.2.0 not yet"])(
    "sends again what was put off with %s",
    async (says) => {
      const proxy = await rig.proxy("smtps");
      // said of every recipient
      proxy.replaced.set("250 2.1.5 Ok", says);
      const setup = setUp(rig, { smtps: proxy.port });
      const worker = startWorker(setup);
      onTestFinished(() => void worker.end("SIGKILL"));
      const name = `off-${says.slice(0, 3)}`;
      await rig.deliver(alice, desk, await letterBytes(name));
      await until(() => rowOf(setup, name)?.state === "later");
      expect(await answersTo(rig, alice, `<${name}@brightwire.example>`)).toEqual([]);
      proxy.replaced.clear();
      hasten(setup);
      await until(() => rowOf(setup, name)?.state === "sent");
      await until(async () => (await answersTo(rig, alice, `<${name}@brightwire.example>`)).length === 1);
      expect(await worker.end("SIGTERM")).toBe(0);
    },
  );

  test("shows to a person what was refused with 550, and tells that person", async () => {
    const service = "service@quillgate.example";
    const setup = setUp(rig, { notice: { to: service } });
    const worker = startWorker(setup);
    onTestFinished(() => void worker.end("SIGKILL"));
    await rig.deliver(alice, desk, await letterBytes("gone", { from: "gone@fault.example" }));
    await until(() => rowOf(setup, "gone")?.state === "refused");
    await until(async () => (await rig.lettersOf(service)).length > 0);
    const [notice = ""] = await rig.lettersOf(service);
    expect(fieldOf(notice, "Subject")).toMatch(/^\d things? needs? a person$/);
    expect(fieldOf(notice, "Auto-Submitted")).toBe("auto-generated");
    expect(notice).toMatch(/its answer did not arrive[^]*gone@fault\.example/);
    expect(await worker.end("SIGTERM")).toBe(0);
    const store = await openStore(
      openSqlite(`${setup.record}/record.sqlite`),
      openBlobs(`${setup.record}/blobs`),
    );
    expect(
      (await store.people.waiting(new Date())).map(({ subject, state }) => [subject, state]),
    ).toContainEqual(["gone", "refused"]);
    await store.close();
  });
});
