/** Lines of a part: header, an empty line, body. */
export type Lines = readonly string[];

export const onePdf = "%PDF-1.7 a";

/** A letter of parts as text; `boundary` tells nested ones apart. */
export function multipart(boundary: string, kind: string, ...parts: readonly Lines[]): string[] {
  return [
    `Content-Type: multipart/${kind}; boundary="${boundary}"`,
    "",
    ...parts.flatMap((part) => [`--${boundary}`, ...part]),
    `--${boundary}--`,
  ];
}

export function mixed(boundary: string, ...parts: readonly Lines[]): string[] {
  return multipart(boundary, "mixed", ...parts);
}

/** A part with a file in it, a PDF if nothing else is said. */
export function filePart(
  name: string,
  content: string | Uint8Array = onePdf,
  type = "application/pdf",
): string[] {
  return [
    `Content-Type: ${type}`,
    `Content-Disposition: attachment; filename="${name}"`,
    "Content-Transfer-Encoding: base64",
    "",
    base64(content),
  ];
}

export function base64(content: string | Uint8Array): string {
  return Buffer.from(content).toString("base64").replace(/.{76}/g, "$&\r\n");
}

/** A forwarded letter as a part. */
export function forwarded(lines: Lines): string[] {
  return ["Content-Type: message/rfc822", "", ...lines];
}

export function bytesOf(lines: Lines): Buffer {
  return Buffer.from(lines.join("\r\n"));
}
