// Builds what ships, serves it and starts a browser, each once for all journeys.

import { chromium } from "playwright-core";
import type { TestProject } from "vitest/node";
import { serve } from "../../src/cli/serve.mjs";
import { findBrowser, LAUNCH_ARGUMENTS } from "../browser.mjs";
import { buildAsShipped } from "./as-shipped.ts";

declare module "vitest" {
  interface ProvidedContext {
    readonly url: string;
    /** Address at which the browser is to be had. */
    readonly browser: string;
  }
}

export default async function setup(project: TestProject) {
  await buildAsShipped();
  const { server, url } = await serve(0);
  project.provide("url", url);
  const browser = await chromium.launchServer({
    executablePath: await findBrowser(),
    args: LAUNCH_ARGUMENTS,
  });
  project.provide("browser", browser.wsEndpoint());
  return async () => {
    await browser.close();
    server.close();
  };
}
