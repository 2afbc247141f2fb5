import { areBuyersWords } from "../checks/asked.ts";
import type { Verdict } from "../trade/problem.ts";
import type { FileId } from "../trade/sheet.ts";
import { type Files, nameOf } from "./named-files.ts";
import { counted, listed } from "./one-line.ts";
import type { Group, Item, ItemPicture, Section } from "./outline.ts";
import { replyLine } from "./reply-line.ts";
import { type Filed, foldSame, type Told } from "./told.ts";
import { mostNames, whereOf } from "./where.ts";

/** In reading order: what the reader must do, then what others do, then what is only worth knowing. */
const titles = {
  fail: "To fix",
  confirm: "Please confirm",
  person: "A person will look at this",
  waiting: "Still to come",
  pass: "Worth knowing",
} as const satisfies Record<Verdict, string>;
const kinds = Object.keys(titles) as Verdict[];

/** A number of the answer: what is told there, which files it concerns, and what it asks. */
export interface Numbered {
  readonly number: number;
  readonly told: Told;
  readonly kind: Verdict;
  readonly files: readonly FileId[];
}

/**
 * Problems → sections of numbered items, and the same numbers with their files. Numbers are given in reading order.
 * `keepsWords`: orders keep what waits for a person, and a reply can take it back.
 */
export function sectionsOf(
  filed: readonly Filed[],
  files: Files,
  { numberOf, keepsWords }: { numberOf: (told: Told) => number; keepsWords: boolean },
): { sections: Section[]; numbers: Numbered[] } {
  const numbers: Numbered[] = [];
  const itemOf = (told: Told): Item => {
    const number = numberOf(told);
    // A note on the order as a whole leads nobody to a sheet.
    numbers.push({
      number,
      told,
      kind: told.kind,
      files: told.kind === "pass" && told.under !== undefined ? [] : told.files,
    });
    const where = whereOf(told, files);
    const pictures = picturesOf(told, number);
    return {
      number,
      says: told.says,
      fix: told.fix,
      ...(told.kind === "confirm" || (keepsWords && told.problems.every(areBuyersWords))
        ? { reply: replyLine(number, told.problems) }
        : {}),
      ...(where === undefined ? {} : { where }),
      ...(pictures.length === 0 ? {} : { pictures }),
    };
  };
  const order = [...files.keys()];
  const told = foldSame(filed, files).toSorted((a, b) => rank(a, order) - rank(b, order));
  const sections = kinds.flatMap((kind): Section[] => {
    const members = told.filter((one) => one.kind === kind);
    const groups = [...Map.groupBy(members, (one) => JSON.stringify(headingOf(one, files))).values()].flatMap(
      ([first, ...more]): Group[] =>
        first === undefined ? [] : [{ ...headingOf(first, files), items: [first, ...more].map(itemOf) }],
    );
    return groups.length === 0 ? [] : [{ kind, title: titles[kind], groups }];
  });
  return { sections, numbers };
}

/** So many pictures of one item. More would show nothing new. */
const mostPictures = 2;

/** Pictures of what a problem is about, named after its number. */
export function picturesOf({ problems }: Told, number: number): ItemPicture[] {
  const spots = problems.flatMap((problem) => problem.spots);
  const names = [...new Set(spots.flatMap(({ seen }) => seen?.picture ?? []))].slice(0, mostPictures);
  return names.map((name, i) => ({ name, file: `number ${number}${i === 0 ? "" : ` ${i + 1}`}.png` }));
}

/** The whole order first, then what several sheets share, then sheet by sheet as they came. */
function rank({ under, files: [first, ...more] }: Told, order: readonly FileId[]): number {
  if (under !== undefined || first === undefined) return -2;
  return more.length > 0 ? -1 : order.indexOf(first);
}

function headingOf(told: Told, files: Files): Omit<Group, "items"> {
  if (told.under !== undefined) return { heading: told.under };
  const names = told.files.map((id) => nameOf(files, id));
  const [first, ...more] = names;
  if (first !== undefined && more.length === 0) return { heading: first.name, hint: first.what };
  const list = listed(
    names.map(({ name }) => name),
    mostNames,
  );
  const noun = names.every(({ sheet }) => sheet !== undefined) ? "sheet" : "file";
  return { heading: `On ${counted(names.length, noun)}`, hint: list };
}
