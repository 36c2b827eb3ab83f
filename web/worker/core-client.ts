import { type Remote, wrap } from "comlink";
import type { Shapes, Work } from "../../core/design.ts";
import type { PartOutline } from "../../core/patterns/index.ts";
import type { Project } from "../../core/project/index.ts";
import type { CoreDoors } from "./core-worker.ts";
import { newArrival, newDeparture } from "./crossing.ts";

let running: Remote<CoreDoors> | undefined;

/** The core in a worker of its own, which computes the design at every change; started at the first call. */
export function core(): Remote<CoreDoors> {
  running ??= wrap<CoreDoors>(newWorker());
  return running;
}

/** The core as it computes the design of the page, one question at a time; what has not changed keeps its identity. */
export function designCore() {
  const sendProject = newDeparture<Project>();
  const takeShapes = newArrival<Shapes>();
  const takeWork = newArrival<Work>();
  return {
    outlines: (project: Project): Promise<readonly PartOutline[]> => core().outlines(sendProject(project)),
    shape: async (): Promise<Shapes> => takeShapes(await core().shape()),
    plan: async (): Promise<Work> => takeWork(await core().plan()),
  };
}

/** A second core for long work such as writing a PDF, so that the drawing goes on; `stop` ends it at once. */
export function startCore(): { readonly core: Remote<CoreDoors>; readonly stop: () => void } {
  const worker = newWorker();
  return { core: wrap<CoreDoors>(worker), stop: () => worker.terminate() };
}

const newWorker = (): Worker =>
  new Worker(new URL("./core-worker.ts", import.meta.url), { type: "module", name: "core" });
