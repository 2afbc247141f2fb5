/** Runs tests while one file reads as another does. Ends with 0 where all pass. Started by tests/bench/mutations.ts. */
import { readFileSync } from "node:fs";
import { createVitest } from "vitest/node";

const [file = "", text = "", ...tests] = process.argv.slice(2);
const set = { config: "tests/vitest.config.ts", root: ".", watch: false, bail: 1, reporters: [] };
const vitest = await createVitest(
  "test",
  // A cache on the disk would keep the change; and what never ends shall not take the machine's memory.
  { ...set, fsModuleCache: false, execArgv: ["--max-old-space-size=1024"] },
  {
    plugins: [
      {
        name: "changed",
        enforce: "pre",
        load: (id) => (id === file ? readFileSync(text, "utf8") : undefined),
      },
    ],
  },
);
if (tests.length === 0) vitest.config.related = [file];
const { testModules, unhandledErrors } = await vitest.runTestSpecifications(
  await vitest.getRelevantTestSpecifications(tests),
);
const isPassed = testModules.length > 0 && testModules.every((module) => module.ok());
process.exit(isPassed && unhandledErrors.length === 0 ? 0 : 1);
