// The product and an empty page of the same framework, built as they ship and served.

import { rmSync } from "node:fs";
import { join } from "node:path";
import { build, type InlineConfig, type Rolldown } from "vite";
import solid from "vite-plugin-solid";
import { serve } from "../../../src/cli/serve.mjs";

const ROOT = process.cwd();
const OUT = join(ROOT, "node_modules/.bench-page");

export type Chunk = Rolldown.OutputChunk;

export type Served = {
  readonly url: string;
  readonly chunks: readonly Chunk[];
  readonly close: () => void;
};

async function served(name: string, config: InlineConfig): Promise<Served> {
  const outDir = join(OUT, name);
  const built = await build({ ...config, logLevel: "error", build: { outDir, emptyOutDir: true } });
  const [output] = (Array.isArray(built) ? built : [built]) as readonly Rolldown.RolldownOutput[];
  const { server, url } = await serve(0, outDir);
  const close = (): void => {
    server.close();
    rmSync(outDir, { recursive: true, force: true });
  };
  const chunks = (output?.output ?? []).flatMap((file) => (file.type === "chunk" ? [file] : []));
  return { url, chunks, close };
}

export const product = (): Promise<Served> => served("product", { root: ROOT });

export const emptyPage = (): Promise<Served> =>
  served("empty", { root: join(ROOT, "tests/bench/page/empty"), configFile: false, plugins: [solid()] });
