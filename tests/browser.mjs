// Finds a Chromium for the journeys, or fetches one: CHROMIUM_PATH, one on the machine, the packaged one from npm.
import { execFileSync, spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { delimiter, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

const PACKAGED = "@sparticuz/chromium@143.0.4";
const CACHE = fileURLToPath(new URL("../.cache/browser/", import.meta.url));
// The one without windows starts in a quarter of the time, and opens a page with half the work.
const NAMES = [
  "chromium-headless-shell",
  "chromium",
  "chromium-browser",
  "google-chrome-stable",
  "google-chrome",
  "chrome",
];

/** Arguments every launch needs: no sandbox as root, no chatter with the network. */
export const LAUNCH_ARGUMENTS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--hide-scrollbars",
];

function onThisMachine() {
  for (const folder of (process.env.PATH ?? "").split(delimiter)) {
    for (const name of NAMES) {
      const path = join(folder, name);
      if (folder && existsSync(path)) return path;
    }
  }
  const mac = "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome";
  return existsSync(mac) ? mac : null;
}

function runs(path) {
  return spawnSync(path, ["--headless", "--no-sandbox", "--version"], { timeout: 60_000 }).status === 0;
}

async function packaged() {
  // Makes the package unpack the system libraries and fonts it carries, which a bare machine lacks.
  process.env.AWS_EXECUTION_ENV ??= "AWS_Lambda_nodejs20.x";
  const entry = join(CACHE, "node_modules/@sparticuz/chromium/build/esm/index.js");
  const known = [entry, join(CACHE, "node_modules/@sparticuz/chromium/build/index.js")];
  if (!known.some(existsSync)) {
    console.log("No Chromium on this machine; fetching a packaged one.");
    execFileSync("npm", ["install", "--no-save", "--no-audit", "--no-fund", "--prefix", CACHE, PACKAGED], {
      stdio: "inherit",
    });
  }
  const found = known.find(existsSync);
  if (!found) return null;
  const { default: chromium } = await import(pathToFileURL(found).href);
  return chromium.executablePath();
}

function fromDebian() {
  if (!process.env.CI || process.getuid?.() !== 0 || !existsSync("/usr/bin/apt-get")) return null;
  spawnSync("apt-get", ["update"], { stdio: "ignore" });
  spawnSync("apt-get", ["install", "-y", "chromium-headless-shell"], { stdio: "ignore" });
  return onThisMachine();
}

/** Path of a Chromium that starts; throws one clear sentence when there is none to be had. */
export async function findBrowser() {
  const named = process.env.CHROMIUM_PATH;
  if (named) {
    if (existsSync(named)) return named;
    throw new Error(`CHROMIUM_PATH names ${named}, which does not exist.`);
  }
  const here = onThisMachine();
  if (here && runs(here)) return here;
  if (process.platform === "linux" && process.arch === "x64") {
    const path = await packaged().catch(() => null);
    if (path && runs(path)) return path;
  }
  const installed = fromDebian();
  if (installed && runs(installed)) return installed;
  throw new Error("The browser journeys need Chromium: install it, or set CHROMIUM_PATH to one.");
}
