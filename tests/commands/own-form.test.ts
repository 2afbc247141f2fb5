import { cpSync, existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { PDFDocument, PDFHexString, PDFName } from "pdf-lib";
import { expect, test } from "vitest";
import { CannotRun, type Command } from "../../src/commands/command.ts";
import { edition } from "../../src/commands/edition.ts";
import { openForm } from "../../src/commands/own-form.ts";
import { settings } from "../../src/commands/settings.ts";
import { showForm } from "../../src/commands/show-form.ts";
import { plainSheet } from "../../src/drawing/plain-sheet.ts";
import { editions, maker, trade } from "../make/config.ts";
import { temporaryFolder } from "../make/desk.ts";
import { fillForm, flattened, plainPdf } from "../make/pdf.ts";
import { directReader } from "../make/reader.ts";

/** What a command prints, and what it ends with; for one that cannot run, why. */
async function ran(command: Command, ...args: readonly string[]) {
  const out: string[] = [];
  const err: string[] = [];
  const io = {
    out: (text: string) => out.push(text),
    err: (text: string) => err.push(text),
    progress: () => undefined,
  };
  try {
    const code = await command.run(args, io);
    return { code, out: out.join("\n"), err };
  } catch (cause) {
    if (!(cause instanceof CannotRun)) throw cause;
    return { code: 2, out: out.join("\n"), err: [cause.message] };
  }
}

/** A desk of the trade with its files in a folder of their own. */
function desk(): { readonly folder: string; readonly file: string } {
  const folder = temporaryFolder();
  for (const name of ["burin.yaml", "glossary.txt"]) cpSync(join("config", name), join(folder, name));
  cpSync("fixtures/trade", folder, { recursive: true });
  return { folder, file: join(folder, "burin.yaml") };
}

const [foreign = editions[0]] = editions.filter(({ name }) => name === "marrowby-device-1");

/** A distributor's form in a folder, as it is or filled in. */
async function formIn(folder: string, answers?: Parameters<typeof fillForm>[1]): Promise<string> {
  if (foreign === undefined) throw new Error("the trade has no form of others");
  const blank = await plainSheet(foreign, trade.catalogue);
  const path = join(folder, answers === undefined ? "our-form.pdf" : "filled.pdf");
  writeFileSync(path, answers === undefined ? blank : await fillForm(blank, answers));
  return path;
}

test("a form of one's own is read once its skeleton is completed and lies among the editions", async () => {
  const { folder, file } = desk();
  const forms = join(folder, "editions");
  const form = await formIn(forms);
  const target = join(forms, "our-form.yaml");
  // The edition that the form was drawn from has the same fields.
  writeFileSync(join(forms, "marrowby-device-1.yaml"), "");
  const others = readFileSync("fixtures/trade/editions/device-25a.yaml", "utf8");
  writeFileSync(
    join(forms, "marrowby-device-1.yaml"),
    others.replaceAll("device-25a", "device-0").replaceAll(/^ {2}(\w+):/gm, "  o$1:"),
  );
  const written = await ran(edition, form, "--out", target, "--settings", file);
  expect(written).toEqual({
    code: 0,
    out: "",
    err: [
      `wrote ${target}`,
      "34 fields: 34 guessed, 0 mapped to nothing",
      "no field was found for legend-place",
    ],
  });
  // What the distributor calls a colour is asked for, in a sentence each.
  const before = await ran(settings, "--settings", file);
  expect(before.code).toBe(2);
  expect(
    before.err
      .join("\n")
      .split("\n")
      .map((line) => line.replace(/^.*?: “/, "“")),
  ).toEqual([
    ...["White", "Black", "Beige"].map(() =>
      expect.stringMatching(/^“Finish” cannot be “\?”; there are CHK, /),
    ),
    ...["Black", "White"].map(() => expect.stringMatching(/^“Lettering” cannot be “\?”; there are INK, /)),
  ]);
  const completed = readFileSync(target, "utf8")
    .replace(/(MS\.Colour: .*)White: "\?", Black: "\?", Beige: "\?"/, "$1White: CHK, Black: SOT, Beige: OAT")
    .replace(/(MS\.Text: .*)Black: "\?", White: "\?"/, "$1Black: INK, White: MLK");
  writeFileSync(target, completed);
  const after = await ran(settings, "--settings", file);
  expect(after).toMatchObject({ code: 0, err: [] });
  expect(after.out).toMatch(
    /edition {4}our-form: our-form, 34 fields; its pages are compared with the blank form /,
  );
  expect(after.out).toMatch(/warning .*our-form\.yaml:.*has \d+ guesses still/);
  const filled = await formIn(folder, {
    "MS.Job": "Larkspur Library",
    "MS.Colour": "Black",
    "MS.Key1.Line1": "ALL ON",
  });
  const shown = await ran(settings, "--form", filled, "--settings", file);
  expect(shown.code).toBe(0);
  expect(shown.out).toContain("filled.pdf is a sheet of our-form: our-form.");
  expect(shown.out).toContain("  project: “Larkspur Library”\n      Job name; MS.Job; page 1 at ");
  expect(shown.out).toContain("  finish: “Black”, read as SOT\n");
  expect(shown.out).toContain("  row.1.1: “ALL ON”\n");
  expect(shown.out.split("\n").filter((line) => line.length > 80)).toEqual([]);
});

test("a skeleton is printed without --out, and no file is written over", async () => {
  const { folder, file } = desk();
  const form = await formIn(folder);
  const printed = await ran(edition, form, "--settings", file);
  expect(printed.out).toMatch(/^edition: our-form$/m);
  expect(printed.out).toMatch(/^blank: our-form\.pdf$/m);
  expect(printed.out).toContain(`"MS.Key{face}.Line{row}": { means: "row.{face}.{row}"`);
  const target = join(folder, "mine.yaml");
  writeFileSync(target, "mine");
  expect(await ran(edition, form, "--out", target, "--settings", file)).toEqual({
    code: 2,
    out: "",
    err: [`${target} is there already; nothing was written`],
  });
  expect(readFileSync(target, "utf8")).toBe("mine");
  mkdirSync(join(folder, "deep"));
  await ran(edition, form, "--out", join(folder, "deep", "ours.yaml"), "--settings", file);
  expect(readFileSync(join(folder, "deep", "ours.yaml"), "utf8")).toMatch(/^blank: "\.\.\/our-form\.pdf"$/m);
});

test("a skeleton says which places have no field, and which fields mean nothing yet", async () => {
  const { folder, file } = desk();
  const pdf = await PDFDocument.create();
  const page = pdf.addPage();
  for (const [i, name] of ["Project", "Wingspan", "Layout"].entries())
    pdf
      .getForm()
      .createTextField(name)
      .addToPage(page, { x: 100, y: 700 - 40 * i, width: 80, height: 16 });
  const form = join(folder, "short.pdf");
  writeFileSync(form, await pdf.save());
  const { out, err } = await ran(edition, form, "--settings", file);
  expect(err).toEqual([
    "3 fields: 2 guessed, 1 mapped to nothing: Wingspan",
    expect.stringMatching(
      /^no field was found for contact\.name, bill\.name, .*, order, .*finish, lettering$/,
    ),
  ]);
  expect(out).toMatch(
    /^# Such a sheet has to ask for these too, and no field was found: contact\.name, bill\.name, /m,
  );
  expect(out).toMatch(/^# Mapped to nothing yet: Wingspan\.$/m);
});

/** An XFA form that has nothing for other viewers. */
async function dynamic(): Promise<Uint8Array> {
  const pdf = await PDFDocument.create();
  pdf.addPage();
  const form = pdf.context.obj({ Fields: [], XFA: PDFHexString.fromText("<xdp/>") });
  pdf.catalog.set(PDFName.of("AcroForm"), pdf.context.register(form));
  return pdf.save();
}

test("what is no form to be read is told in one sentence, by both commands", async () => {
  const { folder, file } = desk();
  const whole = readFileSync(await formIn(folder));
  const files: Record<string, [Uint8Array, string]> = {
    "text.pdf": [Buffer.from("no PDF at all"), "is no PDF"],
    "bare.pdf": [await plainPdf("Order form"), "has no fields to fill in"],
    "flat.pdf": [await flattened(whole), "has no fields to fill in"],
    "locked.pdf": [
      readFileSync("fixtures/raw/kirkmere-locked-qpdf.pdf"),
      "opens only with a password: save it without one",
    ],
    "xfa.pdf": [
      await dynamic(),
      "is an XFA form, which only one viewer can show: save it as an ordinary form (AcroForm)",
    ],
    "half.pdf": [whole.subarray(0, 400), "is damaged: open it and save it anew"],
  };
  for (const [name, [bytes, why]] of Object.entries(files)) {
    const path = join(folder, name);
    writeFileSync(path, bytes);
    await expect(openForm(path, directReader)).rejects.toThrow(new CannotRun(`${path} ${why}`));
  }
  const locked = join(folder, "locked.pdf");
  const expected = { code: 2, out: "", err: [`${locked} opens only with a password: save it without one`] };
  expect(await ran(edition, locked, "--out", join(folder, "x.yaml"), "--settings", file)).toEqual(expected);
  expect(await ran(settings, "--form", locked, "--settings", file)).toEqual(expected);
  expect(existsSync(join(folder, "x.yaml"))).toBe(false);
  const nowhere = join(folder, "nowhere.pdf");
  await expect(openForm(nowhere, directReader)).rejects.toThrow(
    `cannot read ${nowhere}: no such file or folder`,
  );
});

test("a form of no edition is shown beside the nearest one", async () => {
  const { folder, file } = desk();
  const pdf = await PDFDocument.load(readFileSync(await formIn(folder)));
  const form = pdf.getForm();
  for (const name of ["MS.Job", "MS.PO", "MS.Contact", "MS.Mail", "MS.Tel"])
    form.removeField(form.getField(name));
  form.createTextField("Wingspan").addToPage(pdf.getPage(0), { x: 10, y: 10, width: 30, height: 10 });
  const path = join(folder, "other.pdf");
  writeFileSync(path, await pdf.save());
  const { code, out } = await ran(settings, "--form", path, "--settings", file);
  expect(code).toBe(2);
  expect(out).toMatch(/^other\.pdf is a sheet of no edition\.\nNearest is marrowby-device-1: /);
  expect(out.replace(/\s+/g, " ")).toContain("It has 29 of its 34 fields, and 1 others.");
  expect(out).toContain("Fields that it lacks\n  MS.Contact, MS.Mail, MS.Tel, MS.Job, MS.PO\n");
  expect(out).toContain("Fields that the edition does not have\n  Wingspan\n");
});

test("what is typed where nothing reads it is shown, and where two readers differ", async () => {
  const { folder, file } = desk();
  const pdf = await PDFDocument.load(readFileSync(await formIn(folder)));
  const form = pdf.getForm();
  const more = form.createTextField("Wingspan");
  more.setText("12 feet");
  more.addToPage(pdf.getPage(0), { x: 10, y: 10, width: 60, height: 10 });
  form.getTextField("MS.Pos").setText("third");
  // The value of a box and its look contradict each other.
  const { dict } = form.getCheckBox("MS.DropShip").acroField;
  dict.set(PDFName.of("V"), PDFName.of("Yes"));
  dict.set(PDFName.of("AS"), PDFName.of("Off"));
  const path = join(folder, "odd.pdf");
  writeFileSync(path, await pdf.save());
  const { code, out } = await ran(settings, "--form", path, "--settings", file);
  expect(code).toBe(0);
  expect(out).toContain("Not understood\n  position: “third”; wants a number such as 2, or 2 of 4\n");
  expect(out).toContain("Filled in, and mapped to nothing\n  Wingspan: “12 feet”\n");
  expect(out).toMatch(/The two readers disagree\n {2}MS\.DropShip: “\w*” or “\w*”\n/);
});

test.each([
  ["kestrel-left-qpdf.pdf", "device-3", "row.1.1: “ARRIVAL”"],
  ["kestrel-right-pdfjs.pdf", "device-3", "project: “Kestrel House Hotel”"],
  ["kestrel-plate-pdftk.pdf", "plate-3", "gangs: “2”"],
  ["kirkmere-desk-chromium.pdf", "device-3", "project: “"],
  ["marrowby-two-layouts-mupdf.pdf", "marrowby-device-2", "finish: “Black”, read as COAL"],
])("%s, which another program filled in, is shown as %s", async (name, known, line) => {
  const { lines, isKnown } = await showForm(`fixtures/raw/${name}`, maker);
  expect(isKnown).toBe(true);
  const text = lines.join("\n");
  expect(text.replace(/\s+/g, " ")).toContain(`${name} is a sheet of ${known}: `);
  expect(text).toContain(`\n  ${line}`);
  expect(text.split("\n").filter((one) => one.length > 80)).toEqual([]);
});
