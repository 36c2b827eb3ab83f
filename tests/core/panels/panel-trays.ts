import type { Fence, Project } from "../../../core/project/index.ts";
import { fence, planNode, rectangle, section, straightProfile, tray } from "../trays.ts";

const line = (y: number, toY = y) => [planNode("n1", 100, y), planNode("n2", 900, toY)];

/** A fence from x 100 to x 900 under a sheet, `depthMm` deep, on the finished skin and cut from a panel. */
export const panelFence = (number: number, y: number, changes: Partial<Fence> = {}): Fence =>
  fence(number, line(y), {
    seat: "skin",
    panel: {},
    lowerEdge: { kind: "depths", nodes: [{ id: "d", alongMm: 0, depthMm: 60 }] },
    ...changes,
  });

/** A level sheet of 1000 by 600 mm of 10 mm foam at a height of 120 mm, with fences under it. */
export function panelTray(fences: readonly Fence[], changes: Partial<Project> = {}): Project {
  const project = tray(
    { p: straightProfile(-100, 120, 1200, 120) },
    [section(1, rectangle(0, 1000, 0, 600)), ...fences],
    { thicknessMm: 10 },
  );
  return {
    ...project,
    stock: [{ id: "sheet", foamId: "xps", thicknessMm: 10, lengthMm: 1250, widthMm: 600 }],
    ...changes,
  };
}
