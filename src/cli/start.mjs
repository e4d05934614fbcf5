// `npm start`: builds what ships, serves it, and opens it where there is a desktop to open it on.
import { spawn } from "node:child_process";
import { build } from "vite";
import { serve } from "./serve.mjs";

function openBrowser(url) {
  if (process.env.CI || !process.stdout.isTTY) return;
  const command = { darwin: "open", win32: "explorer" }[process.platform] ?? "xdg-open";
  spawn(command, [url], { stdio: "ignore", detached: true })
    .on("error", () => undefined)
    .unref();
}

await build({ logLevel: "warn" });
const wanted = Number(process.env.PORT ?? 4173);
const { url } = await serve(wanted).catch((error) => {
  if (error.code !== "EADDRINUSE" || process.env.PORT) throw error;
  return serve(0);
});
console.log(`Eavesdrip is open at ${url}  (Ctrl+C stops it)`);
openBrowser(url);
