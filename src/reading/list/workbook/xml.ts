import { Parser } from "saxen";

/** What is called as a document is read. Names are without their prefixes. */
export interface Hearing {
  readonly open?: (name: string, attributes: Readonly<Record<string, string>>) => void;
  readonly close?: (name: string) => void;
  readonly text?: (text: string) => void;
}

/** Reads XML. Throws for what is none, and for a document type: no part of a workbook has one (ECMA-376-2 §9.1.7). */
export function readXml(xml: string, { open, close, text }: Hearing): void {
  const fail = (cause: Error): never => {
    throw cause;
  };
  new Parser()
    .on("openTag", (name, attributes) => {
      const own = Object.entries(attributes()).map(([key, value]) => [localName(key), decoded(value)]);
      open?.(localName(name), Object.fromEntries(own) as Record<string, string>);
    })
    .on("closeTag", (name) => close?.(localName(name)))
    .on("text", (written) => text?.(decoded(written)))
    .on("cdata", (written) => text?.(written))
    .on("attention", () => fail(new Error("a document type")))
    .on("error", fail)
    .on("warn", fail)
    .parse(xml);
}

function localName(name: string): string {
  return name.slice(name.indexOf(":") + 1);
}

const entities: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" };

/** XML 1.0 §4.1 and §4.6. An entity that no document type declares is an error. */
function decoded(written: string): string {
  return written.replace(/&(?:#(\d+)|#x([\da-f]+)|([^;&\s]*));?/gi, (whole, decimal, hex, name) => {
    if (decimal !== undefined) return String.fromCodePoint(Number(decimal));
    if (hex !== undefined) return String.fromCodePoint(Number.parseInt(String(hex), 16));
    const known = entities[String(name)];
    if (known === undefined) throw new Error(`an unknown entity ${whole}`);
    return known;
  });
}

/** Whether an attribute of a yes or no says yes. ECMA-376-1 §22.9.2.7, from memory. */
export function isOn(value: string | undefined): boolean {
  return value === "1" || value === "true" || value === "on";
}
