// Serves dist/ as it ships: the same files, the same policy as a header.
import { createReadStream, statSync } from "node:fs";
import { createServer } from "node:http";
import { extname, join, normalize } from "node:path";
import { fileURLToPath } from "node:url";
import { answersTo } from "./house.mjs";

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

function answer(request, response, folder) {
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
  response.writeHead(200, {
    "Content-Type": TYPES[extname(wanted)] ?? "application/octet-stream",
    "Content-Length": file.size,
  });
  createReadStream(wanted).pipe(response);
}

/**
 * Starts serving a folder on a port (0: any free one); resolves to the server and its address. Nothing but this machine
 * reaches it, unless it serves the house: then whatever is on the same network does.
 */
export function serve(port = 0, folder = DIST, { house = false } = {}) {
  return new Promise((resolve, reject) => {
    const server = createServer((request, response) => {
      try {
        if (answersTo(request.headers.host, house)) answer(request, response, folder);
        else response.writeHead(421, PLAIN).end("This name is not this machine's.\n");
      } catch {
        response.writeHead(400).end();
      }
    });
    server.on("error", reject);
    server.listen(port, house ? undefined : "127.0.0.1", () =>
      resolve({ server, url: `http://localhost:${server.address().port}/` }),
    );
  });
}
