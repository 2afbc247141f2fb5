import { defineConfig } from "vitest/config";
import { BaseSequencer, type TestSpecification } from "vitest/node";

/** Files that take minutes. Begun last, they would keep one core busy while the other has nothing left to do. */
const long = /\/reading\/reply\/(?:splices|sets)\.test\.ts$/;

class LongFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    // oxlint-disable-next-line unicorn/no-array-sort -- it sorts no array of its own
    const sorted = await super.sort(files);
    return sorted.toSorted(
      (one, other) => Number(long.test(other.moduleId)) - Number(long.test(one.moduleId)),
    );
  }
}

export default defineConfig({
  test: {
    include: ["tests/**/*.test.ts"],
    globalSetup: ["tests/programs.ts"],
    testTimeout: 900_000,
    hookTimeout: 300_000,
    expect: { poll: { timeout: 60_000 } },
    maxWorkers: 2,
    sequence: { sequencer: LongFirst },
  },
});
