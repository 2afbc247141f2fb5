import { execFile, spawnSync } from "node:child_process";
import { chmodSync, cpSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { expect, test } from "vitest";
import { everyCheck } from "../../src/checks/run.ts";
import { configure } from "../../src/commands/configuration.ts";
import { temporaryFolder } from "../make/desk.ts";
import { sampleSheets } from "../make/odd-sheets/sheets.ts";

interface Ended {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

function burin(...args: readonly string[]): Promise<Ended> {
  return new Promise((resolve) => {
    execFile(process.execPath, ["src/main.ts", ...args], { maxBuffer: 2 ** 26 }, (error, out, err) => {
      resolve({ code: typeof error?.code === "number" ? error.code : 0, out, err });
    });
  });
}

test("--help lists the commands, and each command's --help its options", async () => {
  const { code, out } = await burin("--help");
  expect(code).toBe(0);
  const names = [...out.matchAll(/^ {2}burin (\w+)/gm)].map((match) => match[1] ?? "");
  expect(names).toEqual(
    expect.arrayContaining([
      "demo",
      "check",
      "work",
      "blank",
      "order",
      "release",
      "day",
      "explain",
      "settings",
    ]),
  );
  for (const name of names) {
    const help = await burin(name, "--help");
    expect([name, help.code]).toEqual([name, 0]);
    expect(help.out).toContain("--help");
  }
});

test("a mistyped command or option is told, with a guess", async () => {
  expect(await burin("chekc", "x")).toMatchObject({
    code: 2,
    err: expect.stringContaining("did you mean check?"),
  });
  expect(await burin("check", "--jsn", "x")).toMatchObject({
    code: 2,
    err: expect.stringContaining("did you mean --json?"),
  });
  expect((await burin()).code).toBe(2);
});

test("a file that is not there is a clear error", async () => {
  expect(await burin("check", "no-such.pdf")).toMatchObject({
    code: 2,
    err: expect.stringContaining("cannot read no-such.pdf: no such file or folder"),
  });
});

test("faults in settings and catalogue end with 2 and their places", async () => {
  const folder = temporaryFolder();
  const file = join(folder, "burin.yaml");
  mkdirSync(join(folder, "editions"));
  writeFileSync(join(folder, "catalogue.yaml"), "maker: { name: A }\n");
  writeFileSync(
    file,
    "catalogue: catalogue.yaml\neditions: editions\nrecord: r\nfolders: [l]\nanswers: { folder: a, from: { name: A, address: a@b.example } }\ntime_zone: Etc/UTC\n",
  );
  const { code, err } = await burin("settings", "--settings", file);
  expect(code).toBe(2);
  expect(err).toMatch(/catalogue\.yaml:1:1 maker\.email: /);
  expect(err).toMatch(/catalogue\.yaml:1:1 layouts: /);
});

test("the settings name the languages of the legends, and their words are right", async () => {
  const folder = temporaryFolder();
  const file = join(folder, "burin.yaml");
  const config = readFileSync("config/burin.yaml", "utf8").replace(
    /(catalogue|editions|glossary): (\S+)/g,
    (_, key, path) => `${key}: ${resolve("config", path)}`,
  );
  writeFileSync(file, `languages: [en-GB, fr, es]\n${config}`);
  expect((await burin("settings", "--settings", file)).out).toContain("languages  en-GB, fr, es");
  const { words } = (await configure(file)).catalogue;
  expect(["COLOUR", "ECLAIRAGE", "APAGADO", "ENCENDIDDO"].map(words.isWord)).toEqual([
    true,
    true,
    true,
    false,
  ]);
});

test("explain tells of every check, and guesses at a mistyped one", async () => {
  const { out } = await burin("explain");
  for (const { id } of everyCheck) expect(out).toContain(id);
  expect((await burin("explain", "spelling")).out).toContain("RECEPTION");
  expect(await burin("explain", "row-to-long")).toMatchObject({
    code: 2,
    err: expect.stringContaining("did you mean row-too-long?"),
  });
});

test("a blank sheet can be had and is refused as blank; a date that is none ends with 2", async () => {
  const folder = temporaryFolder();
  const { code } = await burin("blank", folder);
  expect(code).toBe(0);
  expect((await burin("check", join(folder, "device-4.pdf"))).code).toBe(1);
  expect((await burin("day", "2026-02-30")).code).toBe(2);
});

test("a mailbox that is not there is told in a sentence", async () => {
  const folder = temporaryFolder();
  const file = join(folder, "burin.yaml");
  const config = join(process.cwd(), "config");
  writeFileSync(
    file,
    `catalogue: ${config}/catalogue.yaml\neditions: ${config}/editions\nrecord: r\nfolders: [nowhere]\nanswers: { folder: a, from: { name: A, address: a@b.example } }\ntime_zone: Etc/UTC\n`,
  );
  expect(await burin("work", "--once", "--settings", file)).toMatchObject({
    code: 1,
    out: "0 new letters handled, 0 seen before, 1 mailbox not read: the log says why.\n",
  });
});

test("check and proof tell what they did not read in a folder", async () => {
  const folder = temporaryFolder();
  cpSync("fixtures/raw/kestrel-left-qpdf.pdf", join(folder, "kestrel.pdf"));
  for (const name of ["wall.jpg", "list.xlsx", ".index"]) writeFileSync(join(folder, name), "");
  const unread = `not read: ${join(folder, "list.xlsx")}\nnot read: ${join(folder, "wall.jpg")}\n`;
  expect((await burin("check", folder)).err).toBe(unread);
  expect((await burin("proof", folder, "--out", join(folder, "out"))).err).toBe(unread);
});

test("check --out writes the proof, and the sheet with what is wrong marked on it", async () => {
  const folder = temporaryFolder();
  // Its plate is missing, which is asked about.
  const sheet = "fixtures/raw/kestrel-left-qpdf.pdf";
  const { code, err } = await burin("check", sheet, "--out", join(folder, "out"));
  expect(code).toBe(1);
  expect(err.trim().split("\n")).toEqual([
    `wrote ${join(folder, "out", "marked kestrel-left-qpdf.pdf")}`,
    `wrote ${join(folder, "out", "L-1 plate.pdf")}`,
    `wrote ${join(folder, "out", "L-1 position 2.pdf")}`,
    `wrote ${join(folder, "out", "proof OG-5510.pdf")}`,
  ]);
  for (const name of readdirSync(join(folder, "out")))
    expect(
      readFileSync(join(folder, "out", name))
        .subarray(0, 5)
        .toString(),
    ).toBe("%PDF-");
});

test("proof writes a PDF for each order and, if told so, a picture of each page", async () => {
  const folder = temporaryFolder();
  const { code, out } = await burin("proof", "fixtures/raw/kestrel-left-qpdf.pdf", "--svg", "--out", folder);
  expect(code).toBe(0);
  expect(out.trim().split("\n")).toEqual([
    join(folder, "proof OG-5510.pdf"),
    join(folder, "proof OG-5510 page 1.svg"),
  ]);
  expect(readFileSync(join(folder, "proof OG-5510 page 1.svg"), "utf8")).toMatch(/^<svg .*>L-1</s);
});

test("proof of a file has no buyer to be chosen", async () => {
  const { code, out, err } = await burin(
    "proof",
    "fixtures/raw/kestrel-left-qpdf.pdf",
    "--buyer",
    "ada@vale.example",
    "--out",
    temporaryFolder(),
  );
  expect([code, out]).toEqual([2, ""]);
  expect(err).toContain("--buyer says whose order of the record is meant; leave it out with a PATH");
});

test("nothing that somebody has made is replaced", async () => {
  const folder = temporaryFolder();
  mkdirSync(join(folder, "record"));
  writeFileSync(join(folder, "record", "record.sqlite"), "ours");
  const refused = await burin("demo", folder);
  expect([refused.code, refused.err]).toEqual([
    2,
    expect.stringContaining("has files in it that no demonstration made"),
  ]);
  expect(readFileSync(join(folder, "record", "record.sqlite"), "utf8")).toBe("ours");

  const sheets = join(folder, "sheets");
  expect((await burin("blank", sheets)).code).toBe(0);
  expect((await burin("blank", sheets)).code).toBe(0);
  const [sample] = await sampleSheets();
  writeFileSync(join(sheets, "device-4.pdf"), sample?.filled ?? "");
  const again = await burin("blank", sheets);
  expect([again.code, again.err]).toEqual([2, expect.stringContaining("nothing was written")]);
  expect(readFileSync(join(sheets, "device-4.pdf")).equals(sample?.filled ?? Buffer.of())).toBe(true);
});

test.each([
  [["demo", "README.md"], "there is a file of that name"],
  [["check", "README.md/a.pdf"], "a part of the path is a file, not a folder"],
  [
    ["check", "package.json", "--out", "README.md"],
    "cannot write into README.md: there is a file of that name",
  ],
])("%j ends with 2 and a sentence", async (args, sentence) => {
  const { code, err } = await burin(...args);
  expect(code).toBe(2);
  expect(err).toContain(sentence);
  expect(err).not.toMatch(/\n\s+at /);
});

test("commands that read the record make none, and work for a user who may only read", async () => {
  const folder = temporaryFolder();
  const file = join(folder, "burin.yaml");
  const config = resolve("config");
  writeFileSync(
    file,
    `catalogue: ${config}/catalogue.yaml\neditions: ${config}/editions\nrecord: r\nfolders: [l]\nanswers: { folder: a, from: { name: A, address: a@b.example } }\ntime_zone: Etc/UTC\n`,
  );
  mkdirSync(join(folder, "l"));
  for (const words of [
    ["order", "X"],
    ["day"],
    ["proof", "X"],
    ["release", "X", "--by", "Ada", "--out", "o"],
  ])
    expect(await burin(...words, "--settings", file)).toMatchObject({
      code: 2,
      err: expect.stringContaining("there is no record"),
    });
  expect(existsSync(join(folder, "r"))).toBe(false);
  expect((await burin("work", "--once", "--settings", file)).code).toBe(0);
  // Nobody has it open, and nobody may write beside it.
  chmodSync(join(folder, "r"), 0o555);
  // Root may write anywhere, so the test becomes somebody else where that one may read the checkout.
  const other = { uid: 65_534, gid: 65_534 };
  const mayRead =
    process.getuid?.() === 0 && spawnSync(process.execPath, ["src/main.ts", "--help"], other).status === 0;
  const nobody = mayRead ? other : {};
  if ("uid" in nobody) chmodSync(folder, 0o755);
  const read = spawnSync(process.execPath, ["src/main.ts", "order", "X", "--settings", file], {
    ...nobody,
    encoding: "utf8",
  });
  expect([read.status, read.stderr]).toEqual([1, expect.stringContaining("No order “X” is known")]);
  chmodSync(join(folder, "r"), 0o755);
});

test("nobody releases an order without a name, or without a place to put it", async () => {
  expect(await burin("release", "X")).toMatchObject({ code: 2, err: expect.stringContaining("--by NAME") });
  expect(await burin("release", "X", "--by", " ")).toMatchObject({ code: 2 });
  const folder = temporaryFolder();
  const file = join(folder, "burin.yaml");
  const config = readFileSync("config/burin.yaml", "utf8").replace(
    /(catalogue|editions|glossary): (\S+)/g,
    (_, key, path) => `${key}: ${resolve("config", path)}`,
  );
  writeFileSync(file, config.replace(/^release:\n(?: .*\n)+/m, ""));
  expect(await burin("release", "X", "--by", "Ada", "--settings", file)).toMatchObject({
    code: 2,
    err: expect.stringContaining("release.folder"),
  });
});

test("a record that cannot be opened, and a folder of letters that is not there, are told in a sentence", async () => {
  const folder = temporaryFolder();
  const file = join(folder, "burin.yaml");
  const config = resolve("config");
  writeFileSync(join(folder, "r"), "");
  writeFileSync(
    file,
    `catalogue: ${config}/catalogue.yaml\neditions: ${config}/editions\nrecord: r\nfolders: [nowhere]\nanswers: { folder: a, from: { name: A, address: a@b.example } }\ntime_zone: Etc/UTC\n`,
  );
  const order = await burin("order", "X", "--settings", file);
  expect([order.code, order.err]).toEqual([2, expect.stringContaining("cannot read the record in")]);
  const connect = await burin("settings", "--connect", "--settings", file);
  expect([connect.code, connect.out]).toEqual([
    2,
    expect.stringMatching(/FAULT .*nowhere cannot be read: no such file or folder/),
  ]);
});

test("check that breaks by a fault of its own ends with 2, not with the 1 of sheets that do not pass", async () => {
  const folder = temporaryFolder();
  await burin("blank", folder);
  const broken =
    "const whole = JSON.stringify; JSON.stringify = (...all) => { if (all[2] === 2) throw new Error('out of order'); return whole(...all); };";
  const args = [
    "--import",
    `data:text/javascript,${encodeURIComponent(broken)}`,
    "src/main.ts",
    "check",
    "--json",
  ];
  const { code, err } = await new Promise<Omit<Ended, "out">>((done) => {
    execFile(process.execPath, [...args, join(folder, "device-4.pdf")], (error, _, err) =>
      done({ code: typeof error?.code === "number" ? error.code : 0, err }),
    );
  });
  expect(err).toContain("broke by a fault of its own: Error: out of order");
  expect(code).toBe(2);
});
