import { expect, test } from "vitest";
import { speaksAgainst } from "../../../src/reading/reply/doubt.ts";

test.each(["'", "’", "‘", "ʼ", "´", "`", "′", " ", ""])(
  "don%st says the opposite, in any writing",
  (mark) => {
    for (const word of ["don", "Isn", "WON"]) {
      expect(speaksAgainst(`${word}${mark}t`)).toBe(true);
      expect(speaksAgainst(`${word}${mark}t`.normalize("NFKC"))).toBe(true);
    }
  },
);

test.each(["Holding & Stop Ltd", "it was mistyped", "stopped", "changing", "👎", "⛔️ 2", "refusal"])(
  "“%s” may speak against it",
  (text) => {
    expect(speaksAgainst(text)).toBe(true);
  },
);

test.each(["Grant and Tina", "on the corner", "donation", "the isthmus", "yes to all", "👍"])(
  "“%s” does not",
  (text) => {
    expect(speaksAgainst(text)).toBe(false);
  },
);
