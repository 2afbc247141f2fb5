import libmime from "libmime";

/** What the header of a part says of it. */
export interface PartHeader {
  /** Such as "application/pdf", in lower case; "text/plain" where the letter does not say. */
  readonly type: string;
  /** As the letter gives it; absent when it gives none. */
  readonly name?: string;
  /** The letter calls it an attachment, or uses a disposition that nobody knows. RFC 2183 §2.8 */
  readonly attached: boolean;
  /** The name by which an HTML text shows it. RFC 2392 */
  readonly cid?: string;
  /** The kind of multipart that it stands in, such as "signed". */
  readonly within?: string;
}

/** Header fields by their names in lower case, unfolded. If a name stands twice the first holds. */
export interface Fields {
  readonly byName: Map<string, string>;
  /** The field that the next line may continue; "" if such a line is to be passed over. */
  latest: string;
}

export function noFields(): Fields {
  return { byName: new Map(), latest: "" };
}

/** Adds a line to a header; false when no header has such a line. RFC 5322 §2.2 */
export function addLine(fields: Fields, bytes: Buffer): boolean {
  const { byName } = fields;
  const line = lineText(bytes);
  const [, given, value] = /^([!-9;-~]+)[ \t]*:(.*)$/s.exec(line) ?? [];
  if (given !== undefined && value !== undefined) {
    const name = given.toLowerCase();
    fields.latest = byName.has(name) ? "" : name;
    if (fields.latest !== "") byName.set(name, value.trim());
    return true;
  }
  // Some programs break a line between two parameters without the blank that a continued line needs.
  if (/^[ \t]|^(?:name|filename|boundary|charset)[\d*]*=/i.test(line)) {
    const before = byName.get(fields.latest);
    if (before !== undefined) byName.set(fields.latest, `${before} ${line.trim()}`);
    return true;
  }
  return /^>?From /.test(line); // programs that keep many letters in one file begin each with such a line
}

export function headerOfPart({ byName }: Fields, within: string | undefined): PartHeader {
  const { type, name: typeName } = typeOfPart(byName, within);
  const disposition = withParameters(byName.get("content-disposition"));
  const name = disposition.name("filename") ?? typeName;
  const cid = /[^<>\s]+/.exec(byName.get("content-id") ?? "")?.[0];
  return {
    type,
    ...(name === undefined ? {} : { name }),
    attached: !["", "inline"].includes(disposition.value),
    ...(cid === undefined ? {} : { cid }),
    ...(within === undefined ? {} : { within }),
  };
}

/** The type of a part, and the boundary that it names if it consists of parts. */
export function typeOfPart(
  byName: ReadonlyMap<string, string>,
  within: string | undefined,
): { type: string; boundary: string | undefined; name: string | undefined } {
  const { value, params, name } = withParameters(byName.get("content-type"));
  const given = { boundary: params["boundary"]?.trimEnd(), name: name("name") };
  if (/^[^\s/]+\/[^\s/]+$/.test(value)) return { type: value, ...given };
  // RFC 2046 §5.1.5: a part of a digest is a letter unless it says otherwise.
  if (value === "") return { type: within === "digest" ? "message/rfc822" : "text/plain", ...given };
  // RFC 2045 §5.2 takes an invalid type for plain text. But then a file would be lost in the text.
  return { type: value.startsWith("text") ? "text/plain" : "application/octet-stream", ...given };
}

/** A field with parameters. One of them may be the name of a file. */
function withParameters(field = ""): {
  readonly value: string;
  readonly params: Readonly<Record<string, string>>;
  readonly name: (parameter: string) => string | undefined;
} {
  const { value, params, decodedParams } = libmime.parseHeaderValue(field, { stripComments: true });
  return {
    value: value.trim().toLowerCase(),
    params,
    // RFC 2231 names come decoded. Many programs write RFC 2047 words instead, although its §5 forbids it.
    name: (parameter) => {
      const given = params[parameter] ?? "";
      const name = decodedParams.includes(parameter) ? given : libmime.decodeWords(given);
      return name === "" ? undefined : name;
    },
  };
}

/** RFC 6532: header lines may be UTF-8. What is not is taken as Latin-1. */
function lineText(line: Buffer): string {
  const text = line.toString("utf8");
  return text.includes("\uFFFD") ? line.toString("latin1") : text;
}
