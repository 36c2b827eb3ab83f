import { type Remote, wrap } from "comlink";
import type { CoreDoors } from "./core-worker.ts";

let running: Remote<CoreDoors> | undefined;

/** The core in a worker of its own, which computes the design at every change; started at the first call. */
export function core(): Remote<CoreDoors> {
  running ??= wrap<CoreDoors>(newWorker());
  return running;
}

/** A second core for long work such as writing a PDF, so that the drawing goes on; `stop` ends it at once. */
export function startCore(): { readonly core: Remote<CoreDoors>; readonly stop: () => void } {
  const worker = newWorker();
  return { core: wrap<CoreDoors>(worker), stop: () => worker.terminate() };
}

const newWorker = (): Worker =>
  new Worker(new URL("./core-worker.ts", import.meta.url), { type: "module", name: "core" });
