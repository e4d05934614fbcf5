// The page in one file: the program, its styles and its letters in one .html that needs no server and no network.
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { build } from "vite";

/** Its name in dist/: the running page fetches it there to put a worksheet into it. */
export const ONE_FILE = "eavesdrip.html";

const ROOT = fileURLToPath(new URL("../..", import.meta.url));
const read = (path) => readFileSync(new URL(`../../${path}`, import.meta.url), "utf8");

const hashOf = (text, algorithm = "sha256", letters = "base64") =>
  createHash(algorithm).update(text).digest(letters);

/** Program text as it may stand in a script element: nothing in it ends the element or begins a comment. */
const inScript = (code) => code.replaceAll(/<\/(?=script)/gi, "<\\/").replaceAll("<!--", "\\x3c!--");

const policyFor = (script, style) =>
  [
    "default-src 'none'",
    `script-src 'sha256-${hashOf(script)}'`,
    `style-src 'sha256-${hashOf(style)}'`,
    "worker-src blob:",
    "img-src data: blob:",
    "font-src data:",
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");

/** Replaces a piece that is there once. */
function put(page, piece, text) {
  const at = page.indexOf(piece);
  if (at < 0 || page.includes(piece, at + 1)) throw new Error(`index.html has not "${piece}" once.`);
  return page.slice(0, at) + text + page.slice(at + piece.length);
}

function assembled(script, style) {
  const icon = Buffer.from(read("public/icon.svg")).toString("base64");
  const mark = hashOf(script + style, "sha256", "base64url").slice(0, 8);
  const pieces = {
    "%POLICY%": policyFor(script, style),
    "/icon.svg": `data:image/svg+xml;base64,${icon}`,
    // The worksheet stands before everything else that could hold these very letters.
    "</head>": `  <meta name="build" content="${mark}">\n  <style>${style}</style>\n  </head>`,
    '<div id="page">': '<script type="application/json" id="worksheet"></script>\n    <div id="page">',
    // A worker out of a blob of a file's page cannot be a module, and the script is both.
    '<script type="module" src="/src/app/main.tsx"></script>': `<script id="program">${script}</script>`,
  };
  return Object.entries(pieces).reduce((page, [piece, text]) => put(page, piece, text), read("index.html"));
}

async function bundled({ plugins, define }) {
  const { output } = await build({
    root: ROOT,
    configFile: false,
    // It would warn of import.meta, which is nothing in a script that is no module: nobody there leans on it.
    logLevel: "error",
    publicDir: false,
    plugins,
    define,
    resolve: {
      alias: [
        {
          find: "./start-worker.ts",
          replacement: fileURLToPath(new URL("../app/start-worker-in-one-file.ts", import.meta.url)),
        },
      ],
    },
    build: {
      write: false,
      target: "es2022",
      assetsInlineLimit: Number.MAX_SAFE_INTEGER,
      cssCodeSplit: false,
      modulePreload: false,
      chunkSizeWarningLimit: 3000,
      rollupOptions: { input: "src/app/one-file.ts", output: { format: "iife", codeSplitting: false } },
    },
  });
  const [script, style, ...others] = [".js", ".css", ""].flatMap((end) =>
    output.filter(({ fileName }) => (end === "" ? !/\.(js|css)$/.test(fileName) : fileName.endsWith(end))),
  );
  if (!script || !style || others.length > 0) throw new Error("The page did not go into one file.");
  return { script: script.code, style: String(style.source) };
}

/**
 * The page in one file, without a worksheet.
 *
 * @param how `plugins` and `define` as the build of the page has them
 */
async function oneFilePage(how) {
  const { script, style } = await bundled(how);
  return assembled(inScript(script).trim(), style.trim());
}

/**
 * Puts the page in one file beside the others.
 *
 * @param plugins makes the plugins that the page's own code needs
 */
export function withOneFile(plugins) {
  let define;
  const page = (defined) => oneFilePage({ plugins: plugins(), define: defined });
  return {
    name: "one-file",
    apply: "build",
    /** For whoever wants nothing but that page. */
    api: { page },
    configResolved: (config) => {
      define = config.define;
    },
    async generateBundle() {
      this.emitFile({ type: "asset", fileName: ONE_FILE, source: await page(define) });
    },
  };
}
