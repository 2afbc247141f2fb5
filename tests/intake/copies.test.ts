import { expect, test } from "vitest";
import { copiedTo } from "../../src/intake/copies.ts";
import type { Report } from "../../src/judging/report.ts";

const ana = { name: "Ana Reyes", address: "ana@quillgate.example" };
const omar = { name: "Omar Reyes", address: "omar@quillgate.example" };
const ines = "ines@brightwire.example";

const report = (held: boolean, ...managers: readonly (typeof ana | undefined)[]) => ({
  held,
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
