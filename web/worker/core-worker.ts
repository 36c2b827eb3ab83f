import { expose } from "comlink";
import type { Design } from "../../core/design.ts";
import * as core from "../../core/design.ts";
import type { Project } from "../../core/project/index.ts";

// Until the core can design, a sample stands in for it.
const samples = import.meta.glob<{ sampleDesign: Design }>("../../tests/web/sample-design.ts");

/** The core's doors for the page; everything that crosses is plain data. */
const doors = {
  async design(project: Project): Promise<Design> {
    if ("designTray" in core) return core.designTray(project);
    const sample = await Object.values(samples)[0]?.();
    if (sample) return sample.sampleDesign;
    throw new Error("The core is not here yet.");
  },
};

export type CoreDoors = typeof doors;

expose(doors);
