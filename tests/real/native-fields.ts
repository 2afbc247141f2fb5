import { spawnSync } from "node:child_process";
import type { ReadField } from "../../src/reading/form.ts";

/** How what was read compares with what two independent programs say. */
export interface Comparison {
  forms: number;
  /** Fields on whose value the two programs agree. */
  fields: number;
  filled: number;
  right: number;
  /** Fields on which our two readers disagree, so that a person looks. */
  unsure: number;
  readonly wrong: string[];
}

/** What a program says that each field holds. */
type Values = ReadonlyMap<string, readonly string[]>;

/** Compares fields with what pdftk-java and qpdf find in the same file, where these two agree. */
export function compareWithTools(file: string, fields: readonly ReadField[]): Comparison {
  const found: Comparison = { forms: 0, fields: 0, filled: 0, right: 0, unsure: 0, wrong: [] };
  const qpdf = fieldsByQpdf(file);
  if (qpdf.size === 0) return found;
  const pdftk = fieldsByPdftk(file);
  const ours = new Map(fields.map((field) => [field.name, field]));
  for (const [name, values] of qpdf) {
    if (plain(pdftk.get(name)) !== plain(values)) continue;
    const field = ours.get(name);
    // ISO 32000-1:2008 table 227: the two give the number of a state where the form has a value for it.
    if (field?.kind === "tick" && /^\d+$/.test(plain(values)) && !/^\d*$/.test(plain(field.values))) continue;
    found.fields += 1;
    if (plain(values) !== "") found.filled += 1;
    if (field?.unsure !== undefined) found.unsure += 1;
    else if (plain(field?.values) === plain(values)) found.right += 1;
    else found.wrong.push(`${name} is ${JSON.stringify(values)}, read as ${JSON.stringify(field?.values)}`);
  }
  if (found.fields > 0) found.forms = 1;
  return found;
}

function plain(values: readonly string[] = []): string {
  const lines = values.filter((value) => value !== "Off").map((value) => value.replace(/\r\n?/g, "\n"));
  return lines
    .map((value) => value.replace(/[^\S\n]+$/gm, "").trimEnd())
    .toSorted()
    .join("\n");
}

interface QpdfField {
  readonly fullname: string;
  readonly fieldtype: string;
  readonly value: unknown;
}

function fieldsByQpdf(file: string): Values {
  const json = output("qpdf", "--json=2", "--json-key=acroform", file);
  const { acroform } = (json === "" ? {} : JSON.parse(json)) as { acroform?: { fields: QpdfField[] } };
  const fields = (acroform?.fields ?? [])
    .filter(({ fieldtype }) => ["/Tx", "/Ch", "/Btn"].includes(fieldtype))
    .map(({ fullname, value }) => ({ name: fullname, values: [value].flat().map(textOfQpdf) }));
  return withOneValue(fields);
}

/** qpdf marks text with "u:", bytes that are no text with "b:", and names with a slash. */
function textOfQpdf(value: unknown): string {
  return typeof value === "string" ? value.replace(/^(?:u:|b:|\/)/, "") : "";
}

function fieldsByPdftk(file: string): Values {
  const fields: Named[] = [];
  for (const block of output("pdftk", file, "dump_data_fields_utf8").split(/^---$/m)) {
    const name = /^FieldName: (.*)$/m.exec(block)?.[1];
    if (name === undefined) continue;
    const found = block.matchAll(/^FieldValue: ([\s\S]*?)\n(?=Field[A-Z][A-Za-z]+: |$(?![\s\S]))/gm);
    fields.push({ name, values: [...found].map(([, value = ""]) => value) });
  }
  return withOneValue(fields);
}

interface Named {
  readonly name: string;
  readonly values: readonly string[];
}

/** Fields of one name with several values are left out: nobody can say which is right. */
function withOneValue(fields: readonly Named[]): Values {
  const byName = Map.groupBy(fields, ({ name }) => name);
  return new Map(
    [...byName].flatMap(([name, all]): [string, readonly string[]][] => {
      const [first, ...more] = all.map(({ values }) => values);
      const same = first !== undefined && more.every((values) => plain(values) === plain(first));
      return same ? [[name, first]] : [];
    }),
  );
}

/** What a program prints; nothing where it could not read the file. */
function output(program: string, ...args: readonly string[]): string {
  const { stdout, status } = spawnSync(program, args, {
    encoding: "utf8",
    maxBuffer: 64_000_000,
    timeout: 60_000,
  });
  // qpdf ends with 3 when it has warned.
  return status === 0 || status === 3 ? stdout : "";
}
