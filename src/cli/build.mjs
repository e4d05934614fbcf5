// `npm run build`: what ships, in dist/; with --one-file nothing but the page in one file.
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build, loadConfigFromFile } from "vite";
import { ONE_FILE } from "./one-file.mjs";

const ROOT = fileURLToPath(new URL("../..", import.meta.url));

async function buildOneFile() {
  process.env.NODE_ENV = "production";
  const { config } = await loadConfigFromFile(
    { command: "build", mode: "production" },
    join(ROOT, "vite.config.ts"),
  );
  const { api } = config.plugins.flat().find(({ name }) => name === "one-file");
  const page = await api.page(config.define);
  mkdirSync(join(ROOT, "dist"), { recursive: true });
  writeFileSync(join(ROOT, "dist", ONE_FILE), page);
  console.log(
    `dist/${ONE_FILE}: ${(page.length / 1e6).toFixed(1)} MB; it opens by a double click, with no network.`,
  );
}

const wishes = process.argv.slice(2);
const unknown = wishes.find((wish) => wish !== "--one-file");
if (unknown !== undefined) {
  console.error(`npm run build knows --one-file only, not ${unknown}.`);
  process.exitCode = 2;
} else await (wishes.length > 0 ? buildOneFile() : build({ root: ROOT }));
