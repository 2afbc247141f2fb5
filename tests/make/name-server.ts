import { spawn } from "node:child_process";
import { createSocket } from "node:dgram";
import { Resolver } from "node:dns/promises";
import { once } from "node:events";
import { setTimeout as sleep } from "node:timers/promises";

/** A name server on a loopback port that knows these texts and nothing else. */
export interface NameServer {
  /** As `address:port`. */
  readonly address: string;
  /** What it has logged of the questions so far. */
  readonly asked: () => string;
  readonly stop: () => Promise<void>;
}

/** Starts dnsmasq with text records by name; of `deaf` names there is no answer, everything else does not exist. */
export async function startNameServer(
  texts: Readonly<Record<string, string>>,
  deaf: readonly string[] = [],
): Promise<NameServer> {
  const port = await freePort();
  const child = spawn(
    "/usr/sbin/dnsmasq",
    [
      "--keep-in-foreground",
      "--conf-file=/dev/null",
      "--no-resolv",
      "--no-hosts",
      "--log-queries",
      "--log-facility=-",
      "--pid-file",
      "--user=root",
      "--listen-address=127.0.0.1",
      "--bind-interfaces",
      `--port=${port}`,
      "--local=/#/", // whatever it does not know does not exist
      ...deaf.map((name) => `--server=/${name}/127.0.0.1#9`), // nobody is there
      ...Object.entries(texts).map(([name, text]) => `--txt-record=${name},${inStrings(text)}`),
    ],
    { stdio: ["ignore", "ignore", "pipe"] },
  );
  let log = "";
  child.stderr.on("data", (chunk) => {
    log += String(chunk);
  });
  const ended = once(child, "exit");
  const [name = ""] = Object.keys(texts);
  const address = `127.0.0.1:${port}`;
  const asked = new Resolver({ timeout: 200, tries: 1 });
  asked.setServers([address]);
  for (let looks = 0; ; looks++) {
    if (await asked.resolveTxt(name).catch(() => false)) break;
    if (looks > 50) throw new Error("dnsmasq does not answer");
    await sleep(50);
  }
  return {
    address,
    asked: () => log,
    async stop() {
      child.kill("SIGKILL");
      await ended;
    },
  };
}

/** RFC 1035 §3.3: a string of a text record holds 255 characters at most. */
function inStrings(text: string): string {
  return (text.match(/.{1,250}/g) ?? []).join(",");
}

async function freePort(): Promise<number> {
  const socket = createSocket("udp4");
  socket.bind(0, "127.0.0.1");
  await once(socket, "listening");
  const { port } = socket.address();
  socket.close();
  return port;
}
