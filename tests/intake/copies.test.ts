import { expect, test } from "vitest";
import { copiedTo } from "../../src/intake/copies.ts";
import type { Report } from "../../src/judging/report.ts";

const ana = { name: "Ana Reyes", address: "ana@quillgate.example" };
const omar = { name: "Omar Reyes", address: "omar@quillgate.example" };
const ines = "ines@brightwire.example";

const report = (held: boolean, ...managers: readonly (typeof ana | undefined)[]) => ({
  held,
  withdrawn: [] as Report["withdrawn"],
  orders: managers.map((manager) =>
    manager === undefined ? {} : { managing: { manager, waits: false } },
  ) as unknown as Report["orders"],
});

test.each([
  ["whose one order he has", report(false, ana), ines, [ana]],
  ["whose orders he has, all of them", report(false, ana, ana), ines, [ana]],
  ["of which another has one order", report(false, ana, omar), ines, []],
  ["of which nobody has one order", report(false, ana, undefined), ines, []],
  ["of which nobody has the first order", report(false, undefined, ana), ines, []],
  ["about no order", report(false), ines, []],
  ["that goes to himself", report(false, ana), ana.address, []],
  ["to a held letter", report(true, ana), ines, []],
])("a copy of an answer %s", (_name, made, recipient, copies) => {
  expect(copiedTo(made, recipient)).toEqual(copies);
});

const gone = (leaves: "some" | "nothing", manager?: typeof ana) =>
  [{ leaves, ...(manager === undefined ? {} : { managing: { manager } }) }] as unknown as Report["withdrawn"];

test.each([
  ["withdraws his one order", report(false), gone("nothing", ana), [ana]],
  ["withdraws an order of nobody beside his", report(false, ana), gone("nothing"), []],
  ["withdraws an order of another beside his", report(false, ana), gone("nothing", omar), []],
  ["withdraws some of his order", report(false, ana), gone("some"), [ana]],
])("a copy of an answer to a letter that %s", (_name, made, withdrawn, copies) => {
  expect(copiedTo({ ...made, withdrawn }, ines)).toEqual(copies);
});
