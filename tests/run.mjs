// `npm test`: types, lint and layers, unused code, unit and case tests, browser journeys. Ends with `N passed, N failed`.
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { findBrowser } from "./browser.mjs";
import { countedCases } from "./counted-cases.mjs";

const root = fileURLToPath(new URL("..", import.meta.url));
const bin = (name) => join(root, "node_modules/.bin", name);
const scratch = mkdtempSync(join(tmpdir(), "eavesdrip-"));
let passed = 0;
let failed = 0;
const atSecondTry = [];

function run(command, args, env = {}) {
  console.log(`\n> ${[command.split("/").pop(), ...args].join(" ").replaceAll(scratch, "…")}`);
  return (
    spawnSync(command, args, { cwd: root, stdio: "inherit", env: { ...process.env, ...env } }).status === 0
  );
}

function check(command, args) {
  if (run(command, args)) passed += 1;
  else failed += 1;
}

function suite(name, env = {}) {
  const report = join(scratch, `${name}.json`);
  const good = run(
    bin("vitest"),
    ["run", "--project", name, "--reporter=default", "--reporter=json", `--outputFile=${report}`],
    env,
  );
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

check(bin("tsc"), ["--noEmit"]);
check(bin("biome"), ["check", "."]);
check(bin("knip"), []);
suite("unit");
try {
  suite("journeys", { CHROMIUM_PATH: await findBrowser() });
} catch (error) {
  console.error(error.message);
  failed += 1;
}
rmSync(scratch, { recursive: true, force: true });
console.log(`\n${countedCases()}`);
if (atSecondTry.length > 0) {
  console.log(`\n${atSecondTry.length} passed only at the second try:`);
  for (const { fullName, failureMessages } of atSecondTry)
    console.log(`  ${fullName}\n    ${failureMessages[0].split("\n", 3).join("\n    ")}`);
}
console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 ? 1 : 0;
