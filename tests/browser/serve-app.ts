import { spawnSync } from "node:child_process";
import { createServer } from "node:net";
import { resolve } from "node:path";
import { preview } from "vite";

/** A built app that is being served: its address, and how to end it. */
export interface ServedApp {
  readonly address: string;
  readonly close: () => Promise<void>;
}

/** Kept apart from `dist`, so that a page that is open from `npm start` is left alone. */
const OUT_DIR = resolve("node_modules/.browser-tests");

/**
 * Builds the app as it is shipped and serves it on a free port. The build runs in a process of its own: inside
 * the test runner it would inherit NODE_ENV=test, and the offline worker would be left out.
 */
export async function buildAndServe(): Promise<ServedApp> {
  const env = { ...process.env, NODE_ENV: "production" };
  const vite = resolve("node_modules/vite/bin/vite.js");
  const arguments_ = [vite, "build", "--logLevel", "warn", "--outDir", OUT_DIR, "--emptyOutDir"];
  const { status } = spawnSync(process.execPath, arguments_, { stdio: "inherit", env });
  if (status !== 0) throw new Error("The app could not be built.");
  const port = await freePort();
  const server = await preview({
    build: { outDir: OUT_DIR },
    preview: { port, strictPort: true, host: "127.0.0.1", open: false },
    logLevel: "warn",
  });
  return { address: `http://127.0.0.1:${port}/`, close: () => server.close() };
}

function freePort(): Promise<number> {
  return new Promise((found, failed) => {
    const server = createServer();
    server.on("error", failed);
    server.listen(0, "127.0.0.1", () => {
      const address = server.address();
      const port = typeof address === "object" && address ? address.port : 0;
      server.close(() => found(port));
    });
  });
}
