// Serves dist/ as it ships: the same files, the same policy as a header.
import { createReadStream, statSync } from "node:fs";
import { createServer } from "node:http";
import { extname, join, normalize } from "node:path";
import { fileURLToPath } from "node:url";
import { answersTo } from "./house.mjs";
import { keeping, squeezed } from "./squeezed.mjs";

export const POLICY = "default-src 'self'; img-src 'self' blob:; object-src 'none'; base-uri 'none'";

const DIST = fileURLToPath(new URL("../../dist", import.meta.url));

const TYPES = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".webmanifest": "application/manifest+json; charset=utf-8",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".woff2": "font/woff2",
  ".csv": "text/csv; charset=utf-8",
};

const PLAIN = { "Content-Type": "text/plain; charset=utf-8" };

async function answer(request, response, folder) {
  const path = decodeURIComponent(new URL(request.url ?? "/", "http://localhost").pathname);
  const wanted = join(folder, normalize(path.endsWith("/") ? `${path}index.html` : path));
  const file = wanted.startsWith(folder) ? statSync(wanted, { throwIfNoEntry: false }) : undefined;
  response.setHeader("Content-Security-Policy", POLICY);
  response.setHeader("X-Content-Type-Options", "nosniff");
  response.setHeader("Referrer-Policy", "no-referrer");
  if (!file?.isFile()) {
    response.writeHead(404, PLAIN).end("Nothing is here.\n");
    return;
  }
  const mark = `"${file.size}-${Math.round(file.mtimeMs)}"`;
  response.setHeader("Cache-Control", keeping(wanted));
  response.setHeader("ETag", mark);
  response.setHeader("Vary", "Accept-Encoding");
  if (request.headers["if-none-match"] === mark) {
    response.writeHead(304).end();
    return;
  }
  response.setHeader("Content-Type", TYPES[extname(wanted)] ?? "application/octet-stream");
  const tight = await squeezed(wanted, file, request.headers["accept-encoding"]);
  if (tight) {
    response.writeHead(200, { "Content-Encoding": tight.way, "Content-Length": tight.bytes.length });
    response.end(tight.bytes);
    return;
  }
  response.writeHead(200, { "Content-Length": file.size });
  createReadStream(wanted).pipe(response);
}

/**
 * Starts serving a folder on a port (0: any free one); resolves to the server and its address. Nothing but this machine
 * reaches it, unless it serves the house: then whatever is on the same network does.
 */
export function serve(port = 0, folder = DIST, { house = false } = {}) {
  return new Promise((resolve, reject) => {
    const server = createServer((request, response) => {
      if (answersTo(request.headers.host, house))
        answer(request, response, folder).catch(() => response.writeHead(400).end());
      else response.writeHead(421, PLAIN).end("This name is not this machine's.\n");
    });
    server.on("error", reject);
    server.listen(port, house ? undefined : "127.0.0.1", () =>
      resolve({ server, url: `http://localhost:${server.address().port}/` }),
    );
  });
}
