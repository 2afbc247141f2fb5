import { expect, test } from "vitest";
import { safeFileName, tellApart } from "../../src/reading/file-name.ts";

test.each([
  ["S-104 pos 2.pdf", "S-104 pos 2.pdf"],
  ["  a.pdf ", "a.pdf"],
  ["../../etc/passwd", "passwd"],
  ["C:\\Users\\ines\\S-104.pdf", "S-104.pdf"],
  ["a\r\nBcc: b@c.example\u0000.pdf", "aBcc: b@c.example.pdf"],
  // U+202E turns what follows around, so that "fdp.exe" reads as "exe.pdf".
  ["plate\u202efdp.exe", "platefdp.exe"],
  ["Tür 3 – Süd.pdf", "Tür 3 – Süd.pdf"],
  [`${"x".repeat(200)}.pdf`, `${"x".repeat(116)}.pdf`],
  // 3 bytes each
  [`${"配".repeat(84)}.pdf`, `${"配".repeat(65)}.pdf`],
  [".hidden", ".hidden"],
])("%j becomes %j", (given, safe) => {
  expect(safeFileName(given)).toBe(safe);
});

test.each(["", "  ", "..", "folder/", "\u0000"])("of %j nothing is left", (given) => {
  expect(safeFileName(given)).toBeUndefined();
});

test("a name is taken whatever its capitals, and a told name is taken too", () => {
  const files = ["a.pdf", "A.PDF", "a (2).pdf", "b", "b", "a.pdf"].map((file) => ({ file }));
  expect(tellApart(files)).toEqual([
    { file: "a.pdf" },
    { file: "A (3).PDF", named: "A.PDF" },
    { file: "a (2).pdf" },
    { file: "b" },
    { file: "b (2)", named: "b" },
    { file: "a (4).pdf", named: "a.pdf" },
  ]);
});
