import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: "unit",
          include: ["tests/**/*.test.ts"],
          exclude: ["tests/journeys/**"],
          setupFiles: ["tests/setup.ts"],
          // Files share what they import, which holds nothing between calls but what it would work out again.
          isolate: false,
          testTimeout: 300_000,
          maxWorkers: 2,
        },
      },
      {
        test: {
          name: "journeys",
          include: ["tests/journeys/*.test.ts"],
          globalSetup: ["tests/journeys/serve.ts"],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          // Files share the browser and its pages, which know nothing of each other.
          isolate: false,
          // Two at a time: each waits for its page more than it works.
          maxWorkers: 2,
        },
      },
    ],
  },
});
