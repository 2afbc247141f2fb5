import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/**/*.test.ts"],
    globalSetup: ["tests/programs.ts"],
    testTimeout: 900_000,
    hookTimeout: 300_000,
    expect: { poll: { timeout: 60_000 } },
    maxWorkers: 2,
  },
});
