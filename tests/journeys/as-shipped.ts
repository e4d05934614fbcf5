// The build as it ships.

import { build, type InlineConfig } from "vite";

/** Builds under NODE_ENV "production", whatever the test runner works under: what is tried must be what ships. */
export async function buildAsShipped(config: InlineConfig = {}): Promise<void> {
  const before = process.env["NODE_ENV"];
  process.env["NODE_ENV"] = "production";
  try {
    await build({ logLevel: "error", ...config });
  } finally {
    process.env["NODE_ENV"] = before;
  }
}
