import { expect, test } from "vitest";
import type { Words } from "../../src/catalogue/words.ts";
import { withKept } from "../../src/lettering/with-kept.ts";
import { catalogue } from "../make/config.ts";

const kept = [{ word: "Salóna", project: "Mill Race Baths" }];

test("a kept word is confirmed for its project, however both are typed, and for no other", () => {
  const { words } = withKept(catalogue, kept);
  expect(words.isConfirmed("salona", "MILL-RACE baths")).toBe(true);
  expect(words.isConfirmed("SALONA", "Mill Race Hotel")).toBe(false);
  expect(words.isConfirmed("SALONAS", "Mill Race Baths")).toBe(false);
  expect(words.isConfirmed("SALONA", "")).toBe(false);
  expect(words.suggest("KITCHN")).toEqual(catalogue.words.suggest("KITCHN"));
});

test("what the glossary confirms stays confirmed", () => {
  const isConfirmed: Words["isConfirmed"] = (word) => word === "LIGHTORIUM";
  const glossed = { words: { ...catalogue.words, isConfirmed } };
  expect(withKept(glossed, kept).words.isConfirmed("LIGHTORIUM", "Mill Race Baths")).toBe(true);
  expect(withKept(glossed, kept).words.isConfirmed("SALONA", "Mill Race Baths")).toBe(true);
  expect(withKept(glossed, [])).toBe(glossed);
});
