import { readFileSync } from "node:fs";
import { connect, createServer, type Socket } from "node:net";
import { setTimeout as sleep } from "node:timers/promises";
import { connect as connectTls, createSecureContext, TLSSocket } from "node:tls";

/** Something that goes wrong on the way, the moment one side has said something. */
export interface Fault {
  readonly from: "client" | "server";
  /** Looked for in what that side has said on this connection (its last few kilobytes). */
  readonly at: RegExp;
  /**
   * `drop` ends both sides; `reset` ends them with a reset; `halve` lets half of these bytes through and ends
   * both sides; `stall` keeps the connection open and lets nothing through any more; a number delays the
   * bytes by so many milliseconds.
   */
  readonly does: "drop" | "reset" | "halve" | "stall" | number;
  /** The bytes that matched still get through. */
  readonly after?: boolean;
  /** How often it happens; once, if absent. */
  times?: number;
  /** Asked each time that it could happen; always, if absent. */
  readonly happens?: () => boolean;
}

export interface Proxy {
  readonly port: number;
  /** What goes wrong from now on; empties as it happens. */
  readonly faults: Fault[];
  /** Words replaced in what the server says, to make it say less than it can do. */
  readonly replaced: Map<string, string>;
  readonly stop: () => Promise<void>;
}

/**
 * A proxy before a TLS port that sees the plain words, since it speaks TLS to both sides with the certificate
 * given: `certificate` and `key` are files.
 */
export async function startProxy(options: {
  readonly to: number;
  readonly certificate: string;
  readonly key: string;
}): Promise<Proxy> {
  const faults: Fault[] = [];
  const replaced = new Map<string, string>();
  const secureContext = createSecureContext({
    cert: readFileSync(options.certificate),
    key: readFileSync(options.key),
  });
  const open = new Set<Socket>();
  const server = createServer((raw) => {
    const rawOut = connect(options.to, "127.0.0.1");
    const client = new TLSSocket(raw, { isServer: true, secureContext });
    // the rig's own server, on loopback: whose certificate it shows is not what is tested here
    const out = connectTls({ socket: rawOut, rejectUnauthorized: false });
    const end = (): void => {
      for (const socket of [client, out, raw, rawOut]) {
        socket.destroy();
        open.delete(socket);
      }
    };
    for (const socket of [client, out, raw, rawOut]) {
      open.add(socket);
      socket.on("error", end);
      socket.on("close", end);
    }
    const reset = (): void => {
      raw.resetAndDestroy();
      rawOut.resetAndDestroy();
    };
    const way = { faults, replaced, end, reset, stalled: false };
    client.on("data", pass("client", out, way));
    out.on("data", pass("server", client, way));
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const address = server.address();
  if (address === null || typeof address === "string") throw new Error("the proxy has no port");
  return {
    port: address.port,
    faults,
    replaced,
    stop: async () => {
      for (const socket of open) socket.destroy();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}

interface Way {
  readonly faults: Fault[];
  readonly replaced: ReadonlyMap<string, string>;
  readonly end: () => void;
  readonly reset: () => void;
  /** Nothing gets through in either direction any more. */
  stalled: boolean;
}

/** Hands on what one side says, as far as the faults let it. */
function pass(from: Fault["from"], to: TLSSocket, way: Way): (bytes: Buffer) => void {
  let said = "";
  let before: Promise<unknown> = Promise.resolve();
  return (bytes) => {
    if (way.stalled) return;
    const heard = said + bytes.toString("latin1");
    const fault = take(way.faults, from, heard);
    const does = fault?.does ?? 0;
    said = fault === undefined ? heard.slice(-8192) : "";
    if (typeof does === "number") {
      before = before.then(async () => {
        if (does > 0) await sleep(does);
        return to.write(from === "server" ? reworded(bytes, way.replaced) : bytes);
      });
      return;
    }
    way.stalled = true;
    const through = does === "halve" ? bytes.length / 2 : fault?.after === true ? bytes.length : 0;
    to.write(bytes.subarray(0, through), () => {
      if (does === "reset") way.reset();
      else if (does !== "stall") way.end();
    });
  };
}

/** The fault that what was said calls for, used up by this. */
function take(faults: Fault[], from: Fault["from"], said: string): Fault | undefined {
  const fault = faults.find((each) => each.from === from && each.at.test(said) && each.happens?.() !== false);
  if (fault === undefined) return undefined;
  fault.times = (fault.times ?? 1) - 1;
  if (fault.times <= 0) faults.splice(faults.indexOf(fault), 1);
  return fault;
}

function reworded(bytes: Buffer, replaced: ReadonlyMap<string, string>): Buffer {
  if (replaced.size === 0) return bytes;
  let text = bytes.toString("latin1");
  for (const [word, other] of replaced) text = text.replaceAll(word, other);
  return Buffer.from(text, "latin1");
}
