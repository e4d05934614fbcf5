// `npm test`: types, lint and layers, unused code, unit and case tests, browser journeys. Ends with `N passed, N failed`.
// Journeys wait for their pages half of the time, so that all else is run beside them; what they say comes after it.
import { spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { setPriority, tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { findBrowser } from "./browser.mjs";
import { countedCases } from "./counted-cases.mjs";

const root = fileURLToPath(new URL("..", import.meta.url));
const bin = (name) => join(root, "node_modules/.bin", name);
const scratch = mkdtempSync(join(tmpdir(), "eavesdrip-"));
const colors = process.stdout.isTTY ? { FORCE_COLOR: "1" } : {};
/** What gives way to the journeys, whose pages somebody waits for. */
const GIVES_WAY = 5;
let passed = 0;
let failed = 0;
const atSecondTry = [];

/** Says at once what is said, or keeps it until then. */
function voice(isFirst) {
  let kept = isFirst ? null : [];
  return {
    say: (text) => {
      if (kept) kept.push(text);
      else process.stdout.write(text);
    },
    speakUp: () => {
      for (const text of kept ?? []) process.stdout.write(text);
      kept = null;
    },
  };
}

function run({ say }, command, args, { env = {}, nice = 0 } = {}) {
  say(`\n> ${[command.split("/").pop(), ...args].join(" ").replaceAll(scratch, "…")}\n`);
  return new Promise((resolve) => {
    const child = spawn(command, args, {
      cwd: root,
      stdio: ["ignore", "pipe", "pipe"],
      env: { ...process.env, ...colors, ...env },
    });
    if (child.pid && nice > 0) setPriority(child.pid, nice);
    for (const stream of [child.stdout, child.stderr]) stream.setEncoding("utf8").on("data", say);
    child.on("error", (error) => {
      say(`${error.message}\n`);
      resolve(false);
    });
    child.on("close", (status) => resolve(status === 0));
  });
}

async function check(voiced, command, args) {
  if (await run(voiced, command, args)) passed += 1;
  else failed += 1;
}

async function suite(voiced, name, more = {}) {
  const report = join(scratch, `${name}.json`);
  const reporters = ["--reporter=default", "--reporter=json", `--outputFile=${report}`];
  const good = await run(voiced, bin("vitest"), ["run", "--project", name, ...reporters], more);
  try {
    const { numPassedTests, numFailedTests, testResults } = JSON.parse(readFileSync(report, "utf8"));
    const tests = testResults.flatMap(({ assertionResults }) => assertionResults);
    // Each counts once, however often it was tried; what it failed by before is kept with it.
    atSecondTry.push(...tests.filter((one) => one.status === "passed" && one.failureMessages.length > 0));
    passed += numPassedTests;
    failed += numFailedTests;
    if (!good && numFailedTests === 0) failed += 1;
    if (numPassedTests + numFailedTests === 0) failed += 1;
  } catch {
    failed += 1;
  }
}

async function withoutBrowser() {
  const voiced = voice(true);
  await check(voiced, bin("tsc"), ["--noEmit"]);
  await check(voiced, bin("biome"), ["check", "."]);
  await check(voiced, bin("knip"), []);
  await suite(voiced, "unit", { nice: GIVES_WAY });
}

const later = voice(false);

async function inBrowser() {
  try {
    await suite(later, "journeys", { env: { CHROMIUM_PATH: await findBrowser() } });
  } catch (error) {
    later.say(`${error.message}\n`);
    failed += 1;
  }
}

await Promise.all([withoutBrowser().then(later.speakUp), inBrowser()]);
rmSync(scratch, { recursive: true, force: true });
console.log(`\n${countedCases()}`);
if (atSecondTry.length > 0) {
  console.log(`\n${atSecondTry.length} passed only at the second try:`);
  for (const { fullName, failureMessages } of atSecondTry)
    console.log(`  ${fullName}\n    ${failureMessages[0].split("\n", 3).join("\n    ")}`);
}
console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 ? 1 : 0;
