import { mkdir, readdir, rm, utimes, writeFile } from "node:fs/promises";
import { basename, join, relative, resolve } from "node:path";
import { stringify } from "yaml";
import { fileWords } from "../answer/enclosures.ts";
import { dateIn } from "../calendar/dates.ts";
import { buildLetters } from "../demo/build.ts";
import type { NoteDescription } from "../demo/describe.ts";
import { loadScenario, type Scenario } from "../demo/load.ts";
import { playNote } from "../demo/notes.ts";
import { type AnswerFiles, demoPage } from "../demo/page.ts";
import { hashPassword } from "../desk/passwords.ts";
import { answerId } from "../intake/compose.ts";
import type { Desk } from "../intake/desk.ts";
import { takeLetter } from "../intake/take.ts";
import { putAnswer } from "../mail/folder.ts";
import type { Account } from "../ports/accounts.ts";
import type { Clock } from "../ports/clock.ts";
import type { Mailbox } from "../ports/mailbox.ts";
import type { Sender } from "../ports/sender.ts";
import type { LetterRecord } from "../trade/record.ts";
import { CannotRun, defineCommand, type Io, reasonOf } from "./command.ts";
import { type Configuration, configure, projectFile } from "./configuration.ts";
import { serveUntilStopped } from "./desk.ts";
import { openDesk } from "./wire.ts";

export const demo = defineCommand({
  name: "demo",
  words: [0, 1],
  details:
    "DIR (default out/demo) has to be new, empty, or made by an earlier demonstration, which is then replaced.",
  options: {
    desk: { type: "boolean", tells: "then serve the desk's page on its record, until Ctrl-C" },
  },
  async run([folder = "out/demo"], { desk: serves }, io) {
    const configuration = await prepare(folder);
    const clock = letterClock();
    const { desk, mailboxes, close } = await openDesk(configuration, {
      clock,
      secret: "known to everybody, so that every run makes the same answers",
      log: { info: () => undefined, warn: ({ cause }, sentence) => io.err(`${sentence}: ${String(cause)}`) },
    });
    const scenario = await loadScenario(projectFile("fixtures"));
    const files = await buildMailbox(scenario, configuration, folder, desk, io);
    const letters = await answerAll(scenario.notes, desk, mailboxes, clock, folder, io);
    await desk.store.accounts.save(await demoAccount(), "demo", clock.now());
    await close();

    const page = join(folder, "index.html");
    const { maker } = configuration.catalogue;
    const rows = await Promise.all(
      letters.map(async (letter, i) => {
        const letterFile = files[i] ?? "";
        return { letter, letterFile, ...(await answerFilesOf(letter, letterFile, folder)) };
      }),
    );
    await writeFile(page, await demoPage(maker.name, rows, configuration.settings.time_zone));
    io.out(closing(folder, page, configuration, letters));
    if (serves) await serveUntilStopped(configuration, io);
    return 0;
  },
});

/** Who may come in to the demonstration's desk. */
const visitor = { user: "rosa", name: "Rosa Imhoff", password: "a quill for every wall" } as const;

async function demoAccount(): Promise<Account> {
  return { ...visitor, password: await hashPassword(visitor.password), role: "administer", isShut: false };
}

/** Where an answer and its enclosures lie, seen from the folder. */
async function answerFilesOf(letter: LetterRecord, letterFile: string, folder: string): Promise<AnswerFiles> {
  if (letter.answer === undefined) return { enclosures: [] };
  const path = answerPath(letter, letterFile);
  const names: string[] = await readdir(join(folder, path)).catch(() => []);
  return { answerFile: `${path}.html`, enclosures: names.toSorted().map((name) => join(path, name)) };
}

/** An answer is called after its letter and the orders that it is about. */
function answerPath({ orders }: LetterRecord, letterFile: string): string {
  return join("answers", [basename(letterFile, ".eml"), ...orders.map(fileWords)].join(" "));
}

/** Empties what an earlier run left, and writes the settings of a desk that lives in this folder. */
async function prepare(folder: string): Promise<Configuration> {
  await makeRoom(folder).catch((cause: unknown) => {
    throw cause instanceof CannotRun
      ? cause
      : new CannotRun(`cannot use ${folder}: ${reasonOf(cause)}`, { cause });
  });
  const { settings } = await configure();
  const file = join(folder, "burin.yaml");
  const ours = (path: string): string => relative(resolve(folder), projectFile("config", path));
  await writeFile(
    file,
    stringify({
      ...settings,
      catalogue: ours(settings.catalogue),
      editions: ours(settings.editions),
      glossary: ours(settings.glossary ?? "glossary.txt"),
      record: "record",
      folders: ["letters"],
      answers: { ...settings.answers, folder: "answers" },
      ...(settings.release === undefined ? {} : { release: { ...settings.release, folder: "released" } }),
    }),
  );
  return configure(file);
}

/** Marks a folder as one that a demonstration made and may replace. */
const mark = ".made-by-burin-demo";

async function makeRoom(folder: string): Promise<void> {
  await mkdir(folder, { recursive: true });
  const there = await readdir(folder);
  if (there.length > 0 && !there.includes(mark))
    throw new CannotRun(`${folder} has files in it that no demonstration made; name another folder`);
  await writeFile(join(folder, mark), "");
  for (const part of ["letters", "answers", "record", "released"])
    await rm(join(folder, part), { recursive: true, force: true });
  for (const part of ["letters", "answers"]) await mkdir(join(folder, part), { recursive: true });
}

