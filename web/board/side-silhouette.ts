import type { Vec2 } from "../../core/foundation/index.ts";
import { faceHeightAt, type SectionSheet } from "../../core/surfaces/index.ts";
import { crossingsOfLoop } from "./crossings-of-loop.ts";
import { extentOf } from "./extents.ts";

const SAMPLES = 40;
/** So far inside its ends a sheet is sampled, that the sample lies on it, mm. */
const INSIDE_MM = 0.05;

/** A sheet cut lengthwise along its middle: the air side and the foam's faces as lines (x, z), front to rear. */
export interface Silhouette {
  readonly coreLower: readonly Vec2[];
  readonly coreUpper: readonly Vec2[];
}

/** What a sheet looks like in the side view, cut along its middle at every station. */
export function sideSilhouette(sheet: SectionSheet): Silhouette {
  const extent = extentOf(sheet.planLoops.flatMap((loop) => loop.map((point): Vec2 => [point.x, point.y])));
  if (!extent) return { coreLower: [], coreUpper: [] };
  const from = extent.left + INSIDE_MM;
  const span = extent.right - extent.left - 2 * INSIDE_MM;
  const places = Array.from({ length: SAMPLES + 1 }, (_, index) => from + (span * index) / SAMPLES).flatMap(
    (x) => {
      const y = middleAt(sheet, x);
      return y === undefined ? [] : [{ x, y }];
    },
  );
  const face = (depthMm: number) =>
    places.flatMap((place): readonly Vec2[] => {
      const z = faceHeightAt(sheet, depthMm, place);
      return z === undefined ? [] : [[place.x, z]];
    });
  return { coreLower: face(sheet.depths.coreLowerMm), coreUpper: face(sheet.depths.coreUpperMm) };
}

/** The middle of the first stretch of a station that the outline covers. */
function middleAt({ planLoops }: SectionSheet, x: number): number | undefined {
  const [first, second] = planLoops.flatMap((loop) => crossingsOfLoop(loop, x)).sort((a, b) => a - b);
  return first === undefined || second === undefined ? undefined : (first + second) / 2;
}
