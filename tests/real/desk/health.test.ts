import { afterEach, test } from "vitest";
import { until } from "../rig/desk.ts";
import { withRig } from "../rig/with-rig.ts";
import { setUp, startWorker, type Worker } from "./burin.ts";

await withRig("/healthz", (rig) => {
  let worker: Worker | undefined;
  afterEach(async () => void (await worker?.end("SIGKILL")));

  const port = rig.ports.imaps - 1000;
  /** Its status and text; undefined while nobody listens. */
  const healthz = async (): Promise<string | undefined> =>
    fetch(`http://127.0.0.1:${port}/healthz`)
      .then(async (response) => `${response.status} ${await response.text()}`)
      .catch(() => undefined);
  const becomes = async (form: RegExp): Promise<void> =>
    until(async () => form.test((await healthz()) ?? ""), 60_000);

  test("is red while the mailbox's server is away, says so, and is green again by itself", async () => {
    worker = startWorker(setUp(rig, { statusPort: port }));
    // in the middle of a sign-in a server that dies is noticed only after a while
    const parts = async (): Promise<string> => (await fetch(`http://127.0.0.1:${port}/metrics`)).text();
    await becomes(/^200 ok/);
    await until(async () => (await parts()).includes('burin_healthy{part="mailbox orders"} 1'));
    await rig.kill9Imap();
    await becomes(/^503 mailbox orders: it cannot be read: /);
    await rig.startImap();
    await becomes(/^200 ok/);
  });

  test("is red while sign-in is refused, at the mailbox and at the sender", async () => {
    worker = startWorker(setUp(rig, { statusPort: port, server: { password_env: "HOME" } }));
    await becomes(/^503 (?=[^]*mailbox orders: it cannot be read: )(?=[^]*sender: )/);
  });
});
