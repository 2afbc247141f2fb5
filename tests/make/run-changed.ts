/** Runs tests while one file reads as another does. Started by tests/bench/mutations.ts, which sends what to try. */
import { createVitest } from "vitest/node";

/** Tests to run while a file reads so. No tests stand for all that import the file, however far. */
export interface Trial {
  readonly file: string;
  readonly text: string;
  readonly tests: readonly string[];
}

let now: Trial | undefined;
const set = {
  config: "tests/vitest.config.ts",
  root: ".",
  watch: false,
  bail: 1,
  isolate: false,
  reporters: [],
};
const vitest = await createVitest(
  "test",
  // A cache on the disk would keep the change; and what never ends shall not take the machine's memory.
  { ...set, fsModuleCache: false, execArgv: ["--max-old-space-size=1024"] },
  {
    plugins: [
      {
        name: "changed",
        enforce: "pre",
        load: (id) => (id === now?.file ? now.text : undefined),
      },
    ],
  },
);

/** Whether all tests pass. */
async function passes(next: Trial): Promise<boolean> {
  for (const { file } of [now ?? next, next]) vitest.invalidateFile(file);
  now = next;
  // It forgets this when the tests have run.
  if (next.tests.length === 0) vitest.config.related = [next.file];
  const tests = await vitest.getRelevantTestSpecifications([...next.tests]);
  const { unhandledErrors } = await vitest.runTestSpecifications(tests);
  // Its own list of test files has those of earlier trials too.
  const passed = tests.every(({ testModule }) => testModule?.ok() === true);
  return tests.length > 0 && passed && unhandledErrors.length === 0;
}

process.on("message", (next: Trial) => void passes(next).then((passed) => process.send?.(passed)));
process.on("disconnect", () => process.exit());
