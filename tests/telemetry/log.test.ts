import { spawnSync } from "node:child_process";
import { expect, test } from "vitest";

/** What a log writes when a program of its own uses it. */
function logged(code: string): Record<string, unknown> {
  const program = `import { openLog } from "./src/telemetry/log.ts"; const log = openLog(); ${code}`;
  const { stderr } = spawnSync(process.execPath, ["--input-type=module", "-e", program], {
    encoding: "utf8",
  });
  return JSON.parse(stderr) as Record<string, unknown>;
}

test("a line is one JSON object with its time, fields and sentence", () => {
  expect(logged('log.info({ letter: 7, kind: "sent" }, "answer handed over")')).toMatchObject({
    letter: 7,
    kind: "sent",
    msg: "answer handed over",
    time: expect.stringMatching(/^\d{4}-\d\d-\d\dT/),
  });
});

test("addresses and legends that slip in are blotted out", () => {
  const line = logged(
    'log.warn({ from: "ines@b.example", text: "ENTRY", nested: { address: "x@y.example" } }, "odd")',
  );
  expect(JSON.stringify(line)).not.toMatch(/example|ENTRY/);
});

test("a failure is logged with its message", () => {
  expect(logged('log.warn({ cause: new Error("disk full") }, "put aside")')).toMatchObject({
    cause: { type: "Error", message: "disk full" },
  });
});
