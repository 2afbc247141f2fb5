import { expect, test } from "vitest";
import { forTerminal } from "../../src/commands/for-terminal.ts";
import { hostileValues, safe } from "../make/hostile-values.ts";

test("a terminal is shown every letter, and nothing that it would obey", () => {
  for (const [name, value] of Object.entries(hostileValues)) safe.text(forTerminal(value), name);
  expect(forTerminal("S-1\u001b[2J\u009b2J\u202E")).toBe("S-1\uFFFD[2J\uFFFD2J\uFFFD");
  expect(forTerminal("Größe 3 mm\n\t“ÉTÉ” → 한글")).toBe("Größe 3 mm\n\t“ÉTÉ” → 한글");
});
