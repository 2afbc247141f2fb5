import { spawnSync } from "node:child_process";

/** A network of its own, with two ways from here into it. */
export interface Network {
  /** What runs a program there: words before its own. */
  readonly through: readonly string[];
  /** Addresses there: one by the way that can be cut, and one by the way that stays. */
  readonly apart: string;
  readonly whole: string;
  /** Cuts a way, as a pulled cable does, or mends it. What is sent meanwhile is lost, and nobody is told. */
  readonly cut: (is: boolean) => void;
  readonly end: () => void;
}

function ip(...words: string[]): void {
  const { status, stderr } = spawnSync("ip", words, { encoding: "utf8" });
  if (status !== 0) throw new Error(`ip ${words.join(" ")}: ${stderr}`);
}

/** A network namespace and two pairs of virtual cables into it. Undefined where this machine lets us make none. */
export function startNetwork(): Network | undefined {
  const name = `burin-${process.pid}`;
  if (spawnSync("ip", ["netns", "add", name]).status !== 0) return undefined;
  const there = ["-n", name];
  // RFC 5737 gives 198.51.100.0/24 and 203.0.113.0/24 to examples, so no route of this machine leads there.
  const nets = ["198.51.100", "203.0.113"] as const;
  const cable = (i: number, end: string): string => `brn${process.pid}${i}${end}`;
  for (const [i, net] of nets.entries()) {
    const [near, far] = [cable(i, "a"), cable(i, "b")];
    ip("link", "add", near, "type", "veth", "peer", "name", far, "netns", name);
    ip("address", "add", `${net}.1/24`, "dev", near);
    ip("link", "set", near, "up");
    ip(...there, "address", "add", `${net}.2/24`, "dev", far);
    ip(...there, "link", "set", far, "up");
  }
  ip(...there, "link", "set", "lo", "up");
  return {
    through: ["ip", "netns", "exec", name],
    apart: `${nets[0]}.2`,
    whole: `${nets[1]}.2`,
    cut: (is) => ip(...there, "link", "set", cable(0, "b"), is ? "down" : "up"),
    // The cables go with the namespace.
    end: () => ip("netns", "delete", name),
  };
}
