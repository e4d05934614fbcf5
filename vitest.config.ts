import { defineConfig } from "vitest/config";
import { LongestFirst } from "./tests/longest-first.ts";

export default defineConfig({
  test: {
    sequence: { sequencer: LongestFirst },
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
          // Against hanging alone: no journey may fail because the machine has much else to do.
          testTimeout: 300_000,
          hookTimeout: 300_000,
          // Each look is a way to the browser and back, and a layout there: what comes comes a moment later.
          expect: { poll: { timeout: 60_000, interval: 150 } },
          // Told at the end of `npm test`: which passed only then.
          retry: 1,
          // Files share the browser and its pages, which know nothing of each other.
          isolate: false,
          // Each has pages of its own, which compile the program once: while they wait for them, unit tests go on beside (run.mjs).
          maxWorkers: 2,
        },
      },
    ],
  },
});
