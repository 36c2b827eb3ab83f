import { createHash } from "node:crypto";
import react from "@vitejs/plugin-react";
import type { Plugin } from "vite";
import { defineConfig } from "vitest/config";

/** A machine that does much else at once takes longer. */
const SLOW_MACHINE_MS = 60_000;

export default defineConfig({
  root: "web",
  base: "./",
  plugins: [react(), withoutOptionalPdfParts(), offlineWorker()],
  build: {
    outDir: "../dist",
    emptyOutDir: true,
    chunkSizeWarningLimit: 1200,
    rolldownOptions: { checks: { pluginTimings: false } },
  },
  worker: {
    format: "es",
    rolldownOptions: { checks: { pluginTimings: false } },
    plugins: () => [withoutOptionalPdfParts()],
  },
  test: {
    root: ".",
    projects: [
      {
        test: {
          name: "unit",
          root: ".",
          environment: "node",
          include: ["tests/{core,sources}/**/*.test.ts"],
          // The core keeps nothing between calls: its modules are loaded once for all files.
          isolate: false,
          maxWorkers: 2,
          testTimeout: SLOW_MACHINE_MS,
        },
      },
      {
        test: {
          name: "page",
          root: ".",
          environment: "node",
          include: ["tests/web/**/*.test.ts"],
          maxWorkers: 2,
          testTimeout: SLOW_MACHINE_MS,
        },
      },
      {
        test: {
          name: "browser",
          root: ".",
          environment: "node",
          include: ["tests/browser/**/*.test.ts"],
          globalSetup: ["tests/browser/build.ts"],
          // Each file has a browser of its own, which waits as often as it works.
          maxWorkers: 2,
          expect: { poll: { timeout: 30_000, interval: 50 } },
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});

/** The PDF writer can draw web pages and SVG files through three large libraries; this program does neither. */
function withoutOptionalPdfParts(): Plugin {
  const optional = new Set(["canvg", "html2canvas", "dompurify"]);
  const empty = "\0empty-module";
  return {
    name: "without-optional-pdf-parts",
    enforce: "pre",
    resolveId: (id) => (optional.has(id) ? empty : null),
    load: (id) => (id === empty ? "export default {};" : null),
  };
}

/**
 * Writes a service worker that keeps the whole program on the device. Its cache is named by the contents of all
 * files, so that a changed file makes a new cache. A new version takes over at the next load of the only open
 * tab, never under a tab in use.
 */
function offlineWorker(): Plugin {
  return {
    name: "offline-worker",
    apply: "build",
    generateBundle: {
      order: "post",
      handler(_options, bundle) {
        const hash = createHash("sha256");
        const files = Object.values(bundle).sort((a, b) => a.fileName.localeCompare(b.fileName));
        for (const file of files)
          hash.update(file.fileName).update(file.type === "chunk" ? file.code : file.source);
        const names = ["./", ...files.map((file) => file.fileName)].filter((name) => name !== "index.html");
        const source = serviceWorkerSource(`traywright-${hash.digest("hex").slice(0, 16)}`, names);
        this.emitFile({ type: "asset", fileName: "offline.js", source });
      },
    },
  };
}

function serviceWorkerSource(cacheName: string, files: readonly string[]): string {
  return `const CACHE = ${JSON.stringify(cacheName)};
const FILES = ${JSON.stringify(files)};
self.addEventListener("install", (event) => {
  event.waitUntil(caches.open(CACHE).then((cache) => cache.addAll(FILES)));
});
self.addEventListener("activate", (event) => {
  const isOld = (name) => name.startsWith("traywright-") && name !== CACHE;
  event.waitUntil(caches.keys().then((names) => Promise.all(names.filter(isOld).map((name) => caches.delete(name)))));
});
self.addEventListener("message", (event) => {
  if (event.data === "take-over") self.skipWaiting();
});
self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || new URL(request.url).origin !== self.location.origin) return;
  event.respondWith(answer(request));
});
async function answer(request) {
  if (request.mode === "navigate" && (await newVersionMayTakeOver())) {
    self.registration.waiting.postMessage("take-over");
    return new Response("", { headers: { Refresh: "0" } });
  }
  const key = request.mode === "navigate" ? "./" : request;
  const kept = await caches.match(key, { ignoreVary: true, cacheName: CACHE });
  return kept ?? fetch(request);
}
async function newVersionMayTakeOver() {
  if (!self.registration.waiting) return false;
  const tabs = await self.clients.matchAll({ type: "window", includeUncontrolled: true });
  return tabs.length < 2;
}
`;
}
