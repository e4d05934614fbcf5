import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/**/*.test.ts"],
    exclude: ["tests/journeys/**"],
    environment: "node",
    testTimeout: 120_000,
  },
});
