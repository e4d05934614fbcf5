import { readFileSync } from "node:fs";
import { defineConfig, type Plugin, type Rolldown } from "vite";
import { VitePWA } from "vite-plugin-pwa";
import solid from "vite-plugin-solid";
import { ONE_FILE, withOneFile } from "./src/cli/one-file.mjs";
import { POLICY } from "./src/cli/serve.mjs";

/**
 * What reads the record day by day: models ask for it, and it runs in the worker (graph: `elsewhere`). The page's own
 * script needs its names only.
 */
const IN_THE_WORKER = [
  "src/season/run.ts",
  "src/season/week-plan.ts",
  "src/season/from-today.ts",
  "src/season/bed-calendar.ts",
  "src/season/demand.ts",
  "src/season/roof-catch.ts",
  "src/season/sky.ts",
  "src/season/at-once.ts",
  "src/season/daily-eto.ts",
  "src/rainfall/made-up.ts",
];

const EXPORTED = /^export (?:async )?(function|const|class|let) (\w+)/gm;

/** Leaves the code of the worker out of the page's script; what is called there all the same says where it belongs. */
const workersCodeStaysThere: Plugin = {
  name: "workers-code-stays-there",
  apply: "build",
  enforce: "pre",
  transform: (code, id) => {
    if (!IN_THE_WORKER.some((path) => id.endsWith(`/${path}`))) return null;
    const exported = [...code.matchAll(EXPORTED)].map(([, what, name]) => ({ what, name }));
    // In the place of a number or a word a function would be a silent wrong answer.
    if (exported.some(({ what }) => what !== "function"))
      throw new Error(`${id} exports more than functions.`);
    const stub = exported.map(({ name }) => `export const ${name} = elsewhere;`).join("\n");
    return {
      code: `const elsewhere = () => { throw new Error("This runs in the worker."); };\n${stub}`,
      map: null,
    };
  },
};

/** What of the formula parser's package reads text into tokens; the rest evaluates them, which nothing here ever does. */
const READS_FORMULAS = [
  "Instruction",
  "unaryInstruction",
  "binaryInstruction",
  "ternaryInstruction",
  "contains",
  "Expression",
  "Token",
  "TokenStream",
  "ParserState",
  "Parser",
  "getOptionName",
];

const FUNCTION = /^function (\w+)\([^)]*\) \{[\s\S]*?^\}$/gm;

/** Leaves out of the page what of that package evaluates: near half of it. */
const parserWithoutEvaluating: Plugin = {
  name: "parser-without-evaluating",
  apply: "build",
  enforce: "pre",
  transform: (code, id) => {
    if (!/[\\/]expr-eval[\\/]dist[\\/]index\.mjs/.test(id)) return null;
    const kept = new Set<string>();
    const without = code.replace(FUNCTION, (whole, name: string) => {
      if (!READS_FORMULAS.includes(name)) return `function ${name}() { leftOut(); }`;
      kept.add(name);
      return whole;
    });
    // Another version of it may call its parts otherwise.
    if (kept.size !== READS_FORMULAS.length) throw new Error(`${id} has not all that reads formulas.`);
    return {
      code: `${without}\nfunction leftOut() { throw new Error("Nothing is evaluated here."); }`,
      map: null,
    };
  },
};

/**
 * Most of what stands in these files is called before the page says anything: the browser is told to translate all of it as it
 * reads it, off the page's thread, instead of each function as it is first called (a comment; who does not know it reads on).
 */
const calledAtOnce: Plugin = {
  name: "called-at-once",
  apply: "build",
  enforce: "post",
  generateBundle: {
    // It must stand before everything else in the file.
    order: "post",
    handler: (_options, bundle) => {
      for (const part of Object.values(bundle))
        if (part.type === "chunk" && ["reckoning", "first"].includes(part.name))
          part.code = `//# allFunctionsCalledOnLoad\n${part.code}`;
    },
  },
};

/**
 * The page's letters are asked for with its script, not when the first word is laid out: by then the word would be laid out in
 * the letters of the device, which takes a while to find, and once more in these.
 */
const lettersAtOnce: Plugin = {
  name: "letters-at-once",
  apply: "build",
  transformIndexHtml: (_html, { bundle = {} }) =>
    Object.keys(bundle)
      .filter((name) => /latin-wght-normal.*\.woff2$/.test(name))
      .map((name) => ({
        tag: "link",
        attrs: { rel: "preload", as: "font", type: "font/woff2", crossorigin: true, href: `./${name}` },
        injectTo: "head" as const,
      })),
};

/** What stands below the page: nothing there imports the page's own folders. */
const BELOW =
  /[\\/]src[\\/](document|graph|happened|network|physics|rainfall|scene|season|storage|studies|telling|units)[\\/]/;

