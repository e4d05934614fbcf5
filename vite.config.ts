import { defineConfig } from "vite";
import solid from "vite-plugin-solid";
import { POLICY } from "./src/cli/serve.mjs";

export default defineConfig({
  plugins: [
    solid(),
    {
      name: "policy-in-the-page",
      transformIndexHtml: (html) => html.replace("%POLICY%", POLICY),
    },
  ],
  worker: { format: "es" },
  build: { target: "es2022", assetsInlineLimit: 0, sourcemap: false, modulePreload: { polyfill: false } },
});
