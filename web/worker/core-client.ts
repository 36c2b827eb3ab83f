import { type Remote, wrap } from "comlink";
import type { CoreDoors } from "./core-worker.ts";

/** Starts a worker that runs the core. */
export function startCore(): { readonly core: Remote<CoreDoors>; readonly stop: () => void } {
  const worker = new Worker(new URL("./core-worker.ts", import.meta.url), { type: "module" });
  return { core: wrap<CoreDoors>(worker), stop: () => worker.terminate() };
}
