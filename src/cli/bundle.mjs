// Bundles the command line into build/, so that it starts in well under a second without any loader.
import { fileURLToPath } from "node:url";
import { build } from "vite";

const root = fileURLToPath(new URL("../..", import.meta.url));

/** Writes build/evaluate.mjs. */
export async function bundleCommandLine() {
  await build({
    root,
    configFile: false,
    logLevel: "error",
    publicDir: false,
    ssr: { noExternal: true },
    build: {
      ssr: "src/cli/main.ts",
      outDir: "build",
      emptyOutDir: true,
      minify: false,
      target: "node20",
      rollupOptions: { output: { entryFileNames: "evaluate.mjs", codeSplitting: false } },
    },
  });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await bundleCommandLine();
