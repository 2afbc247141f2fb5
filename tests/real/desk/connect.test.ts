import { execFile } from "node:child_process";
import { expect, test } from "vitest";
import { until } from "../rig/desk.ts";
import { desk } from "../rig/rig.ts";
import { withRig } from "../rig/with-rig.ts";
import { environment, fieldOf, type Over, setUp } from "./burin.ts";

await withRig("settings --connect", (rig) => {
  function connect(over: Over): Promise<{ code: unknown; out: string }> {
    const { file } = setUp(rig, over);
    return new Promise((resolve) => {
      const args = ["src/main.ts", "settings", "--connect", "--settings", file];
      execFile(process.execPath, args, { env: environment }, (error, out) =>
        resolve({ code: error?.code ?? 0, out }),
      );
    });
  }

  test("tells what a good mailbox can do, and sends a test message to the desk alone", async () => {
    const { code, out } = await connect({ shelves: { passed: "Desk/Passed" } });
    expect(out).toMatch(/^A test message will be sent to orders@quillgate\.example.*nobody else\.$/m);
    expect(out).toMatch(
      /^ok {4}orders: signed in as orders@quillgate\.example, \d+ letters in INBOX; new letters are told of at once \(IDLE\); keywords are kept; letters can be moved; made when first needed: Desk\/Passed\.$/m,
    );
    expect(out).toMatch(/^ok {4}witness: signed in as witness@/m);
    expect(out).toMatch(/^ok {4}sender: test message taken \(250 /m);
    expect(out).toMatch(/^ok {4}witness: the copy of the test message came into folder INBOX of witness@/m);
    expect(code).toBe(0);
    const subjects = async () => (await rig.lettersOf(desk)).map((letter) => fieldOf(letter, "Subject"));
    await until(async () => (await subjects()).includes("Test message of the order desk"));
  });

  const strange = { imaps: 0, smtps: 0 };
  test.each<[string, () => Promise<Over> | Over, RegExp[]]>([
    [
      "a wrong password",
      () => ({ server: { password_env: "HOME" } }),
      [
        /orders: localhost:\d+ refuses user orders@quillgate\.example with this password.*check user and password/,
        /sender: .*refuses user/,
      ],
    ],
    [
      "a password that is not there",
      () => ({ server: { password_env: "NO_SUCH" } }),
      [/orders: the environment has no NO_SUCH \(password\)/],
    ],
    [
      "a certificate of an unknown authority",
      () => ({ server: { authority_file: undefined } }),
      [/orders: nobody whom Node\.js knows.*authority_file/, /sender: nobody whom Node\.js knows/],
    ],
    [
      "a certificate for another name",
      async () => {
        for (const port of ["imaps", "smtps"] as const)
          strange[port] = (await rig.proxy(port, { strange: true })).port;
        return strange;
      },
      [/orders: the certificate.*is for another name/, /sender: the certificate.*is for another name/],
    ],
    [
      "a folder that is not there",
      () => ({ folder: "Ordres" }),
      [/orders: there is no folder Ordres; those there are: .*INBOX/, /sender: test message taken/],
    ],
    [
      "a witness folder into which no copy comes",
      () => ({ witnessFolder: "Sent", answers: { grace_seconds: 2 } }),
      [
        /ok {4}witness: signed in/,
        /ok {4}sender: test message taken/,
        /FAULT witness: the copy of the test message is not in folder Sent of witness@.* after 2 s; .*check witness\.address, witness\.imap and witness\.folder/,
      ],
    ],
    [
      "a port at which nothing listens",
      () => ({ imaps: 1, smtps: 1 }),
      [
        /orders: nothing listens at localhost:1; check host and port/,
        /sender: nothing listens at localhost:1/,
      ],
    ],
    [
      "a port that wants STARTTLS",
      () => ({ imaps: rig.ports.imap, smtps: rig.ports.submission }),
      [
        /orders: .*does not speak TLS from the first byte; set security: starttls/,
        /sender: .*set security: starttls/,
      ],
    ],
    [
      "a token server that refuses",
      () => ({
        server: { password_env: undefined, oauth: { token_url: rig.oauth.tokenUrl, client_id: "stranger" } },
      }),
      [
        /orders: no token for orders@.*401: invalid_client; check token_url, client_id/,
        /sender: no token for/,
      ],
    ],
    [
      "a token for another mailbox",
      () => ({
        server: {
          password_env: undefined,
          oauth: { token_url: rig.oauth.tokenUrl, client_id: "desk", client_secret_env: "DESK_SECRET" },
        },
      }),
      [/ok {4}orders: signed in/, /FAULT witness: .*refuses user witness@.* with the token/],
    ],
  ])("says what to change about %s", async (_, over, says) => {
    const { code, out } = await connect(await over());
    for (const words of says) expect(out).toMatch(words);
    expect(code).toBe(2);
  });
});
