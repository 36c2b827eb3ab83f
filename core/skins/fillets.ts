import { at, type SpacePoint } from "../foundation/index.ts";
import type { Joint } from "../joints/index.ts";
import type { Part } from "../patterns/index.ts";
import type { Sheet } from "../surfaces/index.ts";
import { isOnCore } from "./face-regions.ts";
import type { Fillet } from "./types.ts";

/** Thickened resin, kg/m³ (from memory: epoxy with hollow spheres to a stiff paste). */
const FILLET_KG_PER_M3 = 800;
/** Cloth follows a shallower inside corner by itself, rad (common practice: 30°). */
const SHALLOW_RAD = Math.PI / 6;

/**
 * The area between two faces that meet in a corner of `insideRad` and a round fillet tangent to both:
 * r² (cot(θ/2) − (π − θ)/2). At a right angle that is r² (1 − π/4).
 */
export const filletMm2 = (insideRad: number, radiusMm: number): number =>
  radiusMm ** 2 * (1 / Math.tan(insideRad / 2) - (Math.PI - insideRad) / 2);

/** How far cloth runs over such a fillet, mm. */
export const filletArcMm = (insideRad: number, radiusMm: number): number => radiusMm * (Math.PI - insideRad);

/**
 * The fillets of a tray: on both sides of every fence along its real seat, and in every inside corner of sheets that is not
 * shallow, on the face where it is one. Volumes along the joint with its fold as it changes.
 */
export function filletsOf(
  joints: readonly Joint[],
  parts: readonly Part[],
  sheets: readonly Sheet[],
  radiusMm: number,
): readonly Fillet[] {
  if (radiusMm <= 0) return [];
  return joints.flatMap((joint): readonly Fillet[] => {
    if (joint.kind === "fence seat") {
      const after = isOnCore(joint.partIds[0], parts, sheets)
        ? ("glued fence" as const)
        : ("skinned fence" as const);
      return ([1, -1] as const).map((sign) =>
        filletAlong(
          joint,
          sign > 0 ? "outboard face" : "inboard face",
          after,
          radiusMm,
          ({ bevelRad }) => Math.PI / 2 + sign * bevelRad[0],
        ),
      );
    }
    const steepest = Math.max(...joint.stations.map(({ foldRad }) => Math.abs(foldRad)));
    if (steepest < SHALLOW_RAD) return [];
    const side = at(joint.stations, 0).foldRad > 0 ? "upper face" : "lower face";
    return [filletAlong(joint, side, "sheets", radiusMm, ({ foldRad }) => Math.PI - Math.abs(foldRad))];
  });
}

type Station = Joint["stations"][number];

function filletAlong(
  joint: Joint,
  side: Fillet["side"],
  between: Fillet["between"],
  radiusMm: number,
  insideAt: (station: Station) => number,
): Fillet {
  let [lengthMm, volumeMm3] = [0, 0];
  for (let i = 0; i + 1 < joint.stations.length; i++) {
    const [a, b] = [at(joint.stations, i), at(joint.stations, i + 1)];
    const stepMm = apart(a.at, b.at);
    lengthMm += stepMm;
    volumeMm3 += (stepMm * (filletMm2(insideAt(a), radiusMm) + filletMm2(insideAt(b), radiusMm))) / 2;
  }
  return {
    jointId: joint.id,
    side,
    between,
    radiusMm,
    lengthMm,
    volumeMm3,
    massKg: volumeMm3 * 1e-9 * FILLET_KG_PER_M3,
  };
}

const apart = (a: SpacePoint, b: SpacePoint): number => Math.hypot(b.x - a.x, b.y - a.y, b.z - a.z);
