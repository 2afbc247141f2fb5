import { expect } from "vitest";
import { darkOf } from "../../src/answer/dark.ts";

/** Expects that a page's head has the dark style, and that each colour of its body has a counterpart there. */
export function expectDarkColours(html: string): void {
  const { writing, grounds, lines } = darkOf;
  const [head = "", body = ""] = html.split("</head>");
  expect(head).toContain('<meta name="color-scheme" content="light dark">');
  expect(head).toContain("@media (prefers-color-scheme:dark)");
  const used = (pattern: RegExp): string[] =>
    [...new Set([...body.matchAll(pattern)].map(([, colour = ""]) => colour))].toSorted();
  // White is written on bands alone, which stay as they are.
  const written = used(/[;"]color:(#\w+)/g).filter((colour) => colour !== "#ffffff");
  expect(written).not.toEqual([]);
  expect(Object.keys(writing)).toEqual(expect.arrayContaining(written));
  expect(Object.keys({ ...writing, ...lines })).toEqual(expect.arrayContaining(used(/ solid (#\w+)/g)));
  expect(Object.keys({ ...writing, ...grounds })).toEqual(expect.arrayContaining(used(/background:(#\w+)/g)));
}
