// Starts the bundled command line, bundling it again first when a source is newer than the bundle.
import { readdirSync, statSync } from "node:fs";
import { fileURLToPath } from "node:url";

const root = new URL("../..", import.meta.url);
const bundle = new URL("build/evaluate.mjs", root);

function newestChange(folder) {
  let newest = 0;
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const place = new URL(entry.isDirectory() ? `${entry.name}/` : entry.name, folder);
    newest = Math.max(newest, entry.isDirectory() ? newestChange(place) : statSync(place).mtimeMs);
  }
  return newest;
}

const bundled = statSync(bundle, { throwIfNoEntry: false })?.mtimeMs ?? 0;
const changed = Math.max(newestChange(new URL("src/", root)), newestChange(new URL("shared/", root)));
if (changed > bundled) {
  const { bundleCommandLine } = await import("./bundle.mjs");
  await bundleCommandLine();
}
// Whoever reads on may have read enough, as `head` has: that is no failure.
process.stdout.on("error", (error) => {
  if (error.code !== "EPIPE") throw error;
});
const { main } = await import(fileURLToPath(bundle));
process.exitCode = await main(process.argv.slice(2));