/** Whether the page's script imports a file, itself or through others, before anything is asked for. */
function makeIsAtFirst() {
  const known = new Map<string, boolean>();
  const isAtFirst = (id: string, context: Rolldown.ChunkingContext): boolean => {
    const before = known.get(id);
    if (before !== undefined) return before;
    // Files that import each other come back here.
    known.set(id, false);
    const importers = context.getModuleInfo(id)?.importers ?? [];
    const found = /[\\/]app[\\/]main\.tsx$/.test(id) || importers.some((one) => isAtFirst(one, context));
    known.set(id, found);
    return found;
  };
  return isAtFirst;
}

/** What the tables tell whoever checks them; the page shows its own words on a row (a test: nothing in src reads these). */
export const FOR_CHECKING: readonly string[] = ["about", "note", "source", "status"];

/** Leaves out of the page what no page reads of the tables, which is half of them. */
const tablesWithoutNotes: Plugin = {
  name: "tables-without-notes",
  apply: "build",
  enforce: "pre",
  transform: (code, id) => {
    if (!/[\\/]shared[\\/][\w-]+\.json$/.test(id)) return null;
    const without = (key: string, value: unknown) => (FOR_CHECKING.includes(key) ? undefined : value);
    return { code: JSON.stringify(JSON.parse(code), without), map: null };
  },
};

const isAtFirst = makeIsAtFirst();

const { version } = JSON.parse(readFileSync(new URL("package.json", import.meta.url), "utf8"));

export default defineConfig({
  // Whatever path of a host the files are put under.
  base: "./",
  plugins: [
    workersCodeStaysThere,
    parserWithoutEvaluating,
    calledAtOnce,
    tablesWithoutNotes,
    solid(),
    {
      name: "policy-in-the-page",
      transformIndexHtml: (html) => html.replace("%POLICY%", POLICY),
    },
    lettersAtOnce,
    withOneFile(() => [solid()]),
    VitePWA({
      // A new version waits until the reader says so, and the page registers the worker itself.
      registerType: "prompt",
      injectRegister: false,
      manifest: {
        name: "Eavesdrip",
        short_name: "Eavesdrip",
        description: "The worksheet for growing on rain.",
        display: "standalone",
        // From the home screen it starts where water is given; the sheet is one touch from there.
        id: "./",
        start_url: "./#bed",
        shortcuts: [
          { name: "At the bed", url: "./#bed" },
          { name: "Today", url: "./#today" },
        ],
        background_color: "#f4f7f5",
        theme_color: "#11528a",
        icons: [
          { src: "icon-192.png", sizes: "192x192", type: "image/png" },
          { src: "icon-512.png", sizes: "512x512", type: "image/png" },
          { src: "icon-maskable-512.png", sizes: "512x512", type: "image/png", purpose: "maskable" },
          { src: "icon.svg", sizes: "any", type: "image/svg+xml" },
        ],
      },
      workbox: {
        globPatterns: ["**/*.{js,css,html,svg,png,woff2,webmanifest}"],
        // The picture is for whoever reads about the project; the page never shows it.
        globIgnores: ["picture.png"],
        // The page in one file is kept, too: it is given away where there is no network.
        maximumFileSizeToCacheInBytes: 4_000_000,
        inlineWorkboxRuntime: true,
        cleanupOutdatedCaches: true,
        navigateFallback: "index.html",
      },
    }),
  ],
  define: {
    "import.meta.env.VITE_VERSION": JSON.stringify(version),
    "import.meta.env.VITE_ONE_FILE": JSON.stringify(ONE_FILE),
  },
  worker: { format: "es" },
  build: {
    target: "es2022",
    assetsInlineLimit: 0,
    sourcemap: false,
    modulePreload: { polyfill: false },
    // All of it is kept on the device at the first visit: in one piece it comes no later than in many.
    chunkSizeWarningLimit: 1000,
    rolldownOptions: {
      output: {
        // Whatever the page needs at first stands in one file, which squeezes better than thirty.
        codeSplitting: {
          groups: [
            { name: "reckoning", test: /src[\\/]graph[\\/](build|evaluate)\.ts$/, priority: 3 },
            { name: "kinds", test: /src[\\/]kinds[\\/]index\.ts$/, priority: 2 },
            // Little of it is called before the page says anything: in a file of its own it is not translated as it is read.
            {
              name: (id, context) => (BELOW.test(id) && isAtFirst(id, context) ? "below" : null),
              debugName: "below",
              priority: 1,
            },
            { name: "first", test: /src[\\/]app[\\/]main\.tsx$/ },
          ],
        },
      },
    },
  },
});
