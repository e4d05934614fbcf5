// The build as it ships.

import { createHash } from "node:crypto";
import { cpSync, mkdirSync, readdirSync, readFileSync, renameSync, statSync, writeFileSync } from "node:fs";
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

/**
 * Puts what ships into a folder as a later version: another version told, other names of all scripts (what imports one that
 * changed is changed itself), and another mark of the page that names them.
 */
export function laterVersion(version: string, folder: string): void {
  cpSync(SHIPPED, folder, { recursive: true });
  const scripts = filesOf(join(folder, "assets")).filter((name) => name.endsWith(".js"));
  const marks = scripts.map((name) => name.slice(-"12345678.js".length, -".js".length));
  const named = new RegExp(`-(${marks.join("|")})\\.js`, "g");
  const renamed = (text: string): string =>
    text.replace(named, (_, mark: string) => `-${[...mark].reverse().join("")}.js`);
  const versioned = (text: string): string => text.replace(/(?<=VITE_VERSION:[`"'])[^`"']+/g, version);
  let told = 0;
  for (const file of [...scripts, join(folder, "index.html"), join(folder, "sw.js")]) {
    const text = readFileSync(file, "utf8");
    if (versioned(text) !== text) told += 1;
    writeFileSync(file, renamed(versioned(text)));
    renameSync(file, renamed(file));
  }
  const kept = join(folder, "sw.js");
  const list = readFileSync(kept, "utf8");
  const later = list.replace(/(?<=\{url:"index\.html",revision:")\w+/, "later");
  if (told !== 1 || later === list) throw new Error("What ships is made otherwise than is known here.");
  writeFileSync(kept, later);
}

/** Puts what ships into a folder, but that records of made-up weather are so many years long, the demo's and any sheet's that says nothing of it. */
export function withDemoOf(years: number, folder: string): void {
  cpSync(SHIPPED, folder, { recursive: true });
  demoOf(years, folder);
  unsaidYearsOf(years, folder);
}

/** Makes up so many years in what ships and lies in that folder, where a worksheet does not say how many. */
function unsaidYearsOf(years: number, folder: string): void {
  const unsaid = /(?<=Years to make up`,`count`,\[)20\b/;
  const scripts = filesOf(join(folder, "assets")).filter((name) => name.endsWith(".js"));
  const saying = scripts.filter((name) => unsaid.test(readFileSync(name, "utf8")));
  if (saying.length === 0) throw new Error("Years that nobody says are built otherwise than is known here.");
  for (const name of saying) writeFileSync(name, readFileSync(name, "utf8").replace(unsaid, String(years)));
}

/** Makes the demo's record so many years long in what ships and lies in that folder. */
export function demoOf(years: number, folder: string): void {
  const [first = "", ...others] = filesOf(join(folder, "assets")).filter((name) =>
    /first-[\w-]+\.js$/.test(name),
  );
  const text = readFileSync(first, "utf8");
  const changed = text.replace(/(?<=\byears:\{value:)20\b/, String(years));
  // With LONG=1 it keeps all its seasons, and nothing is changed.
  if (!/\byears:\{value:20\b/.test(text) || others.length > 0)
    throw new Error("The demo is built otherwise than is known here.");
  writeFileSync(first, changed);
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
