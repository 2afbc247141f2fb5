import { cpSync, globSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { basename, join } from "node:path";
import { expect, test } from "vitest";
import { CannotRun } from "../../src/commands/command.ts";
import { configure } from "../../src/commands/configuration.ts";
import { settings } from "../../src/commands/settings.ts";
import { places } from "../../src/trade/place.ts";
import { temporaryFolder } from "../make/desk.ts";

/** A configuration with the trade's catalogue and editions in a folder of its own, some files of it changed. */
function configured(changes: Readonly<Record<string, (text: string) => string>>): string {
  const folder = temporaryFolder();
  for (const name of ["burin.yaml", "burin-mail.yaml", "glossary.txt"])
    cpSync(join("config", name), join(folder, name));
  cpSync("fixtures/trade", folder, { recursive: true });
  for (const [name, change] of Object.entries(changes)) {
    writeFileSync(join(folder, name), change(readFileSync(join(folder, name), "utf8")));
  }
  return folder;
}

/** What `burin settings` prints for them, paths seen from the folder, or why it cannot run. */
async function printed(folder: string, ...options: readonly string[]): Promise<string[]> {
  const lines: string[] = [];
  const io = { out: (text: string) => lines.push(text), err: () => undefined, progress: () => undefined };
  try {
    await settings.run(["--settings", join(folder, "burin.yaml"), ...options], io);
  } catch (cause) {
    if (!(cause instanceof CannotRun)) throw cause;
    lines.push(cause.message);
  }
  return lines.join("\n").replaceAll(`${folder}/`, "").split("\n");
}

test("the faults of settings, catalogue, glossary and every edition are printed at once", async () => {
  const folder = configured({
    "burin.yaml": (text) => text.replace("America/Chicago", "Mars/Olympus"),
    "catalogue.yaml": (text) => text.replace("widths:", "width:"),
    "glossary.txt": (text) => `stray\n${text}`,
    "editions/device-26c.yaml": (text) => text.replace("form: device", "form: devise"),
    "editions/plate-26c.yaml": (text) => text.replace("means: order,", "means: oder,"),
    "editions/device-25a.yaml": (text) => text.replace("device-26c", "device-27a"),
  });
  expect(await printed(folder)).toEqual([
    expect.stringMatching(/^burin\.yaml:\d+:1 time_zone: not a time zone/),
    expect.stringMatching(/^catalogue\.yaml:\d+:\d+ plate\.widths: /),
    expect.stringMatching(/^catalogue\.yaml:\d+:\d+ plate\.width: unknown key$/),
    "glossary.txt:1:1: stands under no section",
    expect.stringMatching(/^editions\/device-25a\.yaml:5:1 replaced_by: no edition is named device-27a/),
    expect.stringMatching(/^editions\/device-26c\.yaml:5:1 form: /),
    expect.stringMatching(
      /^editions\/plate-26c\.yaml:\d+:\d+ fields\.order_number\.means: not a place on a sheet/,
    ),
  ]);
});

test("one fault hides no other: in a file, between its keys, in the files that it names", async () => {
  const folder = configured({
    "burin-mail.yaml": (text) =>
      text
        .replace("time_zone: America/Chicago", "time_zone: Etc/UTC\ntime_zone: Mars/Olympus")
        .replace("      password_env: ORDERS_PASSWORD\n", "")
        .replace("to: service@", "to: stations@")
        .replace("authority: mx", "autority: mx"),
    "catalogue.yaml": (text) =>
      text
        .replace("email: orders@quillgate.example", "email: orders")
        .replace("widths: [69.85, 115.89", "widths: [69.85, 15.89")
        .replace("code: SOT", "code: CHK"),
    "editions/marrowby-device-1.yaml": (text) =>
      text.replace("form: device", "form: device\nblank: form.pdf"),
  });
  const lines = await printed(folder, "--settings", join(folder, "burin-mail.yaml"));
  expect(lines.map((line) => line.replace(/:\d+:\d+/, ""))).toEqual([
    expect.stringMatching(/^burin-mail\.yaml mailboxes\.0\.imap: needs exactly one of/),
    expect.stringMatching(/^burin-mail\.yaml trust: needs authority or name_servers/),
    "burin-mail.yaml trust.autority: unknown key",
    expect.stringMatching(/^burin-mail\.yaml notice\.to: is an address of this desk itself/),
    expect.stringMatching(/^burin-mail\.yaml time_zone: not a time zone/),
    "burin-mail.yaml: Map keys must be unique",
    "catalogue.yaml maker.email: Invalid email address",
    "catalogue.yaml plate.widths.1: a plate with more gangs must be wider",
    "catalogue.yaml finishes.1.code: the code CHK is taken by an entry above",
    expect.stringMatching(
      /^editions\/marrowby-device-1\.yaml fields\.MS\.Colour\.values\.Black: .*cannot be “SOT”/,
    ),
    "editions/marrowby-device-1.yaml blank: cannot read editions/form.pdf: no such file or folder",
  ]);
});

test("a blank form that is no PDF is a fault, and so is a folder without an edition", async () => {
  const folder = configured({
    "editions/marrowby-device-1.yaml": (text) => `${text}blank: ../glossary.txt\n`,
  });
  expect(await printed(folder)).toEqual([
    expect.stringMatching(/^editions\/marrowby-device-1\.yaml:\d+:1 blank: glossary\.txt is no PDF$/),
  ]);
  for (const file of globSync(join(folder, "editions/*"))) rmSync(file);
  expect(await printed(folder)).toEqual([expect.stringMatching(/^no edition \(\.yaml\) is in .*editions$/)]);
});

test("settings that are no YAML still lead to the faults of the rest", async () => {
  const folder = configured({
    "burin.yaml": (text) => `${text}\nnotice: { to: a@b.example\n`,
    "glossary.txt": (text) => `stray\n${text}`,
  });
  expect(await printed(folder)).toEqual([
    expect.stringMatching(/^burin\.yaml:\d+:\d+: Flow map/),
    "glossary.txt:1:1: stands under no section",
  ]);
});

test("settings that stand elsewhere read what stands beside them, and every file read is named", async () => {
  const folder = configured({
    "burin.yaml": (text) => text.replace(/^glossary: .*\n/m, ""),
    "glossary.txt": (text) => `${text}\n[words]\nZWINDLE\n`,
  });
  const { catalogue } = await configure(join(folder, "burin.yaml"));
  expect(catalogue.words.isWord("ZWINDLE")).toBe(true);
  const files = (await printed(folder)).flatMap((line) => /\S+\.(?:yaml|txt)$/.exec(line) ?? []);
  const editions = globSync("fixtures/trade/editions/*.yaml").toSorted();
  expect(files).toEqual([
    "burin.yaml",
    "catalogue.yaml",
    "glossary.txt",
    ...editions.map((file) => `editions/${basename(file)}`),
  ]);
});

test("the address domains that are shared are counted, and listed by --domains", async () => {
  const folder = configured({
    "burin.yaml": (text) => `${text}\ntrust: { shared_domains: [freemail.example], not_shared: [gmx.de] }\n`,
  });
  const listed = await printed(folder, "--domains");
  expect(listed).toEqual(expect.arrayContaining(["freemail.example", "gmail.com"]));
  expect(listed).not.toContain("gmx.de");
  expect(await printed(folder)).toContainEqual(
    expect.stringMatching(new RegExp(`^shared {5}${listed.length} address domains`)),
  );
});

test("files that are not there are told beside the faults of others", async () => {
  const folder = configured({ "catalogue.yaml": (text) => text.replace("widths:", "width:") });
  rmSync(join(folder, "glossary.txt"));
  rmSync(join(folder, "editions"), { recursive: true });
  expect(await printed(folder)).toEqual([
    expect.stringMatching(/^catalogue\.yaml:\d+:\d+ plate\.widths: /),
    expect.stringMatching(/^catalogue\.yaml:\d+:\d+ plate\.width: unknown key$/),
    "cannot read glossary.txt: no such file or folder",
    expect.stringMatching(/^cannot read the folder of editions .*editions: no such file or folder$/),
  ]);
});

test("what an edition's own words stand for is held against the catalogue of this desk", async () => {
  const folder = configured({ "catalogue.yaml": (text) => text.replaceAll("CHK", "LIM") });
  expect(await printed(folder)).toEqual([
    expect.stringMatching(
      /^editions\/marrowby-device-1\.yaml:\d+:\d+ fields\.MS\.Colour\.values\.White: “Finish” cannot be “CHK”; there are LIM, SOT/,
    ),
  ]);
});

test("a sheet of our own that cannot be drawn is a fault, for its edition's sake or for the catalogue's", async () => {
  const extra = "  stamp: { means: nothing, label: Stamp }\n";
  expect(await printed(configured({ "editions/plate-26c.yaml": (text) => text + extra }))).toEqual([
    expect.stringMatching(
      /^editions\/plate-26c\.yaml:6:1 drawn: cannot be drawn: .*no room for its field stamp$/,
    ),
  ]);
  const finish = "  - { code: F, name: F, colour: '#123456', devices: true, plates: [1, 2] }\n";
  const many = (text: string): string =>
    text.replace(
      /^finishes:\n/m,
      `finishes:\n${Array.from({ length: 60 }, (_, i) => finish.replaceAll("F", `F${i}`)).join("")}`,
    );
  expect(await printed(configured({ "catalogue.yaml": many }))).toEqual([
    expect.stringMatching(
      /^editions\/device-26c\.yaml:6:1 drawn: cannot be drawn: the sheet has no room left/,
    ),
    expect.stringMatching(
      /^editions\/plate-26c\.yaml:6:1 drawn: cannot be drawn: the sheet has no room left/,
    ),
  ]);
});

test("a form that does not ask for what is needed is worth a warning, unless it is no longer accepted", async () => {
  const lacking = (text: string): string => text.replace(/^ {2}Finish: .*\n/m, "");
  const [warning, ...more] = (
    await printed(
      configured({
        "editions/plate-26c.yaml": (text) => text.replace(/^ {2}(?:station_mark|gangs): .*\n/gm, ""),
        "editions/device-25a.yaml": lacking,
      }),
    )
  ).filter((line) => line.startsWith("warning") && !line.includes("marrowby"));
  expect(warning).toMatch(
    /^warning {4}editions\/plate-26c\.yaml:\d+:1 fields: has no field for mark, gangs, so nobody is asked for it$/,
  );
  expect(more).toEqual([]);
  const accepted = configured({
    "editions/device-25a.yaml": (text) =>
      lacking(text).replace("replaced_by: device-26c", "replaced_by: device-26c\naccepted_until: 2026-12-31"),
  });
  const lines = await printed(accepted);
  expect(lines).toContainEqual(
    expect.stringMatching(/device-25a\.yaml:\d+:1 fields: has no field for legend-place, finish/),
  );
  expect(lines).toContainEqual(
    expect.stringContaining(
      "device-25a: Device sheet, edition 25a, 31 fields, replaced by device-26c, accepted until 2026-12-31;",
    ),
  );
  expect(lines.at(-1)).toBe("No faults.");
});

test("--places lists what a field may mean, and needs no settings for it", async () => {
  const lines: string[] = [];
  const io = { out: (text: string) => lines.push(text), err: () => undefined, progress: () => undefined };
  expect(await settings.run(["--places", "--settings", "nowhere.yaml"], io)).toBe(0);
  const named = lines
    .join("\n")
    .split("\n")
    .map((line) => line.split(/ {2,}/)[0]);
  expect(named.slice(2, 2 + Object.keys(places).length)).toEqual(Object.keys(places));
});

test("fields that only an edition or only its blank form has are warned about, while its sheets are accepted", async () => {
  const folder = temporaryFolder();
  cpSync("config", folder, { recursive: true });
  const file = join(folder, "editions", "device-3.yaml");
  const written = readFileSync(file, "utf8");
  const warnings = async (text: string) => {
    writeFileSync(file, text);
    return (await printed(folder)).filter((line) => line.startsWith("warning") && line.includes("device-3"));
  };
  expect(await warnings(written)).toEqual([]);
  const other = written.replace(/^ {2}notes: .*\n/m, "").replace("  plate_plain:", "  plate_bare:");
  expect(await warnings(other)).toEqual([
    "warning    editions/device-3.yaml:9:1 fields: does not name plate_plain and notes of its blank form: a sheet with something there is for a person",
    "warning    editions/device-3.yaml:9:1 fields: names plate_bare, which its blank form does not have, so that each sheet of it seems to be damaged: name the fields that the form has",
  ]);
  expect(await warnings(other.replace(/^accepted_until: .*\n/m, ""))).toEqual([]);
});

test("a blank form that cannot be read is warned about", async () => {
  const folder = temporaryFolder();
  cpSync("config", folder, { recursive: true });
  writeFileSync(join(folder, "editions", "device-3.pdf"), "%PDF-1.7\nand nothing more");
  expect(await printed(folder)).toContainEqual(
    expect.stringMatching(
      /^warning {4}editions\/device-3\.yaml:9:1 fields: cannot be held against its blank form: ./,
    ),
  );
});
