import { at } from "../foundation/index.ts";
import type { Joint } from "../joints/index.ts";
import type { ClothPly } from "../project/index.ts";
import type { FaceJoint } from "./joint-lines.ts";
import type { OutsideCorner, SkinFaceName } from "./types.ts";

/** What cloth bends round: laid at 45° to the corner (published, weak), else with fibres square to it (common practice), mm. */
const [ON_BIAS_MM, SQUARE_MM] = [3.2, 6];
/** Fibres that cross a corner within so much of 45° still bend round it as on the bias, rad (common practice: 20°). */
const BIAS_WITHIN_RAD = Math.PI / 9;
/** A corner that folds less is no corner to the cloth, rad (common practice: 10°). */
const FLAT_RAD = Math.PI / 18;

/** How far a corner rounded to a radius lies inside the drawn edge: r (1/cos(φ/2) − 1), φ the fold of the faces. */
export const roundedOffMm = (foldRad: number, radiusMm: number): number =>
  radiusMm * (1 / Math.cos(foldRad / 2) - 1);

/** The outside corners of a face at joints: to what radius they are rounded for the cloth, and how far the face moves. */
export function outsideCorners(
  face: SkinFaceName,
  lines: readonly FaceJoint[],
  joints: readonly Joint[],
  plies: readonly ClothPly[],
): readonly OutsideCorner[] {
  return lines.flatMap(({ jointId, regions, lines: [line] }): readonly OutsideCorner[] => {
    const joint = joints.find(({ id }) => id === jointId);
    const [from, to] = [line[0], line[line.length - 1]];
    if (!joint || !from || !to) return [];
    const folds = joint.stations.map(({ foldRad }) => foldRad);
    // The core inside the fold: the air face turns outward there, the upper face inward.
    const outward = Math.max(...folds.map((fold) => (face === "lower face" ? fold : -fold)));
    if (outward < FLAT_RAD) return [];
    const alongRad = Math.atan2(to.v - from.v, to.u - from.u);
    const radiusMm = cornerRadiusMm(alongRad - at(regions, 0).rearwardRad, plies);
    return [{ jointId, foldRad: outward, radiusMm, offMm: roundedOffMm(outward, radiusMm) }];
  });
}

/** The radius for an edge that runs so to the forward line: the larger one unless every ply crosses it near 45°. */
export function cornerRadiusMm(alongRad: number, plies: readonly ClothPly[]): number {
  const isOnBias = ({ warpRad }: ClothPly) => {
    const quarter = Math.PI / 2;
    const across = (((warpRad - alongRad) % quarter) + quarter) % quarter;
    return Math.abs(across - quarter / 2) <= BIAS_WITHIN_RAD;
  };
  return plies.length > 0 && plies.every(isOnBias) ? ON_BIAS_MM : SQUARE_MM;
}
