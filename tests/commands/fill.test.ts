import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeEach, expect, test } from "vitest";
import { blank } from "../../src/commands/blank.ts";
import { CannotRun } from "../../src/commands/command.ts";
import { fill } from "../../src/commands/fill.ts";
import { temporaryFolder } from "../make/desk.ts";
import { alone, csvOf, type Filling, pair, rowsOf, writers } from "../make/list.ts";

let folder = "";
let printed: string[] = [];
const io = {
  out: (text: string) => printed.push(text),
  err: (text: string) => printed.push(text),
  progress: () => undefined,
};
beforeEach(() => {
  folder = temporaryFolder();
  printed = [];
});

const out = (): string => join(folder, "out");
const run = (file: string): Promise<number> => fill.run([join(folder, file), "--out", out()], io);

function write(file: string, filling: Filling): string {
  writeFileSync(join(folder, file), csvOf(rowsOf(filling)));
  return file;
}

test("a list comes to its sheets and one proof, and asks nothing that they alone would not", async () => {
  writeFileSync(
    join(folder, "list.xlsx"),
    await writers["write-excel-file"](rowsOf({ devices: [...pair, alone] })),
  );
  expect(await run("list.xlsx")).toBe(0);
  expect(readdirSync(out()).toSorted()).toEqual([
    "A-1 plate.pdf",
    "A-1 position 1.pdf",
    "A-1 position 2.pdf",
    "A-2.pdf",
    "proof SA-118.pdf",
  ]);
  expect(printed[0]).toMatch(/^PASS: order SA-118 is complete/);

  // It never writes over what is there.
  await expect(run("list.xlsx")).rejects.toThrow(CannotRun);
});

test("every fault is printed at once with its cells, and nothing is written", async () => {
  const bad = { ...alone, Layout: "Tree buttons", "Button 2, row 1": "DIMMER SWITCH", "Leave plain": "" };
  const list = write("bad.csv", { head: { "Order number": "SA-118" }, devices: [bad] });
  expect(await run(list)).toBe(1);
  const said = printed.join("\n").replaceAll(/\s+/g, " ");
  expect(said).toContain("“Layout” says “Tree buttons”, which cannot be understood.");
  expect(said).toContain("It wants One button, Three buttons, Five buttons or Eight buttons. In bad.csv: D5");
  expect(said).toMatch(/Not filled in: .*“Contact name”/);
  expect(existsSync(out())).toBe(false);
});

test.each([
  ["a text", "Dear desk, four of the usual, please."],
  ["a table that is no list", "Item,Qty\nplates,4\n"],
])("%s cannot be filled in", async (_, text) => {
  writeFileSync(join(folder, "other.csv"), text);
  await expect(run("other.csv")).rejects.toThrow("is no station list as `burin blank` writes it");
});

test("the empty lists are written beside the blank sheets, and have no device", async () => {
  await blank.run([folder], io);
  expect(readdirSync(folder).toSorted()).toEqual([
    "device-4.pdf",
    "plate-4.pdf",
    "station-list.csv",
    "station-list.xlsx",
  ]);
  for (const file of ["station-list.csv", "station-list.xlsx"]) {
    printed = [];
    expect(await run(file)).toBe(1);
    expect(printed.join("\n")).toContain("The list has no device in it.");
  }
  // A list that somebody has filled in is not lost.
  writeFileSync(join(folder, "station-list.csv"), "mine");
  await expect(blank.run([folder], io)).rejects.toThrow("nothing was written");
  expect(readFileSync(join(folder, "station-list.csv"), "utf8")).toBe("mine");
});
