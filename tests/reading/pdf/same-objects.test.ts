import { describe, expect, test } from "vitest";
import { hasSameObjects } from "../../../src/reading/pdf/same-objects.ts";
import { openForWalking } from "../../../src/reading/pdf/walked-pdf.ts";
import {
  catalog,
  closed,
  ending,
  packOf,
  pages,
  rowOf,
  streamOf,
  type WrittenPdf,
  withObjects,
} from "../../make/pdf-file.ts";

async function isSame(text: string): Promise<boolean> {
  const bytes = Buffer.from(text, "latin1");
  return hasSameObjects(bytes, await openForWalking(bytes));
}

const three = withObjects([
  [1, catalog],
  [2, pages],
  [3, "(LOBBY)"],
]);
const before = `/Root 1 0 R /Prev ${three.text.length}`;

/** The file of three objects, with a revision that writes object 3 anew. */
const revised = (trailer = before): WrittenPdf =>
  closed(withObjects([[3, "(ENTRY)"]], closed(three)), trailer);

describe("readers find the same objects in a file", () => {
  test("whose table names each", async () => {
    expect(await isSame(closed(three).text)).toBe(true);
  });

  test("that was revised, the last of each number being the newest table's", async () => {
    expect(await isSame(revised().text)).toBe(true);
  });

  test("whose older trailer names no catalog", async () => {
    const old = closed(three, "/Info 9 0 R");
    expect(await isSame(closed(withObjects([[3, "(ENTRY)"]], old), before).text)).toBe(true);
  });

  test("of four million bytes at most", async () => {
    const filled = (more: number): string =>
      closed(
        withObjects([
          [1, catalog],
          [2, pages],
          [3, `(${"x".repeat(more)})`],
        ]),
      ).text;
    const most = 3_000_000 + 4_000_000 - filled(3_000_000).length;
    expect(filled(most).length).toBe(4_000_000);
    expect([await isSame(filled(most)), await isSame(filled(most + 1))]).toEqual([true, false]);
  });
});

describe("readers may find other objects in a file", () => {
  const { text } = closed(three);
  const at = (number: number): number => three.at.get(number) ?? 0;
  const line = (place: number): string => String(place).padStart(10, "0");
  test.each<[string, string]>([
    ["with something before its header", `x${text}`],
    ["with an object that no table names", closed({ ...three, at: new Map([...three.at].slice(0, 2)) }).text],
    ["with an object in a comment's place", closed({ ...three, text: `${three.text}%4 0 obj\n` }).text],
    ["whose table calls an object free", text.replace(`${line(at(3))} 00000 n`, "0000000000 65535 f")],
    ["whose table has an object's number wrong", text.replace(line(at(3)), line(at(2)))],
    ["whose table has an object beside its place", text.replace(line(at(3)), line(at(3) + 1))],
    ["whose newest trailer names another catalog", revised(before.replace("1 0 R", "2 0 R")).text],
    [
      "whose older trailer names another catalog",
      closed(withObjects([[3, "(ENTRY)"]], closed(three, "/Root 2 0 R")), before).text,
    ],
    [
      "whose newest table goes back to what was written before",
      closed({ ...withObjects([[3, "(ENTRY)"]], closed(three)), at: three.at }, before).text,
    ],
    [
      "whose newest table calls free what an older one names",
      closed(
        {
          text,
          at: new Map([
            [1, at(1)],
            [2, at(2)],
            [4, at(3)],
          ]),
        },
        before,
      ).text,
    ],
    ["whose objects are of another generation", text.replace("\n3 0 obj", "\n3 1 obj")],
    ["whose objects begin in another way", text.replace("\n3 0 obj", "\n3 0 objx")],
  ])("%s", async (_, all) => {
    expect(await isSame(all)).toBe(false);
  });
});

type Row = readonly [kind: number, second: number, third: number];

/** A file of a catalog and pages with a packed stream, object 4, and a table as a stream, object 5. */
function packedFile({
  pack = packOf([
    [3, "(LOBBY)"],
    [6, "(ENTRY)"],
  ]),
  three: third = [2, 4, 0] as Row,
  four = (at: number): Row => [1, at, 0],
  five = (at: number): Row => [1, at, 0],
  six = [2, 4, 1] as Row,
  size = 7,
  more = "",
} = {}): string {
  const begun = withObjects([
    [1, catalog],
    [2, pages],
    [4, pack],
  ]);
  const self = begun.text.length + more.length;
  const at = (number: number): number => begun.at.get(number) ?? 0;
  const rows: Row[] = [[0, 0, 0], [1, at(1), 0], [1, at(2), 0], third, four(at(4)), five(self), six];
  const table = Buffer.from(rows.slice(0, size).flatMap((row) => rowOf([1, 2, 1], row)));
  const says = `/Type /XRef /W [1 2 1] /Size ${size} /Root 1 0 R`;
  return withObjects([[5, streamOf(says, table)]], { ...begun, text: begun.text + more }).text + ending(self);
}

describe("of a file whose objects are packed", () => {
  test("readers find the same where its table says where each is", async () => {
    expect(await isSame(packedFile())).toBe(true);
  });

  test("readers find the same where the table does not name itself", async () => {
    const pack = packOf([[3, "(LOBBY)"]]);
    expect(await isSame(packedFile({ pack, size: 5 }))).toBe(true);
  });

  test.each<[string, Parameters<typeof packedFile>[0]]>([
    ["an object is said to be the other of its pack", { three: [2, 4, 1], six: [2, 4, 0] }],
    ["an object is said to be in another pack", { three: [2, 5, 0] }],
    ["an object is said to be in a pack that is none", { three: [2, 2, 0] }],
    ["an object is said to be in a pack that is not there", { three: [2, 9, 0] }],
    ["an object of the pack is called free", { three: [0, 0, 0] }],
    ["an object of the pack is named nowhere", { size: 6 }],
    ["the pack is called free", { four: () => [0, 0, 0] }],
    ["the pack is said to be packed", { four: () => [2, 4, 0] }],
    ["the table's own place is another's", { five: (at) => [1, at + 1, 0] }],
    [
      "a number is packed twice",
      {
        pack: packOf([
          [3, "(LOBBY)"],
          [3, "(ENTRY)"],
        ]),
        six: [0, 0, 0],
      },
    ],
    [
      "a stream is packed",
      {
        pack: packOf([
          [3, "(LOBBY)"],
          [6, "<</Length 1>>\nstream\nx\nendstream"],
        ]),
      },
    ],
    ["an object stands beside its table", { more: "8 0 obj\n(x)\nendobj\n" }],
    ["an object is packed and stands later", { more: "3 0 obj\n(x)\nendobj\n" }],
  ])("they may not where %s", async (_, odd) => {
    expect(await isSame(packedFile(odd))).toBe(false);
  });
});
