// Files go over the line squeezed where the reader takes that, and say how long they may be kept.

import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { get, type IncomingHttpHeaders } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { brotliDecompressSync, gunzipSync } from "node:zlib";
import { afterAll, beforeAll, expect, test } from "vitest";
import { serve } from "../../src/cli/serve.mjs";

const SCRIPT = "console.log('rain');\n".repeat(500);
const folder = mkdtempSync(join(tmpdir(), "eavesdrip-served-"));
let served: Awaited<ReturnType<typeof serve>>;

beforeAll(async () => {
  mkdirSync(join(folder, "assets"));
  writeFileSync(join(folder, "assets/index-Ab12.js"), SCRIPT);
  writeFileSync(join(folder, "index.html"), `<!doctype html><p>${SCRIPT}</p>`);
  writeFileSync(join(folder, "short.css"), "p{}");
  served = await serve(0, folder);
});
afterAll(() => {
  served.server.close();
  rmSync(folder, { recursive: true });
});

type Answer = {
  readonly status: number | undefined;
  readonly headers: IncomingHttpHeaders;
  readonly bytes: Buffer;
};

const ask = (path: string, headers: Readonly<Record<string, string>> = {}) =>
  new Promise<Answer>((resolve, reject) => {
    get(new URL(path, served.url), { headers }, (answer) => {
      const parts: Buffer[] = [];
      answer.on("data", (part) => parts.push(part));
      answer.on("end", () =>
        resolve({ status: answer.statusCode, headers: answer.headers, bytes: Buffer.concat(parts) }),
      );
    }).on("error", reject);
  });

test.each([
  ["gzip, deflate", "gzip", gunzipSync],
  ["gzip, deflate, br", "br", brotliDecompressSync],
  ["br;q=0, gzip;q=0.5", "gzip", gunzipSync],
] as const)("a reader who takes %s gets %s, and the same text out of it", async (taken, way, open) => {
  const { headers, bytes } = await ask("assets/index-Ab12.js", { "Accept-Encoding": taken });
  expect(headers["content-encoding"]).toBe(way);
  expect(headers["content-length"]).toBe(String(bytes.length));
  expect(bytes.length).toBeLessThan(SCRIPT.length / 5);
  expect(open(bytes).toString()).toBe(SCRIPT);
});

test("who takes nothing squeezed, and what is short, gets the file as it is", async () => {
  const plain = await ask("assets/index-Ab12.js");
  expect([plain.headers["content-encoding"], plain.bytes.toString()]).toEqual([undefined, SCRIPT]);
  const short = await ask("short.css", { "Accept-Encoding": "gzip" });
  expect([short.headers["content-encoding"], short.bytes.toString()]).toEqual([undefined, "p{}"]);
});

test("a name with a mark of its content is kept for good; the page is asked for anew, and not sent again unchanged", async () => {
  expect((await ask("assets/index-Ab12.js")).headers["cache-control"]).toContain("immutable");
  const first = await ask("");
  expect(first.headers["cache-control"]).toBe("no-cache");
  const again = await ask("", { "If-None-Match": first.headers.etag ?? "" });
  expect([again.status, again.bytes.length]).toEqual([304, 0]);
  writeFileSync(join(folder, "index.html"), `<!doctype html><p>new ${SCRIPT}</p>`);
  const changed = await ask("", { "If-None-Match": first.headers.etag ?? "" });
  expect([changed.status, changed.bytes.toString().includes("new")]).toEqual([200, true]);
});
