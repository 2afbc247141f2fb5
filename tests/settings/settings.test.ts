import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readSettings } from "../../src/settings/settings.ts";
import { faultLine } from "../../src/yaml/yaml.ts";

const text = readFileSync("config/burin.yaml", "utf8");

test("the settings that come with the project have no fault", () => {
  expect(readSettings(text, "burin.yaml").ok).toBe(true);
});

test("a time zone that is none is told", () => {
  const read = readSettings(text.replace("America/Chicago", "Mars/Olympus"), "burin.yaml");
  expect(read.ok ? [] : read.faults.map(faultLine)).toEqual([
    expect.stringMatching(/^burin\.yaml:\d+:1 time_zone: not a time zone/),
  ]);
});
