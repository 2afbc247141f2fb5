import type { ListFault } from "../../../trade/list-fault.ts";
import { isList, type ListFacts, type Table } from "../list-facts.ts";
import { sharedTexts } from "./shared-texts.ts";
import { looksIn } from "./styles.ts";
import { readWorksheet } from "./worksheet.ts";
import { readXml } from "./xml.ts";

/** The parts of a package by their names: the text of one; undefined if it cannot be unpacked within its limit. */
export interface Package {
  readonly names: readonly string[];
  readonly textOf: (name: string) => string | undefined;
}

/** A workbook as a station list; undefined for any other workbook. ECMA-376-1 §18.2 */
export function listInWorkbook(parts: Package): ListFacts | undefined {
  try {
    return readWorkbook(parts);
  } catch {
    // Not what its format says. As an office document it is named, and nothing of it is read.
    return undefined;
  }
}

const workbookPart = "xl/workbook.xml";

function readWorkbook({ names, textOf }: Package): ListFacts | undefined {
  const must = (name: string): string => {
    const text = textOf(name);
    if (text === undefined) throw new Error(`no part ${name}`);
    return text;
  };
  const targets = targetsIn(must("xl/_rels/workbook.xml.rels"));
  const partOf = (type: string): string | undefined => targets.find((one) => one.type === type)?.part;
  const [texts, styles] = [partOf("sharedStrings"), partOf("styles")];
  const shared = {
    texts: texts === undefined ? [] : sharedTexts(must(texts)),
    looks: styles === undefined ? [] : looksIn(must(styles)),
  };
  const tables: Table[] = [];
  const more: ListFault[] = [...strangeParts(names)];
  for (const { name, id, hidden } of sheetsIn(must(workbookPart))) {
    const target = targets.find((one) => one.id === id);
    if (target?.type !== "worksheet") {
      more.push({ what: "part", where: name });
      continue;
    }
    const xml = textOf(target.part);
    if (xml === undefined) {
      more.push({ what: "too-long", where: name });
      continue;
    }
    const read = readWorksheet(xml, name, shared);
    tables.push(read.table);
    more.push(...read.more);
    if (read.table.rows.length === 0) continue;
    if (hidden) more.push({ what: "hidden", where: name });
    if (setAside.test(name)) more.push({ what: "set-aside", where: name });
  }
  return isList(tables) ? { kind: "list", tables, more } : undefined;
}

/** Names of sheets that somebody keeps and no longer means, or not yet. "Old Wing" is a place. */
const setAside =
  /(?<![\p{L}\p{N}])(?:void|obsolete|outdated|superseded|cancell?ed|deleted|drafts?|do not|don['’]?t|not (?:used|final|for)|unused|back-?up|previous|on hold|old (?:list|rows?|version|rev\p{L}*|cop(?:y|ies)))(?![\p{L}\p{N}])|(?<!\p{L})old\W*$|^old\W*\d*\W*$/iu;

interface Target {
  readonly id: string;
  /** The last word of its type. */
  readonly type: string;
  readonly part: string;
}

/** ECMA-376-2 §9.3: what a part leads to. */
function targetsIn(xml: string): Target[] {
  const targets: Target[] = [];
  readXml(xml, {
    open: (tag, { Id: id = "", Type: type = "", Target: target = "" }) => {
      if (tag !== "Relationship") return;
      const part = target.startsWith("/") ? target.slice(1) : `xl/${target}`;
      targets.push({ id, type: type.split("/").at(-1) ?? "", part });
    },
  });
  return targets;
}

function sheetsIn(xml: string): { name: string; id: string; hidden: boolean }[] {
  const sheets: { name: string; id: string; hidden: boolean }[] = [];
  readXml(xml, {
    open: (tag, { name = "", id = "", state = "visible" }) => {
      if (tag === "sheet") sheets.push({ name, id, hidden: state !== "visible" });
    },
  });
  return sheets;
}

/** Parts that add nothing to what the cells say. */
const harmless =
  /^(?:\[Content_Types\]\.xml|_rels\/.*|docProps\/.*|docMetadata\/.*|customXml\/.*|xl\/(?:workbook\.xml|sharedStrings\.xml|styles\.xml|calcChain\.xml|metadata\.xml|_rels\/.*|theme\/.*|worksheets\/.*|printerSettings\/.*|tables\/.*|persons\/.*))$/i;

const known: readonly (readonly [RegExp, ListFault["what"]])[] = [
  [/^xl\/(?:comments|threadedComments)/i, "comment"],
  [/^xl\/(?:drawings|media|charts|embeddings|ink)/i, "picture"],
  [/^xl\/(?:vba|externalLinks|connections|activeX|ctrlProps|webextensions)/i, "program"],
];

/** Parts that may say something about the order which no cell says, each kind once. */
function strangeParts(names: readonly string[]): ListFault[] {
  const strange = names
    .filter((name) => !name.endsWith("/") && !harmless.test(name))
    .map(
      (name) =>
        ({ what: known.find(([pattern]) => pattern.test(name))?.[1] ?? "part", where: name }) as const,
    );
  const kinds = new Map(strange.map((one) => [one.what, one]));
  // Comments are drawn by a part of their own.
  if (kinds.has("comment") && !names.some((name) => /^xl\/media/i.test(name))) kinds.delete("picture");
  return [...kinds.values()];
}
