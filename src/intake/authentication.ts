import type { HeaderLine } from "../trade/header.ts";
import type { SenderProof } from "../trade/sender-proof.ts";

interface Result {
  readonly method: string;
  readonly result: string;
  /** "header.from", "header.d", "smtp.mailfrom" → value. */
  readonly properties: ReadonlyMap<string, string>;
}

/**
 * What our own mail server found out about the sender. Only fields that bear our server's name count. They must stand
 * above the Received line with which the letter came into our house: the sender may have written all below it. RFC
 * 8601 §1.6, §5, §7.1
 *
 * `headers` stand in the order of the letter, top first. `authority` is our authserv-id. `lines` is how many Received
 * lines our own servers write. They are counted, since what such a line says can be forged.
 */
export function proofOf(
  headers: readonly HeaderLine[],
  from: string,
  authority: string,
  lines = 1,
): SenderProof {
  const border = borderOf(headers, lines);
  const ours = border === undefined ? headers : headers.slice(0, headers.indexOf(border));
  const fields = ours.filter(
    ({ name, value }) => name === "authentication-results" && authorityOf(value) === nameOf(authority),
  );
  const results = fields.map(({ value }) => resultsOf(value));
  // The sender's name for itself has broken out of its quotes.
  if (results.some((some) => some === undefined)) return "temporary";
  return judge(
    results.flatMap((some) => some ?? []),
    domainOf(from),
  );
}

/** The Received line with which a letter came into our house. Our servers write `lines` of them. */
export function borderOf(headers: readonly HeaderLine[], lines: number): HeaderLine | undefined {
  return headers.filter(({ name }) => name === "received")[lines - 1];
}

function judge(results: readonly Result[], domain: string): SenderProof {
  // RFC 7489 §3.1: the domain must be aligned with From. DMARC has looked at that already.
  const dmarc = results.filter(({ method }) => method === "dmarc");
  const of = ({ properties }: Result): string => domainOf(properties.get("header.from") ?? "");
  if (dmarc.some(({ result }) => result === "fail" || result === "permerror")) return "fail";
  if (dmarc.some(({ result }) => result === "temperror")) return "temporary";
  if (dmarc.some((one) => one.result === "pass" && of(one) === domain)) return "pass";
  const aligned = ({ method, result, properties }: Result): boolean =>
    result === "pass" &&
    ((method === "dkim" &&
      domainOf(properties.get("header.d") ?? properties.get("header.i") ?? "") === domain) ||
      (method === "spf" && domainOf(properties.get("smtp.mailfrom") ?? "") === domain));
  if (results.some(aligned)) return "pass";
  return results.some(({ result }) => result === "temperror") ? "temporary" : "none";
}

/** The authserv-id that begins an Authentication-Results field. RFC 8601 §2.2 */
function authorityOf(value: string): string {
  const [head = ""] = (withoutComments(value) ?? value).split(";");
  return nameOf(head.trim().split(/\s+/)[0] ?? "");
}

function nameOf(authority: string): string {
  return unquoted(authority).replace(/\.$/, "").toLowerCase();
}

/** The findings of a field; undefined if its quotes or brackets do not close. */
function resultsOf(value: string): Result[] | undefined {
  const text = withoutComments(value);
  if (text === undefined) return undefined;
  const [, ...parts] = splitOutsideQuotes(text);
  return parts.flatMap((part) => {
    const pairs = [
      ...part.matchAll(/([A-Za-z0-9.-]+)(?:\/\d+)?\s*=\s*((?:"(?:[^"\\]|\\.)*"|[^\s;"])+)/g),
    ].map(([, name = "", said = ""]): [string, string] => [name.toLowerCase(), said]);
    const [first, ...properties] = pairs;
    return first === undefined
      ? []
      : [{ method: first[0], result: first[1].toLowerCase(), properties: new Map(properties) }];
  });
}

/**
 * A structured field without its comments; undefined if a quote or a bracket does not close. RFC 5322 §3.2.2:
 * comments nest. A quoted string may hold brackets. A backslash takes the next character as it is.
 */
export function withoutComments(value: string): string | undefined {
  let depth = 0;
  let quoted = false;
  let text = "";
  for (let i = 0; i < value.length; i++) {
    const c = value[i] ?? "";
    const escapes = c === "\\" && (quoted || depth > 0);
    const whole = escapes ? value.slice(i, i + 2) : c;
    if (escapes) i++;
    else if (c === '"' && depth === 0) quoted = !quoted;
    else if (c === "(" && !quoted) depth++;
    if (depth === 0) text += whole;
    if (c === ")" && !quoted && depth > 0) depth--;
  }
  return quoted || depth > 0 ? undefined : text;
}

function splitOutsideQuotes(value: string): string[] {
  return value.match(/(?:"(?:[^"\\]|\\.)*"|[^;"])+/g) ?? [];
}

function unquoted(text: string): string {
  return text.startsWith('"') ? text.slice(1, -1).replace(/\\(.)/g, "$1") : text;
}

/** The domain of an address, in small letters. An "@" in quotes belongs to the part before it. */
export function domainOf(address: string): string {
  const whole = /^"(?:[^"\\]|\\.)*"$/.test(address) ? unquoted(address) : address;
  return (
    whole
      .replace(/"(?:[^"\\]|\\.)*"/g, "")
      .split("@")
      .at(-1) ?? ""
  ).toLowerCase();
}
