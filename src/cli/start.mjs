// `npm start`: builds what ships, serves it, and opens it where there is a desktop to open it on.
import { spawn } from "node:child_process";
import { build } from "vite";
import { houseAddresses, houseSaid } from "./house.mjs";
import { serve } from "./serve.mjs";

function openBrowser(url) {
  if (process.env.CI || !process.stdout.isTTY) return;
  const command = { darwin: "open", win32: "explorer" }[process.platform] ?? "xdg-open";
  spawn(command, [url], { stdio: "ignore", detached: true })
    .on("error", () => undefined)
    .unref();
}

const wishes = process.argv.slice(2);
const house = wishes.includes("--house");
const unknown = wishes.find((wish) => wish !== "--house");
if (unknown !== undefined) {
  console.error(`npm start knows --house only, not ${unknown}.`);
  process.exit(2);
}
await build({ logLevel: "warn" });
const wanted = Number(process.env.PORT ?? 4173);
const { server, url } = await serve(wanted, undefined, { house }).catch((error) => {
  if (error.code !== "EADDRINUSE" || process.env.PORT) throw error;
  return serve(0, undefined, { house });
});
console.log(`Eavesdrip is open at ${url}  (Ctrl+C stops it)`);
if (house) console.log(houseSaid(houseAddresses(server.address().port), process.stdout.isTTY));
openBrowser(url);
