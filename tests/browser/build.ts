import type { TestProject } from "vitest/node";
import { CHROMIUM_ADVICE, findChromium } from "./find-chromium.ts";
import { buildAndServe } from "./serve-app.ts";

declare module "vitest" {
  export interface ProvidedContext {
    readonly address: string;
    readonly chromiumPath: string;
  }
}

/** Before all browser tests: finds Chromium, builds the app and serves it; the tests get both by `inject`. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const chromium = findChromium((line) => process.stdout.write(`${line}\n`));
  if (!chromium.ok) throw new Error([...chromium.tried, CHROMIUM_ADVICE].join("\n"));
  const app = await buildAndServe();
  project.provide("address", app.address);
  project.provide("chromiumPath", chromium.path);
  return app.close;
}
