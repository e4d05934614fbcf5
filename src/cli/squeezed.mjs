// Files as they go over the line: texts squeezed, each once; names with a mark of their content kept for good.
import { promises } from "node:fs";
import { extname, sep } from "node:path";
import { promisify } from "node:util";
import { brotliCompress, constants, gzip } from "node:zlib";

const TEXTS = new Set([".html", ".js", ".css", ".json", ".webmanifest", ".svg", ".csv"]);
/** Below this a file goes in one packet anyway [B]. */
const LEAST = 1000;
/** Most of the gain in a tenth of the time that the last of it takes. */
const QUALITY = { [constants.BROTLI_PARAM_QUALITY]: 7 };

const WAYS = {
  br: (text) => promisify(brotliCompress)(text, { params: QUALITY }),
  gzip: promisify(gzip),
};

const kept = new Map();

/** The way that a reader takes of those there are, the tightest first; null for none. */
function wayOf(accepted = "") {
  const taken = accepted.split(",").flatMap((one) => {
    const [name, weight] = one.split(";");
    return /^\s*q=0(\.0*)?\s*$/.test(weight ?? "") ? [] : name.trim().toLowerCase();
  });
  return Object.keys(WAYS).find((way) => taken.includes(way)) ?? null;
}

/**
 * A file's text squeezed in a way that the reader takes; null where it goes as it is.
 *
 * @param file its size and when it was changed
 * @param accepted what the reader said it takes (Accept-Encoding)
 */
export async function squeezed(path, file, accepted) {
  const way = TEXTS.has(extname(path)) && file.size >= LEAST ? wayOf(accepted) : null;
  if (way === null) return null;
  const key = `${way} ${path} ${file.size} ${file.mtimeMs}`;
  if (!kept.has(key)) kept.set(key, promises.readFile(path).then(WAYS[way]));
  return { way, bytes: await kept.get(key) };
}

/** How long a file may be kept: what bears a mark of its content in its name never changes, anything else is asked for anew. */
export const keeping = (path) =>
  path.includes(`${sep}assets${sep}`) ? "public, max-age=31536000, immutable" : "no-cache";
