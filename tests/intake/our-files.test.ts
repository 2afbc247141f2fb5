import { simpleParser } from "mailparser";
import { expect, test } from "vitest";
import { keepingSender, temporaryDesk } from "../make/desk.ts";
import { post } from "../make/thread.ts";

const device = (mark: string, legend = "NORTH") => ({ mark, legend: [legend], fill: { order: "FM-90" } });

/** A desk that has answered a letter, that letter, and the files that were enclosed with the answer. */
async function answered(legend: string) {
  const sender = keepingSender();
  const desk = await temporaryDesk({ sender });
  const to = await post(desk, { sheets: [device("T-1", legend)] });
  const { attachments } = await simpleParser(Buffer.from(sender.kept[0]?.bytes ?? ""));
  const files = attachments.map(({ filename = "", content }) => ({
    file: filename,
    bytes: new Uint8Array(content),
  }));
  return { desk, to, files };
}

const checksOf = ({ problems }: Awaited<ReturnType<typeof post>>) => problems.map(({ check }) => check);

test("our own proof that comes back says nothing, alone or beside a sheet", async () => {
  const { desk, to, files } = await answered("NORTH");
  expect(files.map(({ file }) => file)).toEqual(["proof FM-90.pdf"]);
  const alone = await post(desk, { to, files });
  expect([alone.verdict, checksOf(alone)]).toEqual(["pass", []]);
  const renamed = files.map((one) => ({ ...one, file: "proof_FM-90 (1).pdf" }));
  const beside = await post(desk, { to, files: renamed, sheets: [device("T-2", "SOUTH")] });
  expect([beside.verdict, checksOf(beside), beside.sheets]).toEqual(["pass", [], 1]);
});

test("a YES beside all that was enclosed holds, and the marked copy is a sheet", async () => {
  const { desk, to, files } = await answered("HALFF");
  expect(files.map(({ file }) => file)).toEqual(["marked T-1.pdf", "proof FM-90.pdf"]);
  const yes = await post(desk, { to, text: "1 YES", files });
  expect([yes.verdict, yes.sheets]).toEqual(["pass", 1]);
});

test.each([
  ["a byte more", "proof FM-90.pdf", 1],
  ["another name", "proof FM-90 CANCELLED.pdf", 0],
])("a proof with %s is read", async (_, file, more) => {
  const { desk, to, files } = await answered("NORTH");
  const [proof] = files;
  const bytes = Buffer.concat([proof?.bytes ?? new Uint8Array(), Buffer.from("\n".repeat(more))]);
  const letter = await post(desk, { to, files: [{ file, bytes }] });
  expect(letter.verdict).toBe("person");
  expect(checksOf(letter)).toContain("letter-says-more");
});

test("a proof that comes in no thread of ours is read", async () => {
  const { desk, files } = await answered("NORTH");
  expect(checksOf(await post(desk, { subject: "Approved", files }))).toContain("not-a-form");
});
