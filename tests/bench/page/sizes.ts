// What the page loads before it can answer: its entry and all that the entry imports.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import type { Ratio } from "../measure.ts";
import type { Chunk } from "./built.ts";

/** At most so much of script, squeezed, before the answers that need no season [B]. */
const MOST = 200_000;

/** The chunk in which the page begins and those it imports, at any distance. */
function firstScript(chunks: readonly Chunk[]): readonly Chunk[] {
  const named = new Map(chunks.map((chunk) => [chunk.fileName, chunk]));
  const first = new Set<Chunk>();
  const add = (chunk: Chunk | undefined): void => {
    if (!chunk || first.has(chunk)) return;
    first.add(chunk);
    for (const name of chunk.imports) add(named.get(name));
  };
  add(chunks.find(({ modules }) => Object.keys(modules).some((id) => id.endsWith("/src/app/main.tsx"))));
  return [...first];
}

const squeezed = (chunks: readonly Chunk[]): number =>
  chunks.reduce((sum, { code }) => sum + gzipSync(code, { level: 9 }).length, 0);

const kilo = (bytes: number): string => `${(bytes / 1000).toFixed(1)} kB`;

/** What the build leaves of a module whose code stays in the worker (vite.config.ts) says so. */
const LEFT_OUT = "This runs in the worker.";
/** What is read before any season is run, too: which days are a season's, and the name of what open water loses. */
const SHARED: readonly string[] = ["spans.ts", "losses.ts"];

/** Modules whose values the run of a season imports, but for those that are not its alone. */
function seasonsOwn(): readonly string[] {
  const source = readFileSync(join(process.cwd(), "src/season/run.ts"), "utf8");
  const imports = [...source.matchAll(/^import \{[^}]*\} from "\.\/([\w-]+\.ts)";/gms)];
  return imports
    .flatMap(([, file]) => (file && !SHARED.includes(file) ? `/src/season/${file}` : []))
    .concat("/src/season/run.ts");
}

export function sizeRows(chunks: readonly Chunk[]): readonly Ratio[] {
  const first = firstScript(chunks);
  const later = chunks.filter((chunk) => !first.includes(chunk));
  const size = squeezed(first);
  const own = seasonsOwn();
  const modules = first.flatMap(({ modules: inside }) => Object.entries(inside));
  const strayed = modules.filter(
    ([id, { code }]) => code && !code.includes(LEFT_OUT) && own.some((path) => id.endsWith(path)),
  );
  return [
    {
      name: "the page's first script, squeezed, against 200 kB",
      ratio: size / MOST,
      atMost: 1,
      detail: `${kilo(size)} in ${first.length} files; ${kilo(squeezed(later))} come later, in ${later.length}`,
    },
    {
      name: `files of the season's run (of ${own.length}) in it`,
      ratio: strayed.length,
      atMost: 0,
      detail: strayed.map(([id]) => id.split("/").slice(-1)).join(", ") || "none",
    },
  ];
}
