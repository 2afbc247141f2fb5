import { type Document, isMap, isNode, LineCounter, parseDocument } from "yaml";
import { z } from "zod";

/** One thing wrong in a written file, where a person finds it. Lines and columns count from 1. */
export interface Fault {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  /** Keys down to the faulty value, joined with dots; "" for the whole file. */
  readonly path: string;
  readonly what: string;
}

export type Written<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/**
 * YAML text of `file` → the value that `schema` describes, or every fault in it at once. Aliases are
 * bounded by the YAML library; nothing in the text is executed.
 */
export function readYaml<S extends z.ZodType>(text: string, file: string, schema: S): Written<z.output<S>> {
  const { document, at, faultAt } = open(text, file);
  const slips = document.errors.map((error) => at(error.pos[0], [], firstLine(error.message)));
  // A key that stands twice leaves the rest as it is. After any other slip the rest may be misread.
  if (document.errors.some(({ code }) => code !== "DUPLICATE_KEY")) return { ok: false, faults: slips };
  const { value, why } = valueOf(document);
  if (why !== undefined) return { ok: false, faults: [...slips, at(0, [], why)] };
  const read = schema.safeParse(value);
  if (read.success) return slips.length === 0 ? { ok: true, value: read.data } : { ok: false, faults: slips };
  const faults = read.error.issues.flatMap((issue) =>
    issue.code === "unrecognized_keys"
      ? issue.keys.map((key) => faultAt([...issue.path, key], "unknown key"))
      : [faultAt(issue.path, issue.message)],
  );
  return { ok: false, faults: inOrder([...slips, ...faults]) };
}

/** As much of a faulty text as `schema` asks for; undefined if it does not even say that. */
export function readInSpiteOfFaults<S extends z.ZodType>(text: string, schema: S): z.output<S> | undefined {
  return schema.safeParse(valueOf(parseDocument(text)).value).data;
}

/**
 * Applies a rule between keys wherever those keys are as `needs` says, so that a fault in another key hides nothing
 * of it.
 */
export function wherever(needs: z.ZodRawShape): { when: (payload: { value: unknown }) => boolean } {
  const schema = z.looseObject(needs);
  return { when: ({ value }) => schema.safeParse(value).success };
}

/** The value of a document, or why it has none, such as an alias of something that is missing. */
function valueOf(document: Document): { readonly value?: unknown; readonly why?: string } {
  try {
    return { value: document.toJS() };
  } catch (cause) {
    return { why: cause instanceof Error ? firstLine(cause.message) : String(cause) };
  }
}

/** A fault at a path of a text that could be read. Nothing in the file itself tells it. */
export function faultIn(text: string, file: string, path: readonly PropertyKey[], what: string): Fault {
  return open(text, file).faultAt(path, what);
}

/** Faults of one file, in the order in which they stand there. */
export function inOrder(faults: readonly Fault[]): Fault[] {
  return faults.toSorted((a, b) => a.line - b.line || a.column - b.column);
}

function open(text: string, file: string) {
  const counter = new LineCounter();
  const document = parseDocument(text, { lineCounter: counter });
  const at = (offset: number, path: readonly PropertyKey[], what: string): Fault => {
    const { line, col } = counter.linePos(offset);
    return {
      file,
      line: Math.max(1, line),
      column: Math.max(1, col),
      path: path.map(String).join("."),
      what,
    };
  };
  const offsetOf = (path: readonly PropertyKey[]): number => {
    // The deepest node on the way that the text has. A missing key is shown at its parent.
    for (let depth = path.length; depth > 0; depth--) {
      const parent = document.getIn(path.slice(0, depth - 1), true);
      const key = path[depth - 1];
      if (isMap(parent)) {
        const pair = parent.items.find((item) => String(item.key) === String(key));
        if (isNode(pair?.key) && pair.key.range) return pair.key.range[0];
      }
      const node = document.getIn(path.slice(0, depth), true);
      if (isNode(node) && node.range) return node.range[0];
    }
    return isNode(document.contents) ? (document.contents.range?.[0] ?? 0) : 0;
  };
  const faultAt = (path: readonly PropertyKey[], what: string): Fault => at(offsetOf(path), path, what);
  return { document, at, faultAt };
}

/** `file:line:column path: what is wrong`, one line. */
export function faultLine(fault: Fault): string {
  const path = fault.path === "" ? "" : ` ${fault.path}`;
  return `${fault.file}:${fault.line}:${fault.column}${path}: ${fault.what}`;
}

/** The library's message without the place and without its picture of the line. The place is told apart. */
function firstLine(text: string): string {
  return text.replace(/(?: at line \d+, column \d+)?:?\n[\s\S]*$/, "");
}
