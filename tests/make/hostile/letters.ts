const head = "From: Ines Calloway <ines@brightwire.example>\r\nMIME-Version: 1.0\r\n";
const million = 1_000_000;

/** Letters that are too deep, too many or too long. */
export const hostileLetters: Readonly<Record<string, () => Uint8Array>> = {
  "multipart a thousand deep": () => nested(1000, "x"),
  "multipart thirty thousand deep": () => nested(30_000, "x"),
  "forwarded a thousand times": () =>
    letter(`${"Content-Type: message/rfc822\r\n\r\n".repeat(1000)}Content-Type: text/plain\r\n\r\nx`),
  "forwarded five times, each with a sister of 4 MB": () => {
    let inner = `${head}\r\nx`;
    for (let i = 0; i < 5; i++)
      inner = `${head}Content-Type: multipart/mixed; boundary=b${i}\r\n\r\n--b${i}\r\nContent-Type: application/pdf\r\n\r\n${"A".repeat(4_000_000)}\r\n--b${i}\r\nContent-Type: message/rfc822\r\n\r\n${inner}\r\n--b${i}--\r\n`;
    return Buffer.from(inner);
  },
  "a million tiny parts": () =>
    letter(
      `Content-Type: multipart/mixed; boundary=b\r\n\r\n${"--b\r\nContent-Type: a/b\r\n\r\nx\r\n".repeat(million)}--b--\r\n`,
    ),
  "a million parts of nothing": () =>
    letter(`Content-Type: multipart/mixed; boundary=b\r\n\r\n${"--b\r\n\r\n".repeat(million)}--b--\r\n`),
  "a million header lines": () => letter(`${"X: y\r\n".repeat(million)}\r\nx`),
  "a header line of 20 MB": () => letter(`Subject: ${"x".repeat(20_000_000)}\r\n\r\nx`),
  "a header of two million folds": () => letter(`Subject:${" x\r\n".repeat(2 * million)}\r\n\r\nx`),
  "a million receivers": () => letter(`To: ${"a@b.example,".repeat(million)}\r\n\r\nx`),
  "receivers in brackets half a million deep": () =>
    letter(`To: ${"(".repeat(million / 2)}x${")".repeat(million / 2)}\r\n\r\nx`),
  "groups of receivers, a hundred thousand deep": () => letter(`To: ${"a:".repeat(100_000)};\r\n\r\nx`),
  "sixty thousand references": () => letter(`References:${" <a@b.example>".repeat(60_000)}\r\n\r\nx`),
  "sixty thousand encoded words": () => letter(`Subject: ${"=?utf-8?Q?=41?= ".repeat(60_000)}\r\n\r\nx`),
  "a name in forty thousand pieces": () =>
    letter(
      `Content-Type: application/pdf;${Array.from({ length: 40_000 }, (_, i) => ` name*${i}=x;`).join("\r\n")}\r\n\r\nx`,
    ),
  "a name that says it is piece two thousand million": () =>
    letter("Content-Type: application/pdf; name*0=a; name*2000000000=b\r\n\r\nx"),
  "HTML a million deep": () => letter(`Content-Type: text/html\r\n\r\n${"<div>".repeat(million)}`),
  "HTML table a hundred thousand deep": () =>
    letter(`Content-Type: text/html\r\n\r\n${"<table><tr><td>".repeat(100_000)}`),
  "HTML with a million links": () =>
    letter(`Content-Type: text/html\r\n\r\n${"<a href=https://a.example/b>c</a>".repeat(million)}`),
  "text with a million links": () =>
    letter(`Content-Type: text/plain\r\n\r\n${"https://a.example/b ".repeat(million)}`),
  "text of 20 MB without a blank": () => letter(`Content-Type: text/plain\r\n\r\n${"a.".repeat(10_000_000)}`),
  "text of 20 MB in quoted-printable": () =>
    letter(
      `Content-Type: text/plain\r\nContent-Transfer-Encoding: quoted-printable\r\n\r\n${"=41".repeat(7_000_000)}`,
    ),
  "a boundary of 900,000 letters": () =>
    letter(
      `Content-Type: multipart/mixed; boundary="${"b".repeat(900_000)}"\r\n\r\n${"--bb\r\n".repeat(100_000)}`,
    ),
  "a line of 20 MB that begins like a boundary": () =>
    letter(`Content-Type: multipart/mixed; boundary="-"\r\n\r\n${"-".repeat(20_000_000)}`),
  "uuencoded files, half a million": () =>
    letter(
      `Content-Type: text/plain\r\n\r\n${"begin 644 a.pdf\r\n#86)C\r\n`\r\nend\r\n".repeat(million / 2)}`,
    ),
  "thirty megabytes of zeros": () => Buffer.alloc(30_000_000),
  "thirty megabytes of line ends": () => Buffer.alloc(30_000_000, "\r\n"),
};

function letter(rest: string): Buffer {
  return Buffer.from(head + rest, "latin1");
}

function nested(depth: number, inside: string): Buffer {
  let open = "";
  for (let i = 0; i < depth; i++) open += `Content-Type: multipart/mixed; boundary=b${i}\r\n\r\n--b${i}\r\n`;
  return letter(`${open}Content-Type: text/plain\r\n\r\n${inside}\r\n`);
}
