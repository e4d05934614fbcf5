// Builds what ships and serves it once for all journeys.

import { build } from "vite";
import type { TestProject } from "vitest/node";
import { serve } from "../../src/cli/serve.mjs";

declare module "vitest" {
  interface ProvidedContext {
    readonly url: string;
  }
}

export default async function setup(project: TestProject) {
  // The runner works under NODE_ENV "test"; what is tried must be what ships.
  const before = process.env["NODE_ENV"];
  process.env["NODE_ENV"] = "production";
  await build({ logLevel: "error" });
  process.env["NODE_ENV"] = before;
  const { server, url } = await serve(0);
  project.provide("url", url);
  return () => server.close();
}
