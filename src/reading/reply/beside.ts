import type { Catalogue } from "../../catalogue/catalogue.ts";
import type { FileKind, ReadFile } from "../../trade/attachment.ts";
import { countedBy } from "../../trade/count.ts";
import type { Letter } from "../../trade/letter.ts";
import type { Sheet } from "../../trade/sheet.ts";
import type { Counts, ForPerson, Statement } from "../../trade/statement.ts";
import { showsWhatToMake, speaksAgainstIt } from "./file-names.ts";
import { type AttachedText, type KnownWords, statementsIn, statementsInFiles } from "./statements.ts";
import type { LetterFacts } from "./tallies.ts";
import { tokensOf } from "./word-bag.ts";

/** What came with a letter, and what is known of its sender's letters. */
export interface Beside extends Omit<KnownWords, "facts" | "goods"> {
  readonly files: readonly ReadFile[];
  /** Those of them that are texts. */
  readonly texts: readonly AttachedText[];
  readonly sheets: readonly Sheet[];
  /** Sheets that earlier letters of its buyer brought to the same orders. */
  readonly earlier: readonly Sheet[];
  readonly catalogue: Pick<Catalogue, "finishes" | "lettering" | "layouts">;
}

/** What a letter says beside its sheets. */
export function statementsBeside(letter: Letter, beside: Beside): Statement[] {
  const facts = { ...factsOf(letter, beside), ...finishesOf(beside) };
  const given = { ...beside, facts, goods: beside.catalogue };
  const inFiles = statementsInFiles(beside.texts, given);
  const told = new Set(inFiles.map((statement) => ("file" in statement ? statement.file : undefined)));
  const names = beside.files.filter(({ file }) => !told.has(file)).flatMap((file) => nameSays(file, facts));
  // An attached letter was read together with the letter that brings it.
  const all = [...statementsIn(letter, given), ...inFiles, ...names];
  return withoutContradictions([...Map.groupBy(all, saidBy).values()].flatMap(([first]) => first ?? []));
}

/** Counts that contradict each other may be parts of something, so a person reads them. */
function withoutContradictions(statements: readonly Statement[]): Statement[] {
  const counts = statements.flatMap((one) => (one.kind === "counts" ? one.counts : []));
  const numbers = Map.groupBy(counts, countedBy);
  const isSure = (statement: Counts): boolean =>
    statement.counts.every(
      (one) => new Set(numbers.get(countedBy(one))?.map(({ number }) => number)).size === 1,
    );
  return statements.map((one) => (one.kind !== "counts" || isSure(one) ? one : asSaid(one)));
}

/** Counts as words for a person. */
export function asSaid({ words, file, by }: Counts): ForPerson {
  if (by !== undefined) return { kind: "said", where: "manager", by, words };
  return file === undefined
    ? { kind: "said", where: "text", words }
    : { kind: "said", where: "file", file, words };
}

function saidBy(statement: Statement): string {
  return "words" in statement ? tokensOf(statement.words).join(" ") : JSON.stringify(statement);
}

/** Files that nobody reads, unless their names ask for it. Pictures, recordings and office documents a person opens anyway. */
const unread: ReadonlySet<FileKind> = new Set(["no-form", "small-picture", "other"]);

/**
 * The name of a file, if it speaks against making what is in the file; or if nobody reads the file, and its name says
 * that it shows what is to be made.
 */
function nameSays({ file, named = file, folder, kind, list }: ReadFile, facts: LetterFacts): Statement[] {
  if (kind === "decoration" || list !== undefined) return [];
  const words = folder === undefined ? named : `${folder}/${named}`;
  return speaksAgainstIt(words, facts) ||
    (unread.has(kind) && (showsWhatToMake(named, facts) || isOfStation(named, facts)))
    ? [{ kind: "said", where: "name", words }]
    : [];
}

/** Whether a file is named after a station, "S-2.png" beside sheets of S-1 and S-3. It may be one more sheet, or a sketch. */
function isOfStation(named: string, { marks }: LetterFacts): boolean {
  const seriesOf = (text: string): string | undefined =>
    /^(\p{L}{1,3})[-_ ]?\d{1,4}(?![\p{L}\p{N}])/u.exec(text)?.[1]?.toUpperCase();
  const series = seriesOf(named);
  return series !== undefined && marks.some((mark) => seriesOf(mark) === series);
}

function finishesOf({
  sheets,
  catalogue,
}: Beside): Pick<LetterFacts, "finishes" | "otherFinishes" | "called"> {
  const made = [...catalogue.finishes, ...catalogue.lettering];
  const isEverywhere = (code: string): boolean =>
    sheets.length > 0 && sheets.every(({ finish, lettering }) => finish === code || lettering === code);
  const called = (some: typeof made): string[] => some.flatMap(({ code, name }) => [code, name]);
  return {
    finishes: called(made.filter(({ code }) => isEverywhere(code))),
    otherFinishes: called(made.filter(({ code }) => !isEverywhere(code))),
    called: new Map(made.map(({ code, name }) => [code, name])),
  };
}

/** More files than these are not counted one by one. */
const mostUnread = 20;

function factsOf(
  { from, fromName }: Letter,
  { files, sheets, earlier }: Beside,
): Omit<LetterFacts, "finishes" | "otherFinishes" | "called"> {
  const all = [...sheets, ...earlier];
  const attached = files.filter(({ kind, list }) => kind !== "decoration" && list === undefined);
  // An unreadable file may be the sheet that makes a count right.
  const read = sheets.filter(({ list }) => list === undefined).length;
  const lists = attached.filter(({ kind }) => kind === "list").length;
  const unread = Math.min(mostUnread, Math.max(0, attached.length - read - lists));
  const counts = (kind: Sheet["kind"]): number[] => {
    const [came, have] = [sheets, all].map((some) => some.filter((sheet) => sheet.kind === kind).length);
    return [...new Set([...Array(unread + 1).keys()].map((more) => (came ?? 0) + more).concat(have ?? 0))];
  };
  const given = (values: readonly (string | undefined)[]): string[] => [
    ...new Set(values.filter((value) => value !== undefined)),
  ];
  return {
    numbers: given(all.map(({ order }) => order)),
    projects: given(all.map(({ project }) => project)),
    marks: given(all.map(({ mark }) => mark)),
    names: given([
      fromName,
      from?.split("@")[0],
      ...all.flatMap(({ contact, billTo, shipTo }) => [
        contact.name,
        billTo.name,
        billTo.city,
        shipTo.name,
        shipTo.city,
      ]),
    ]),
    files: given(attached.map(({ file }) => file)),
    plates: counts("plate"),
    devices: counts("device"),
    attached: [attached.length],
    sheets,
    earlier,
  };
}
