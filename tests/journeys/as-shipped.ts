// The build as it ships.

import { createHash } from "node:crypto";
import { mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build, type InlineConfig } from "vite";

const ROOT = fileURLToPath(new URL("../..", import.meta.url));
/** Where it lies, ready to be served. */
export const SHIPPED = join(ROOT, "dist");
/** What the build that lies there was made of, and what it was. */
const KNOWN = join(ROOT, ".cache", "as-shipped.json");
const MADE_OF = [
  "src",
  "shared",
  "templates",
  "public",
  "index.html",
  "vite.config.ts",
  "package.json",
  "package-lock.json",
];

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

function filesOf(path: string): readonly string[] {
  const found = statSync(path, { throwIfNoEntry: false });
  if (!found) return [];
  if (found.isFile()) return [path];
  return readdirSync(path)
    .sort()
    .flatMap((name) => filesOf(join(path, name)));
}

/** A mark of the names and contents of all files at these paths. */
function markOf(paths: readonly string[]): string {
  const hash = createHash("sha256").update(process.version);
  for (const file of paths.flatMap(filesOf)) {
    const content = readFileSync(file);
    hash.update(`\n${file} ${content.length}\n`).update(content);
  }
  return hash.digest("hex");
}

const marks = () => ({
  madeOf: markOf(MADE_OF.map((name) => join(ROOT, name))),
  made: markOf([SHIPPED]),
});

function known(): Partial<ReturnType<typeof marks>> {
  try {
    return JSON.parse(readFileSync(KNOWN, "utf8"));
  } catch {
    return {};
  }
}

/** Builds into dist/, unless what lies there was built here of the very same files and nobody touched it since. */
export async function builtOnce(): Promise<void> {
  const { madeOf, made } = marks();
  const last = known();
  if (last.madeOf === madeOf && last.made === made) return;
  await buildAsShipped();
  mkdirSync(join(ROOT, ".cache"), { recursive: true });
  // What it was made of is what stood there before: a file changed meanwhile makes the next build anew.
  writeFileSync(KNOWN, JSON.stringify({ madeOf, made: markOf([SHIPPED]) }));
}
