import { expect, test } from "vitest";
import { formFaults, readEdition } from "../../src/reading/edition.ts";
import { faultLine } from "../../src/yaml/yaml.ts";
import { catalogue } from "../make/config.ts";

const head = "edition: device-x\ntitle: Form X\nform: device\n";
const read = (text: string) => readEdition(text, "x.yaml", catalogue);

test("an edition says what its file says, and nothing more", () => {
  expect(read(`${head}fields:\n  PO: { means: order, label: Order no. }\n`)).toEqual({
    ok: true,
    value: {
      name: "device-x",
      title: "Form X",
      form: "device",
      drawn: false,
      fields: [{ name: "PO", place: "order", label: "Order no.", values: {} }],
    },
  });
});

test("whatever an edition may say is read", () => {
  const text = `${head}drawn: true
blank: form.pdf
looks: abc
replaced_by: device-y
accepted_until: 2026-12-31
fields:
  "B{face}R{row}": { means: "row.{face}.{row}", label: "Button {face}, row {row}", prints: "row {row}" }
  L1: { means: layout, label: One, ticked: D1 }
  F: { means: finish, label: Finish, values: { White: CHK } }
  Foot: { means: nothing, label: Foot }
`;
  const edition = read(text);
  if (!edition.ok) throw new Error(edition.faults.map(faultLine).join("\n"));
  const { fields, ...rest } = edition.value;
  expect(rest).toEqual({
    name: "device-x",
    title: "Form X",
    form: "device",
    drawn: true,
    blank: "form.pdf",
    looks: "abc",
    replacedBy: "device-y",
    acceptedUntil: "2026-12-31",
  });
  expect(fields[0]).toEqual({
    name: "B1R1",
    place: "row.1.1",
    label: "Button 1, row 1",
    values: {},
    prints: "row 1",
  });
  expect(fields.slice(-3)).toEqual([
    { name: "L1", place: "layout", label: "One", values: {}, ticked: "D1" },
    { name: "F", place: "finish", label: "Finish", values: { White: "CHK" } },
    { name: "Foot", label: "Foot", values: {} },
  ]);
});

test("what a file cannot mean is a fault, without a catalogue too", () => {
  const faults = (text: string): string[] => formFaults(text, "x.yaml").map(faultLine);
  expect(faults(`${head}fields:\n  PO: { means: order, label: PO }\n`)).toEqual([]);
  expect(faults(`${head}fields: {}\n`)).toEqual([expect.stringContaining("needs a field")]);
  const until = `${head}accepted_until: 2026-12-31\nfields:\n  PO: { means: order, label: PO }\n`;
  expect(faults(until)).toEqual([expect.stringContaining("needs replaced_by")]);
  expect(faults(until.replace("title", "replaced_by: device-y\ntitle"))).toEqual([]);
});

test.each(["row.1.1x", "xorder", "row.0.1", "row.1.0", "row.10", "plain.plates", "billToXstreet", "noth"])(
  "“%s” is no place",
  (means) => {
    const faults = formFaults(`${head}fields:\n  A: { means: "${means}", label: A }\n`, "x.yaml");
    expect(faults.map(faultLine)).toEqual([expect.stringContaining("not a place on a sheet")]);
  },
);

test.each(["nothing", "row.12.10", "plain.plate", "row.{face}.2"])("“%s” is a place", (means) => {
  expect(formFaults(`${head}fields:\n  A: { means: "${means}", label: A }\n`, "x.yaml")).toEqual([]);
});

test.each(["edition", "title", "blank", "looks", "name", "label", "prints"])(
  "%s may be of one letter, and is not empty",
  (part) => {
    const reads = (said: string): boolean => {
      const of = (one: string, usual: string): string => JSON.stringify(one === part ? said : usual);
      const text = [
        `edition: ${of("edition", "device-x")}`,
        `title: ${of("title", "Form X")}`,
        "form: device",
        ...(part === "blank" || part === "looks" ? [`${part}: ${of(part, "")}`] : []),
        "fields:",
        `  ${of("name", "PO")}: { means: order, label: ${of("label", "PO")}, prints: ${of("prints", "PO")} }`,
      ].join("\n");
      return read(text).ok;
    };
    expect([reads("x"), reads("")]).toEqual([true, false]);
  },
);
