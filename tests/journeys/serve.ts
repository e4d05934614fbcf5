// Builds what ships, serves it and starts a browser, each once for all journeys.

import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium } from "playwright-core";
import type { TestProject } from "vitest/node";
import { serve } from "../../src/cli/serve.mjs";
import { findBrowser, LAUNCH_ARGUMENTS } from "../browser.mjs";
import { builtOnce, withDemoOf } from "./as-shipped.ts";
import { DEMO_SEASONS } from "./starters.ts";

declare module "vitest" {
  interface ProvidedContext {
    /** Address of what ships. */
    readonly url: string;
    /** Address of the same with a demo of fewer years, for journeys that its number does not matter to. */
    readonly brief: string;
    /** Address at which the browser is to be had. */
    readonly browser: string;
  }
}

/**
 * Compiling for speed begins a hundred times later than usual, and what is no longer used is looked for by one thread alone. A
 * journey's page lives for seconds, and half of what its opening cost went into optimizing functions hardly called again. What
 * the page works out is the same.
 */
const FOR_SECONDS = [
  "--invocation-count-for-maglev=40000",
  "--invocation-count-for-maglev-osr=10000",
  "--invocation-count-for-turbofan=300000",
  "--invocation-count-for-osr=50000",
  "--single-threaded-gc",
];

export default async function setup(project: TestProject) {
  await builtOnce();
  const { server, url } = await serve(0);
  project.provide("url", url);
  const folder = mkdtempSync(join(tmpdir(), "eavesdrip-brief-"));
  withDemoOf(DEMO_SEASONS, folder);
  const brief = await serve(0, folder);
  project.provide("brief", brief.url);
  const browser = await chromium.launchServer({
    executablePath: await findBrowser(),
    args: [...LAUNCH_ARGUMENTS, `--js-flags=${FOR_SECONDS.join(",")}`],
  });
  project.provide("browser", browser.wsEndpoint());
  return async () => {
    await browser.close();
    server.close();
    brief.server.close();
    rmSync(folder, { recursive: true });
  };
}