/** Builds every described letter into the mailbox. Returns their files in the order in which they came. */
async function buildMailbox(
  scenario: Scenario,
  { settings, ...made }: Configuration,
  folder: string,
  { secret }: Desk,
  io: Io,
): Promise<string[]> {
  const from = settings.answers.from.address;
  const files: string[] = [];
  let sheets = 0;
  for await (const { description, bytes } of buildLetters(
    scenario.letters,
    { ...made, ...scenario },
    { to: from, answerId: (letter) => answerId(letter, from, secret) },
  )) {
    sheets += description.attachments.length;
    const file = join("letters", `${String(files.length + 1).padStart(2, "0")}-${description.name}.eml`);
    await writeFile(join(folder, file), bytes);
    const received = new Date(description.date);
    await utimes(join(folder, file), received, received);
    files.push(file);
    io.progress(`Filling in sheets and writing letters: ${files.length} of ${scenario.letters.length}`);
  }
  io.progress("");
  io.out(`Built ${files.length} letters with ${sheets} attachments. Answering them:\n`);
  return files;
}

/** Answers letter by letter, prints a line for each, and puts the answers into the folder. */
async function answerAll(
  notes: readonly NoteDescription[],
  open: Desk,
  mailboxes: readonly Mailbox[],
  clock: LetterClock,
  folder: string,
  io: Io,
): Promise<LetterRecord[]> {
  const letters: LetterRecord[] = [];
  const sent = new Map<string, Uint8Array>();
  const sender: Sender = {
    send: ({ messageId, bytes }) => {
      sent.set(messageId, bytes);
      return Promise.resolve({ kind: "sent", words: "put into the folder" });
    },
    find: (messageId) => Promise.resolve(sent.has(messageId)),
  };
  const desk = { ...open, sender };
  const { signal } = new AbortController();
  const numbers = new Map<string, number>();
  const left = [...notes];
  /** Plays what our own people do before a moment. */
  const playUntil = async (moment: number): Promise<void> => {
    for (let [note] = left; note !== undefined && Date.parse(note.date) < moment; [note] = left) {
      left.shift();
      clock.set(new Date(note.date));
      await playNote(desk, note, (name) => numbers.get(name) ?? 0);
      io.out(`${" ".repeat(35)}${note.by}: ${note.why} (${note.does})`);
    }
  };
  for (const mailbox of mailboxes)
    for await (const mail of mailbox.letters({ once: true, signal })) {
      const bytes = await mail.bytes();
      if (bytes === undefined) continue;
      await playUntil(mail.receivedAt.getTime());
      clock.set(mail.receivedAt);
      const { letter } = await takeLetter(desk, bytes, mail.receivedAt);
      const record = await desk.store.letters.read(letter);
      letters.push(record);
      numbers.set(nameOf(mail.name), letter);
      const answer = sent.get(record.answer?.messageId ?? "");
      if (answer !== undefined) await putAnswer(join(folder, answerPath(record, mail.name)), answer);
      io.out(line(record, basename(mail.name, ".eml")));
    }
  await playUntil(Number.POSITIVE_INFINITY);
  return letters;
}

/** "03-terminal-first.eml" is the letter "terminal-first". */
function nameOf(file: string): string {
  return basename(file, ".eml").replace(/^\d+-/, "");
}

function line({ verdict = "person", orders, problems }: LetterRecord, name: string): string {
  const counts = Map.groupBy(problems, ({ check }) => check);
  const found = [...counts].map(([check, { length }]) => (length === 1 ? check : `${check} ×${length}`));
  return `${name.padEnd(34)} ${orders.join(", ").padEnd(20)} ${verdict.toUpperCase().padEnd(8)} ${found.join(", ")}`.trimEnd();
}

interface LetterClock extends Clock {
  readonly set: (moment: Date) => void;
}

/** A clock that stands at a letter's arrival until the next has come. */
function letterClock(): LetterClock {
  let standsAt = new Date(0);
  return {
    set: (moment) => {
      standsAt = moment;
    },
    now: () => standsAt,
  };
}

function closing(
  folder: string,
  page: string,
  { settings }: Configuration,
  letters: readonly LetterRecord[],
): string {
  const verdicts = Map.groupBy(letters, ({ verdict = "person" }) => verdict);
  const counts = [...verdicts].map(([verdict, { length }]) => `${length} ${verdict}`).join(", ");
  const own = `--settings ${join(folder, "burin.yaml")}`;
  const days = [...new Set(letters.map(({ receivedAt }) => dateIn(receivedAt, settings.time_zone)))];
  const last = new Map(letters.flatMap(({ orders, verdict }) => orders.map((number) => [number, verdict])));
  const [order] = [...last].findLast(([, verdict]) => verdict === "waiting") ?? [];
  return [
    "",
    `${letters.length} letters: ${counts}.`,
    "",
    `Letters, answers, proofs and marked sheets in a browser:  ${page}`,
    `The same as files, as they would be sent:                 ${join(folder, "answers")}`,
    `Customer service's page on this record:                   npm run demo -- --desk`,
    `  (or: burin desk ${own}); sign in as ${visitor.user} with “${visitor.password}”`,
    "",
    "Try next, once “npm install -g .” has installed the command:",
    `  burin day ${days[0]} ${own}`,
    `  burin order ${order} ${own}`,
    "  burin explain row-too-long",
  ].join("\n");
}
