import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readSettings } from "../../src/settings/settings.ts";
import { faultLine } from "../../src/yaml/yaml.ts";

const text = readFileSync("config/burin.yaml", "utf8");

test("the settings that come with the project have no fault", () => {
  expect(readSettings(text, "burin.yaml").ok).toBe(true);
});

test("so has the sample for a real mailbox, and the secrets that it names are in the sample environment", () => {
  const sample = readFileSync("config/burin-mail.yaml", "utf8");
  const read = readSettings(sample, "burin-mail.yaml");
  expect(read.ok ? [] : read.faults.map(faultLine)).toEqual([]);
  const environment = readFileSync("config/burin.env.example", "utf8");
  const named = [...sample.matchAll(/_env: (\w+)/g)].map(([, name]) => name ?? "");
  expect(named.length).toBeGreaterThan(0);
  for (const name of named) expect(environment).toContain(`${name}=`);
});

test("a time zone that is none is told", () => {
  const read = readSettings(text.replace("America/Chicago", "Mars/Olympus"), "burin.yaml");
  expect(read.ok ? [] : read.faults.map(faultLine)).toEqual([
    expect.stringMatching(/^burin\.yaml:\d+:1 time_zone: not a time zone/),
  ]);
});
