// Runs every bench of this folder in Node and prints one table of ratios. Leaves with 1 where one misses its bound.
// A bench is a .ts file that exports `rows`; measure.ts is what they share.
import { readdirSync, rmSync } from "node:fs";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "vite";

const root = fileURLToPath(new URL("../..", import.meta.url));
const folder = new URL(".", import.meta.url);
// Inside node_modules, so that the bundles find the packages that stay outside them.
const outDir = fileURLToPath(new URL("node_modules/.bench/", pathToFileURL(`${root}/`)));
const only = process.argv[2] ?? "";
const names = readdirSync(folder)
  .filter((file) => file.endsWith(".ts") && file !== "measure.ts")
  .map((file) => file.slice(0, -3))
  .filter((name) => name.includes(only))
  .sort();

async function bundle(name) {
  await build({
    root,
    configFile: false,
    logLevel: "error",
    publicDir: false,
    build: {
      ssr: `tests/bench/${name}.ts`,
      outDir,
      emptyOutDir: false,
      minify: false,
      target: "node20",
      rollupOptions: { output: { entryFileNames: `${name}.mjs` } },
    },
  });
  return import(pathToFileURL(`${outDir}${name}.mjs`).href);
}

function wanted({ atLeast, atMost }) {
  return atLeast === undefined ? `at most ${atMost}` : `at least ${atLeast}`;
}

function isKept({ ratio, atLeast = 0, atMost = Number.POSITIVE_INFINITY }) {
  return ratio >= atLeast && ratio <= atMost;
}

const lines = [];
for (const name of names) {
  const { rows } = await bundle(name);
  for (const row of await rows()) lines.push(row);
}
rmSync(outDir, { recursive: true, force: true });

const widest = Math.max(...lines.map(({ name }) => name.length));
for (const row of lines) {
  const verdict = isKept(row) ? "kept  " : "MISSED";
  const ratio = row.ratio.toFixed(1).padStart(7);
  process.stdout.write(
    `${verdict}  ${row.name.padEnd(widest)}  ${ratio}  ${wanted(row).padEnd(13)}  ${row.detail}\n`,
  );
}
const missed = lines.filter((row) => !isKept(row)).length;
process.stdout.write(`${lines.length - missed} kept, ${missed} missed\n`);
process.exitCode = missed === 0 && lines.length > 0 ? 0 : 1;
