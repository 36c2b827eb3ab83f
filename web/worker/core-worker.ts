import { expose } from "comlink";
import type { Design } from "../../core/design.ts";
import * as core from "../../core/design.ts";
import type { Project } from "../../core/project/index.ts";

/** The core's doors for the page; everything that crosses is plain data. */
const doors = {
  async design(project: Project): Promise<Design> {
    if (!("designTray" in core)) throw new Error("The core is not here yet.");
    return core.designTray(project);
  },
};

export type CoreDoors = typeof doors;

expose(doors);
