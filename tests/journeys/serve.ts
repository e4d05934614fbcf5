// Builds what ships and serves it once for all journeys.

import type { TestProject } from "vitest/node";
import { serve } from "../../src/cli/serve.mjs";
import { buildAsShipped } from "./as-shipped.ts";

declare module "vitest" {
  interface ProvidedContext {
    readonly url: string;
  }
}

export default async function setup(project: TestProject) {
  await buildAsShipped();
  const { server, url } = await serve(0);
  project.provide("url", url);
  return () => server.close();
}
