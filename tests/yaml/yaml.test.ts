import { expect, test } from "vitest";
import { z } from "zod";
import { faultLine, readInSpiteOfFaults, readYaml, wherever } from "../../src/yaml/yaml.ts";

const schema = z.strictObject({
  name: z.string(),
  sizes: z.array(z.strictObject({ width: z.number().positive() })),
});

function faultsOf(text: string): string[] {
  const read = readYaml(text, "shop.yaml", schema);
  return read.ok ? [] : read.faults.map(faultLine);
}

test("text that fits is the value it describes", () => {
  expect(readYaml("name: a\nsizes: [{ width: 3 }]", "shop.yaml", schema)).toEqual({
    ok: true,
    value: { name: "a", sizes: [{ width: 3 }] },
  });
});

test("every fault is told at once, where it stands", () => {
  expect(faultsOf("name: 7\nsizes:\n  - width: -2\n  - { width: 3, hight: 4 }\n")).toEqual([
    "shop.yaml:1:1 name: Invalid input: expected string, received number",
    "shop.yaml:3:5 sizes.0.width: Too small: expected number to be >0",
    "shop.yaml:4:17 sizes.1.hight: unknown key",
  ]);
});

test("a missing key is shown where it should have stood", () => {
  expect(faultsOf("sizes: []\n")).toEqual([
    "shop.yaml:1:1 name: Invalid input: expected string, received undefined",
  ]);
});

test("text that is no YAML is told by line and column", () => {
  const [fault] = faultsOf("name: [a\nsizes: ]");
  expect(fault).toMatch(/^shop\.yaml:\d+:\d+: /);
});

test("a key written twice is a fault", () => {
  expect(faultsOf("name: a\nname: b\nsizes: []")).toEqual(["shop.yaml:2:1: Map keys must be unique"]);
});

test("a key written twice, or an alias of nothing, is told beside what else is wrong", () => {
  expect(faultsOf("name: a\nname: 7\nsizes: []\nhight: 4")).toEqual([
    "shop.yaml:1:1 name: Invalid input: expected string, received number",
    "shop.yaml:2:1: Map keys must be unique",
    "shop.yaml:4:1 hight: unknown key",
  ]);
  expect(faultsOf("name: *nobody\nsizes: []")).toEqual([
    expect.stringMatching(/^shop\.yaml:1:1: Unresolved alias/),
  ]);
});

test("what can be read of a faulty text is read", () => {
  const some = z.object({ name: z.string() });
  expect(readInSpiteOfFaults("name: a\nsizes: [", some)).toEqual({ name: "a" });
  expect(readInSpiteOfFaults("name: 7", some)).toBe(undefined);
});

test("a rule between keys is held wherever those keys are sound", () => {
  const ruled = z
    .strictObject({ least: z.number(), most: z.number(), name: z.string() })
    .refine(({ least, most }) => least <= most, {
      error: "is less than least",
      path: ["most"],
      ...wherever({ least: z.number(), most: z.number() }),
    });
  const says = (text: string) => {
    const read = readYaml(text, "a.yaml", ruled);
    return read.ok ? [] : read.faults.map(({ path, what }) => `${path}: ${what}`);
  };
  expect(says("least: 3\nmost: 2\nname: 7")).toEqual([
    "most: is less than least",
    "name: Invalid input: expected string, received number",
  ]);
  expect(says("least: a\nmost: 2\nname: b")).toEqual([
    "least: Invalid input: expected number, received string",
  ]);
});
