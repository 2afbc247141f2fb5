import { rawBomb } from "./deflate.ts";
import { tnef, tnefHead } from "./raw-tnef.ts";
import { overlapping, rawZip, zipped } from "./raw-zip.ts";

const GB = 2 ** 30;

/** Archives and containers that are not what they say. */
export const containers: Readonly<Record<string, () => Uint8Array>> = {
  "zip of one file of 10 GB": () =>
    rawZip([{ name: "a.pdf", packed: rawBomb(10 * GB, "\0"), size: 10 * GB }]),
  "zip whose file of 1 GB says it has ten bytes": () =>
    rawZip([{ name: "a.pdf", packed: rawBomb(GB, "\0"), size: 10 }]),
  "zip of sixty thousand files that are all the same 16 MB": () =>
    overlapping({ name: "", packed: rawBomb(1 << 24, "\0"), size: 1 << 24 }, 60_000),
  "zip of sixty thousand empty files": () =>
    rawZip(Array.from({ length: 60_000 }, (_, i) => zipped(`${i}.pdf`, Buffer.alloc(0)))),
  "zip in a zip, a hundred deep": () => {
    let inner: Buffer = Buffer.from("%PDF-1.7");
    for (let i = 0; i < 100; i++) inner = rawZip([zipped("more.zip", inner)]);
    return inner;
  },
  "zip of ten zips of ten zips, five deep": () => {
    let inner: Buffer = rawZip([{ name: "a.pdf", packed: rawBomb(1 << 26, "\0"), size: 1 << 26 }]);
    for (let i = 0; i < 5; i++)
      inner = rawZip(Array.from({ length: 10 }, (_, n) => zipped(`${n}.zip`, inner)));
    return inner;
  },
  "zip with a name that is a path": () =>
    rawZip(
      ["../../../etc/passwd", "/etc/passwd", "C:\\a.pdf", "a\0.pdf", ""].map((name) =>
        zipped(name, Buffer.from("x")),
      ),
    ),
  "zip with a name of 60,000 letters": () => rawZip([zipped("n".repeat(60_000), Buffer.from("x"))]),
  "zip whose list lies outside of it": () => {
    const zip = rawZip([zipped("a.pdf", Buffer.from("x"))]);
    zip.writeUInt32LE(0xfffffff0, zip.length - 6);
    return zip;
  },
  "TNEF whose lengths are four thousand million": () => tnef(0xffffffff, Buffer.from("x")),
  "TNEF whose lengths are below nothing": () => tnef(0x80000000, Buffer.from("x")),
  "TNEF with properties that say there are thousands of millions": () => {
    // attMAPIProps: a count, then properties. [MS-OXTNEF] §2.1.3.4
    const props = Buffer.alloc(16);
    props.writeUInt32LE(0xfffffff0, 0);
    props.writeUInt32LE(0x0003_0102, 4);
    props.writeUInt32LE(0xfffffff0, 8);
    return tnef(props.length, props, 0x00069003);
  },
  "TNEF of a million empty attachments": () => {
    const rendered = Buffer.alloc(9 + 14 + 2);
    rendered.writeUInt8(2, 0);
    rendered.writeUInt32LE(0x00069002, 1); // attAttachRenddata
    rendered.writeUInt32LE(14, 5);
    return Buffer.concat([tnefHead, ...Array.from({ length: 1_000_000 }, () => rendered)]);
  },
};
