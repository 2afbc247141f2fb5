import { spawnSync } from "node:child_process";
import { randomUUID } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, utimesSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, onTestFinished, test, vi } from "vitest";
import { PackageThere, packagesIn, removePackage, writePackage } from "../../src/store/package-folder.ts";
import { temporaryFolder } from "../make/desk.ts";

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const files = [
  { path: "schedule.csv", bytes: bytes("a") },
  { path: "cut/S-104 plate.dxf", bytes: bytes("b") },
  { path: "manifest.json", bytes: bytes("{}") },
];

test("a package is written whole, in folders that are made for it", async () => {
  const folder = join(temporaryFolder(), "not", "there");
  const written = await writePackage(folder, "BW-2207 revision 3", files);
  expect(written).toBe(join(folder, "BW-2207 revision 3"));
  for (const file of files)
    expect(new Uint8Array(readFileSync(join(written, file.path)))).toEqual(file.bytes);
  expect(readdirSync(folder)).toEqual(["BW-2207 revision 3"]);
});

test.each(["folder", "empty folder", "file"])("a %s that is there already stays as it is", async (what) => {
  const folder = temporaryFolder();
  const there = join(folder, "BW-2207");
  if (what === "file") writeFileSync(there, "old");
  else mkdirSync(there);
  if (what === "folder") writeFileSync(join(there, "old.txt"), "old");
  await expect(writePackage(folder, "BW-2207", files)).rejects.toThrow(PackageThere);
  expect(readdirSync(folder)).toEqual(["BW-2207"]);
  expect(what === "file" ? readFileSync(there, "utf8") : readdirSync(there).join()).toBe(
    { folder: "old.txt", "empty folder": "", file: "old" }[what],
  );
});

test("of two who write one package at once, one does, and it is whole", async () => {
  const folder = temporaryFolder();
  const both = await Promise.allSettled(
    [1, 2].map((n) => writePackage(folder, "P", [...files, { path: "by", bytes: bytes(`${n}`) }])),
  );
  expect(both.map(({ status }) => status).toSorted()).toEqual(["fulfilled", "rejected"]);
  expect(both.find((one) => one.status === "rejected")?.reason).toBeInstanceOf(PackageThere);
  expect(readdirSync(folder)).toEqual(["P"]);
  expect(readdirSync(join(folder, "P")).toSorted()).toEqual(["by", "cut", "manifest.json", "schedule.csv"]);
});

test("what fails on the way leaves nothing", async () => {
  const folder = temporaryFolder();
  const twice = [...files, { path: "schedule.csv", bytes: bytes("again") }];
  await expect(writePackage(folder, "P", twice)).rejects.toThrow("EEXIST");
  expect(readdirSync(folder)).toEqual([]);
});

test("a package that is tried leaves nothing, and is refused like one that is written", async () => {
  const folder = join(temporaryFolder(), "not", "there");
  await packagesIn(folder).try?.(files.map((one) => ({ is: "a file", ...one })));
  expect(readdirSync(folder)).toEqual([]);
  writeFileSync(join(folder, "file"), "");
  const inFile = packagesIn(join(folder, "file")).try?.([]);
  await expect(inFile).rejects.toThrow("EEXIST");
});

test.each([
  ["../outside", "P"],
  ["/outside", "P"],
  ["a/../../outside", "P"],
  ["inside", "../P"],
])("nothing is written outside of the package: %s in %s", async (path, name) => {
  const folder = join(temporaryFolder(), "packages");
  await expect(writePackage(folder, name, [{ path, bytes: bytes("x") }])).rejects.toThrow("leads out of");
  expect(existsSync(join(folder, "..", "outside"))).toBe(false);
});

/** A program that writes a package and kills itself (SIGKILL) before the file of this number. */
function killedBefore(file: number, folder: string): NodeJS.Signals | null {
  const program = `import { writePackage } from "./src/store/package-folder.ts";
function* files() {
  for (let n = 0; n < 4; n++) {
    if (n === ${file}) process.kill(process.pid, "SIGKILL");
    yield { path: n === 3 ? "manifest.json" : "part/" + n, bytes: new Uint8Array(100_000) };
  }
  process.kill(process.pid, "SIGKILL");
}
await writePackage(${JSON.stringify(folder)}, "BW-2207 revision 3", files());`;
  return spawnSync(process.execPath, ["--input-type=module", "--eval", program]).signal;
}

test.each([0, 1, 3, 4])(
  "killed before file %i, it leaves nothing that looks like a package",
  async (file) => {
    const folder = temporaryFolder();
    expect(killedBefore(file, folder)).toBe("SIGKILL");
    // What is left is hidden, and has another name.
    expect(readdirSync(folder).filter((name) => !/^\..*\.part$/.test(name))).toEqual([]);
    const written = await writePackage(folder, "BW-2207 revision 3", files);
    expect(readdirSync(written).toSorted()).toEqual(["cut", "manifest.json", "schedule.csv"]);
  },
);

test("what a death has left is removed a day later, and nothing that is being written", async () => {
  const folder = temporaryFolder();
  const [old, fresh] = [join(folder, `.${randomUUID()}.part`), join(folder, `.${randomUUID()}.part`)];
  for (const path of [old, fresh]) mkdirSync(path);
  vi.useFakeTimers({ toFake: ["Date"], now: new Date("2026-11-10T15:00:00.001Z") });
  onTestFinished(() => void vi.useRealTimers());
  const [past, later] = [new Date("2026-11-09T15:00:00Z"), new Date("2026-11-09T15:00:01Z")];
  utimesSync(old, past, past);
  utimesSync(fresh, later, later);
  await writePackage(folder, "BW-2207", [{ path: "a.txt", bytes: Buffer.from("a") }]);
  expect([old, fresh].map((path) => existsSync(path))).toEqual([false, true]);
});

test("older packages stay, and so does everything else that lies beside them", async () => {
  const folder = temporaryFolder();
  const past = new Date(Date.now() - 2 * 86_400_000);
  const uuid = randomUUID();
  const names = ["BW-2207", "notes.part", `${uuid}.part`, `.${uuid}.parts`, `BW-2207.${uuid}.part`];
  const others = names.map((name) => join(folder, name));
  for (const path of others) {
    mkdirSync(path);
    utimesSync(path, past, past);
  }
  await writePackage(folder, "BW-2208", [{ path: "a.txt", bytes: Buffer.from("a") }]);
  expect(others.filter((path) => !existsSync(path))).toEqual([]);
});

test("a package is deleted by its name, in whatever capitals, and nothing else", async () => {
  const folder = temporaryFolder();
  for (const name of ["BW-2207 revision 1", "BW-2207 revision 11", "bw 2208 revision 1"])
    await writePackage(folder, name, files);
  expect(await removePackage(folder, "bw-2207 revision 1")).toBe(true);
  expect(readdirSync(folder).toSorted()).toEqual(["BW-2207 revision 11", "bw 2208 revision 1"]);
  expect(await removePackage(folder, "../x")).toBe(false);
  expect(await removePackage(join(folder, "nowhere"), "x")).toBe(false);
});
