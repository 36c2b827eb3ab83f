import { LARGEST_COORDINATE_MM, type Vec2 } from "../../core/foundation/index.ts";
import type { DrawingView, Scene } from "../tools/index.ts";
import type { Extent } from "./viewport.ts";

/** What an empty board shows: room for a floor of the usual size, and for its height. */
const EMPTY_PLAN: Extent = { left: 0, right: 2000, bottom: -700, top: 700 };
const EMPTY_SIDE: Extent = { left: 0, right: 2000, bottom: 0, top: 200 };
const LEAST_SPAN_MM = 100;

/** The box around everything drawn in plan, with its mirror image. */
export function planExtent(scene: Scene): Extent {
  const extent = extentOf(pointsIn(scene, "plan"));
  if (!extent) return EMPTY_PLAN;
  return scene.mirrored
    ? { ...extent, bottom: Math.min(extent.bottom, -extent.top), top: Math.max(extent.top, -extent.bottom) }
    : extent;
}

/** The box around everything drawn in the side view, down to the ground. */
export function sideExtent(scene: Scene): Extent {
  const extent = extentOf(pointsIn(scene, "side"));
  if (!extent) return { ...EMPTY_SIDE, ...sidesOf(scene) };
  return { ...extent, bottom: Math.min(0, extent.bottom), top: Math.max(extent.top, LEAST_SPAN_MM) };
}

function sidesOf(scene: Scene): Partial<Extent> {
  const plan = extentOf(pointsIn(scene, "plan"));
  return plan ? { left: plan.left, right: plan.right } : {};
}

/** The box around points; undefined for none. */
export function extentOf(points: readonly Vec2[]): Extent | undefined {
  let extent: Extent | undefined;
  for (const [across, up] of points) {
    if (!isSensible(across) || !isSensible(up)) continue;
    extent = extent
      ? {
          left: Math.min(extent.left, across),
          right: Math.max(extent.right, across),
          bottom: Math.min(extent.bottom, up),
          top: Math.max(extent.top, up),
        }
      : { left: across, right: across, bottom: up, top: up };
  }
  return extent;
}

/** A slip of the keyboard is no reason to show the tray from a mile away. */
const isSensible = (mm: number): boolean => Math.abs(mm) <= LARGEST_COORDINATE_MM;

const pointsIn = (scene: Scene, view: DrawingView): readonly Vec2[] =>
  scene.lines
    .filter((line) => line.view === view)
    .flatMap((line) => [
      ...line.nodes.map((node) => node.at),
      ...line.edges.flatMap((edge) => edge.stretches.flatMap((stretch) => stretch.points)),
    ]);
