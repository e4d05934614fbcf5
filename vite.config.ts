import { readFileSync } from "node:fs";
import { defineConfig } from "vite";
import { VitePWA } from "vite-plugin-pwa";
import solid from "vite-plugin-solid";
import { POLICY } from "./src/cli/serve.mjs";

const { version } = JSON.parse(readFileSync(new URL("package.json", import.meta.url), "utf8"));

export default defineConfig({
  plugins: [
    solid(),
    {
      name: "policy-in-the-page",
      transformIndexHtml: (html) => html.replace("%POLICY%", POLICY),
    },
    VitePWA({
      // A new version waits until the reader says so, and the page registers the worker itself.
      registerType: "prompt",
      injectRegister: false,
      manifest: {
        name: "Eavesdrip",
        short_name: "Eavesdrip",
        description: "The worksheet for growing on rain.",
        display: "standalone",
        start_url: "/",
        background_color: "#f4f7f5",
        theme_color: "#145a96",
        icons: [
          { src: "/icon-192.png", sizes: "192x192", type: "image/png" },
          { src: "/icon-512.png", sizes: "512x512", type: "image/png" },
          { src: "/icon-maskable-512.png", sizes: "512x512", type: "image/png", purpose: "maskable" },
          { src: "/icon.svg", sizes: "any", type: "image/svg+xml" },
        ],
      },
      workbox: {
        globPatterns: ["**/*.{js,css,html,svg,png,woff2,webmanifest}"],
        // The picture is for whoever reads about the project; the page never shows it.
        globIgnores: ["picture.png"],
        inlineWorkboxRuntime: true,
        cleanupOutdatedCaches: true,
        navigateFallback: "/index.html",
      },
    }),
  ],
  define: { "import.meta.env.VITE_VERSION": JSON.stringify(version) },
  worker: { format: "es" },
  build: {
    target: "es2022",
    assetsInlineLimit: 0,
    sourcemap: false,
    modulePreload: { polyfill: false },
    // All of it is kept on the device at the first visit: in one piece it comes no later than in many.
    chunkSizeWarningLimit: 1000,
  },
});
