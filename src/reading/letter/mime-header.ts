import libmime from "libmime";

/** What the header of a part says of it. */
export interface PartHeader {
  /** Such as "application/pdf", in lower case; "text/plain" where the letter does not say. */
  readonly type: string;
  /** As the letter gives it; absent when it gives none. */
  readonly name?: string;
  /** The letter says that it is an attachment, or says so of it in words that nobody knows. RFC 2183 §2.8 */
  readonly attached: boolean;
  /** By what name an HTML text can show it. RFC 2392 */
  readonly cid?: string;
  /** The kind of multipart that it stands in, such as "signed". */
  readonly within?: string;
}

/** Header fields by their names in lower case, unfolded. Of two with one name the first holds. */
export interface Fields {
  readonly byName: Map<string, string>;
  /** The one that the next line may continue; "" when that is to be passed over. */
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
  // Some programs break a line between two parameters without the blank that says so.
  if (/^[ \t]|^(?:name|filename|boundary|charset)[\d*]*=/i.test(line)) {
    const before = byName.get(fields.latest);
    if (before !== undefined) byName.set(fields.latest, `${before} ${line.trim()}`);
    return true;
  }
  return /^>?From /.test(line); // programs that keep letters in one file begin each with such a line
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

/** The type of a part, and the boundary that it names if it is to consist of parts. */
export function typeOfPart(
  byName: ReadonlyMap<string, string>,
  within: string | undefined,
): { type: string; boundary: string | undefined; name: string | undefined } {
  const { value, params, name } = withParameters(byName.get("content-type"));
  const given = { boundary: params["boundary"]?.trimEnd(), name: name("name") };
  if (/^[^\s/]+\/[^\s/]+$/.test(value)) return { type: value, ...given };
  // RFC 2046 §5.1.5: in a digest, what does not say otherwise is a letter.
  if (value === "") return { type: within === "digest" ? "message/rfc822" : "text/plain", ...given };
  // RFC 2045 §5.2 takes a type that is none for plain text; but then a file would be lost in the text.
  return { type: value.startsWith("text") ? "text/plain" : "application/octet-stream", ...given };
}

/** A field with parameters, of which one may be the name of a file. */
function withParameters(field = ""): {
  readonly value: string;
  readonly params: Readonly<Record<string, string>>;
  readonly name: (parameter: string) => string | undefined;
} {
  const { value, params, decodedParams } = libmime.parseHeaderValue(field, { stripComments: true });
  return {
    value: value.trim().toLowerCase(),
    params,
    // RFC 2231 names come decoded; many programs write RFC 2047 words instead, though its §5 forbids it.
    name: (parameter) => {
      const given = params[parameter] ?? "";
      const name = decodedParams.includes(parameter) ? given : libmime.decodeWords(given);
      return name === "" ? undefined : name;
    },
  };
}

/** RFC 6532: header lines may be UTF-8; what is not is taken as Latin-1. */
function lineText(line: Buffer): string {
  const text = line.toString("utf8");
  return text.includes("\uFFFD") ? line.toString("latin1") : text;
}
