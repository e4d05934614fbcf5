// Builds what ships, serves it and finds a browser, each once for all journeys.

import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { TestProject } from "vitest/node";
import { serve } from "../../src/cli/serve.mjs";
import { findBrowser } from "../browser.mjs";
import { builtOnce, withDemoOf } from "./as-shipped.ts";
import { DEMO_SEASONS } from "./starters.ts";

declare module "vitest" {
  interface ProvidedContext {
    /** Address of what ships. */
    readonly url: string;
    /** Address of the same with a demo of fewer years, for journeys that its number does not matter to. */
    readonly brief: string;
    /** Path of the browser. */
    readonly browser: string;
  }
}

export default async function setup(project: TestProject) {
  await builtOnce();
  const { server, url } = await serve(0);
  project.provide("url", url);
  const folder = mkdtempSync(join(tmpdir(), "eavesdrip-brief-"));
  withDemoOf(DEMO_SEASONS, folder);
  const brief = await serve(0, folder);
  project.provide("brief", brief.url);
  project.provide("browser", await findBrowser());
  return () => {
    server.close();
    brief.server.close();
    rmSync(folder, { recursive: true });
  };
}
