/** A small letter with a subject of its own; `more` follows the text. */
export function plainLetter(subject: string, more = ""): string {
  return [
    "From: Alice <alice@brightwire.example>",
    "To: orders@quillgate.example",
    `Subject: ${subject}`,
    `Message-ID: ${messageIdOf(subject)}`,
    "Date: Mon, 02 Mar 2026 09:00:00 +0000",
    "Content-Type: text/plain",
    "",
    "Please find our sheets.",
    more,
    "",
  ].join("\r\n");
}

export function messageIdOf(subject: string): string {
  return `<${subject.replaceAll(/\W/g, "-")}@brightwire.example>`;
}

/** The subject of a letter, to know it by. */
export function subjectOf(letter: Uint8Array | string): string | undefined {
  return /^Subject: (.*?)\r?$/m.exec(Buffer.from(letter).toString("latin1").slice(0, 20_000))?.[1];
}
