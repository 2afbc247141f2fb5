import { buildLetters } from "../../src/demo/build.ts";
import { loadScenario } from "../../src/demo/load.ts";
import { readHeader, readLetter } from "../../src/reading/letter/letter.ts";
import { maker } from "../make/config.ts";
import { fuzz } from "./fuzz-run.ts";

/** Mutations of letters: those of the demonstration, and such as other programs write. */
const scenario = await loadScenario("fixtures");
const sources: Uint8Array[] = [];
const options = { to: "orders@quillgate.example", answerId: () => "<a@quillgate.example>" };
for await (const { bytes } of buildLetters(scenario.letters, { ...maker, ...scenario }, options))
  sources.push(bytes);

/** Forwarded, signed, in a digest, quoted, in Outlook's container, with names in every writing. */
const others = [
  'Content-Type: multipart/digest; boundary="b"\n\n--b\n\nSubject: inner\nContent-Type: application/pdf; name*0*=utf-8\'\'%c3%a9; name*1=".pdf"\nContent-Transfer-Encoding: base64\n\nJVBERi0xLjcK\n--b--\n',
  'Content-Type: multipart/mixed; boundary="b"\n\n--b\nContent-Type: message/rfc822\n\nFrom: x@y.example\nSubject: =?utf-8?Q?Caf=C3=A9?=\nContent-Type: multipart/alternative; boundary="bb"\n\n--bb\nContent-Type: text/html; charset=utf-8\nContent-Transfer-Encoding: quoted-printable\n\n<p>Sheets below=2E <img src=3D"cid:logo">\n--bb\nContent-Type: image/png; name="=?utf-8?B?bG9nby5wbmc=?="\nContent-ID: <logo>\nContent-Disposition: inline\nContent-Transfer-Encoding: base64\n\niVBORw0KGgo=\n--bb--\n--b--\n',
  "Content-Type: text/plain\n\nbegin 644 a.pdf\n))5!$1BTQ+C<*\n`\nend\n\n> > quoted https://files.example/download/abcdef0123456789.pdf\n",
  "Content-Type: application/ms-tnef; name=winmail.dat\nContent-Transfer-Encoding: base64\n\neJ8+IgEAApAGAA4AAAAAAAAAAAAAAAAAAAAAAAACEIABAAYAAABhLnBkZgAzAgKPgAYACQAAACVQREYtMS43CjICAA==\n",
  'Content-Type: multipart/signed; protocol="application/pkcs7-signature"; boundary="b"\n\n--b\nContent-Type: application/octet-stream; name="S-104.pdf"\nContent-Transfer-Encoding: base64\n\nJVBERi0xLjcK\n--b\nContent-Type: application/pkcs7-signature; name=smime.p7s\nContent-Transfer-Encoding: base64\n\nMIIBAgYJKoZIhvcNAQcCoA==\n--b--\n',
];
for (const other of others)
  sources.push(
    Buffer.from(`From: Ines Calloway <ines@brightwire.example>\nTo: orders@quillgate.example\n${other}`),
  );
const files = await Promise.all(sources.map(async (bytes) => (await readLetter(bytes)).parts.length));

await fuzz(sources, async (reader, bytes, source) => {
  await readHeader(bytes); // the desk does that itself for letters that cannot be opened
  const opened = await reader.letter(bytes);
  if (!opened.ok) return `unsafe: ${opened.why}`;
  const more = opened.value.parts.length - (files[source] ?? 0);
  const sender = opened.value.from === undefined ? "no sender" : "a sender";
  return `${sender}, ${more === 0 ? "as many files" : more > 0 ? "more files" : "fewer files"}`;
});
