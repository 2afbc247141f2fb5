import { z } from "zod";
import type { SheetKind } from "../trade/place.ts";
import { type Fault, faultIn, inOrder, readYaml } from "../yaml/yaml.ts";
import type { Makes } from "./choices.ts";
import { type Edition, formFaults, readEdition } from "./edition.ts";

/** A file of an edition. */
export interface EditionText {
  readonly file: string;
  readonly text: string;
}

/** An edition with the file that says it. */
export interface EditionFile extends EditionText {
  readonly edition: Edition;
}

/** What editions say of each other. It is read even if the rest of a file is faulty. */
const headSchema = z.object({
  edition: z.string(),
  form: z.enum(["device", "plate"]).optional().catch(undefined),
  replaced_by: z.string().optional().catch(undefined),
});

interface Head extends EditionText {
  readonly name: string;
  readonly form: SheetKind | undefined;
  readonly replacedBy?: string | undefined;
}

/**
 * The texts of all editions → the editions without a fault, and every fault in them and between them, file by file.
 */
export function readEditions(
  texts: readonly EditionText[],
  makes: Makes | undefined,
): { readonly editions: readonly EditionFile[]; readonly faults: readonly Fault[] } {
  const heads = texts.flatMap(headOf);
  // A file that cannot be read may be the edition that another names.
  const areAllKnown = heads.length === texts.length;
  const editions: EditionFile[] = [];
  const faults: Fault[] = [];
  for (const written of texts) {
    const { text, file } = written;
    const read = makes === undefined ? undefined : readEdition(text, file, makes);
    const between = heads
      .filter((head) => head.file === file)
      .flatMap((head) =>
        [...amongOthers(head, heads, areAllKnown)].map(([key, what]) => faultIn(text, file, [key], what)),
      );
    if (read?.ok === true) {
      const twin = editions.find(({ edition }) => isTwin(edition, read.value));
      if (twin !== undefined)
        between.push(
          faultIn(
            text,
            file,
            ["fields"],
            `cannot be told from ${twin.edition.name}: the same fields, and none for the edition`,
          ),
        );
      editions.push({ ...written, edition: read.value });
    }
    const within = read === undefined ? formFaults(text, file) : read.ok ? [] : read.faults;
    faults.push(...inOrder([...within, ...between]));
  }
  return { editions, faults };
}

function headOf({ file, text }: EditionText): Head[] {
  const read = readYaml(text, file, headSchema);
  if (!read.ok) return [];
  const { edition, form, replaced_by } = read.value;
  return [{ file, text, name: edition, form, replacedBy: replaced_by }];
}

function* amongOthers(
  head: Head,
  heads: readonly Head[],
  areAllKnown: boolean,
): Iterable<readonly [key: string, what: string]> {
  const { name, form, replacedBy } = head;
  const first = heads.find((other) => plain(other.name) === plain(name));
  if (first !== undefined && first !== head)
    yield ["edition", `${first.file} is the edition ${first.name} already`];
  if (replacedBy === undefined) return;
  const newer = heads.find((other) => other.name === replacedBy);
  if (newer === undefined) {
    const named = heads.map((one) => one.name).join(", ");
    if (areAllKnown) yield ["replaced_by", `no edition is named ${replacedBy}; there are ${named}`];
  } else if (newer.form !== undefined && form !== undefined && newer.form !== form)
    yield ["replaced_by", `${replacedBy} is a ${newer.form} sheet`];
  else if (leadsBack(head, heads))
    yield ["replaced_by", "leads back to this edition, so that none is in use"];
}

function leadsBack(start: Head, heads: readonly Head[]): boolean {
  let at: Head | undefined = start;
  for (let steps = 0; at !== undefined && steps <= heads.length; steps++) {
    at = heads.find(({ name }) => name === at?.replacedBy);
    if (at === start) return true;
  }
  return false;
}

/** Whether nothing tells the sheets of two editions apart. */
function isTwin(one: Edition, other: Edition): boolean {
  const says = ({ fields }: Edition): boolean => fields.some(({ place }) => place === "edition");
  const names = ({ fields }: Edition): string => JSON.stringify(fields.map(({ name }) => name).toSorted());
  return names(one) === names(other) && !(says(one) && says(other));
}

function plain(text: string): string {
  return text.toLowerCase().replace(/[^\p{L}\p{N}]/gu, "");
}
