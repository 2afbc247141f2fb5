import { PDFDocument } from "pdf-lib";
import { beforeAll, describe, expect, test } from "vitest";
import { type Judged, judge } from "../../src/reading/judge.ts";
import { openFile } from "../../src/reading/open-file.ts";
import type { SheetFile } from "../../src/reading/sheet.ts";
import { catalogue, editions } from "../make/config.ts";
import { answersFor } from "../make/filled.ts";
import { oddForm } from "../make/odd-pdf.ts";
import { filledForm, flattened, plainPdf } from "../make/pdf.ts";

const known = { editions, catalogue };
const [device25a] = editions;
let sheet: Uint8Array;

beforeAll(async () => {
  if (device25a === undefined) throw new Error("no edition");
  sheet = await filledForm(device25a, answersFor(device25a));
});

async function opened(bytes: Uint8Array, file: SheetFile = { id: "1/1", file: "a.pdf" }): Promise<Judged> {
  return judge(await openFile(bytes), file, known);
}

async function kindOf(bytes: Uint8Array): Promise<string> {
  const { file, sheet: read } = await opened(bytes);
  expect(read === undefined).toBe(file.kind !== "sheet");
  return file.kind;
}

describe("an attachment is", () => {
  test("a sheet, told by its fields; its names go with it", async () => {
    const read = await opened(sheet, { id: "1/2", file: "invoice (2).pdf", named: "invoice.pdf" });
    expect(read.file).toEqual({ id: "1/2", file: "invoice (2).pdf", named: "invoice.pdf", kind: "sheet" });
    expect(read.sheet).toMatchObject({ id: "1/2", file: "invoice (2).pdf", named: "invoice.pdf" });
  });

  test("a sheet behind other bytes, so long as its header starts within the first 1024", async () => {
    expect(await kindOf(Buffer.concat([Buffer.from("\r\n\r\n"), sheet]))).toBe("sheet");
  });

  test("a form that no edition knows", async () => {
    expect(await kindOf(await oddForm(({ widget }) => [widget({ FT: "Tx", T: "tax_year" })]))).toBe(
      "unknown-form",
    );
  });

  test("a PDF without fields", async () => {
    expect(await kindOf(await plainPdf("Drawing 7 of 12, Larkspur Library"))).toBe("no-form");
  });

  test("a PDF whose only field is for a signature", async () => {
    expect(await kindOf(await oddForm(({ widget }) => [widget({ FT: "Sig", T: "sign" })]))).toBe("no-form");
  });

  test("a sheet of ours that was flattened", async () => {
    expect(await kindOf(await flattened(sheet))).toBe("printed");
  });

  test("locked, when it opens only with a password", async () => {
    const pdf = await PDFDocument.load(sheet);
    pdf.encrypt({ userPassword: "secret", ownerPassword: "owner" });
    expect(await kindOf(await pdf.save())).toBe("locked");
  });

  test("not locked, when a password restricts only what may be done with it", async () => {
    const pdf = await PDFDocument.load(sheet);
    pdf.encrypt({ userPassword: "", ownerPassword: "owner" });
    expect(await kindOf(await pdf.save())).toBe("sheet");
  });

  test("damaged, when nothing of it can be read", async () => {
    expect(await kindOf(Buffer.from("%PDF-1.7\n"))).toBe("damaged");
  });

  test("something else, when it is no PDF", async () => {
    expect(await kindOf(new Uint8Array())).toBe("other");
    expect(await kindOf(Buffer.from("GIF89a"))).toBe("small-picture");
  });
});
