import { type Curve, type CurvePiece, extremeParameters, pointOnPiece } from "../curves/index.ts";
import { FLAT_RADIUS_MM, PROFILE_FALLBACK_MM, type Problem, type Vec2 } from "../foundation/index.ts";
import type { FaceDepths } from "../laminate/index.ts";
import type { Profile, Section } from "../project/index.ts";
import { bendAtPlace, profileAtPlace, xiOfPlan, xiRange } from "./cylinder-chart.ts";
import type { CylinderChart } from "./types.ts";

/** What an outline needs of its profile beyond its ends, as a problem; undefined where the profile covers it. */
export function profileShortage(
  section: Section,
  profile: Profile,
  chart: CylinderChart,
  outline: Curve,
): Problem | undefined {
  const normal: Vec2 = [1, -chart.tanHeading];
  const xis = outline.pieces.flatMap((piece) =>
    [0, ...extremeParameters(piece, normal)].map((t) => {
      const [x, y] = pointOnPiece(piece, t);
      return xiOfPlan(chart, { x, y });
    }),
  );
  const [first, last] = xiRange(chart);
  const missingFrontMm = Math.max(0, first - Math.min(...xis));
  const missingRearMm = Math.max(0, Math.max(...xis) - last);
  if (missingFrontMm <= PROFILE_FALLBACK_MM && missingRearMm <= PROFILE_FALLBACK_MM) return undefined;
  return {
    kind: "profile-too-short",
    place: { itemId: section.id },
    name: section.name,
    profileName: profile.name,
    missingFrontMm,
    missingRearMm,
  };
}

/** The first place where a face's offset is larger than the radius that it bends to. */
export function offsetProblem(
  section: Section,
  profile: Profile,
  chart: CylinderChart,
  depths: FaceDepths,
): Problem | undefined {
  for (const [index, { piece }] of chart.pieces.entries()) {
    if (piece.kind === "line") continue;
    for (const t of bendSamples(piece)) {
      const { curvaturePerMm } = bendAtPlace(chart, { index, t });
      const offsetMm = curvaturePerMm > 0 ? depths.upperMm : -depths.airMm;
      if (Math.abs(curvaturePerMm) * FLAT_RADIUS_MM <= 1 || offsetMm * Math.abs(curvaturePerMm) < 1) continue;
      const nodeId = t < 0.5 ? piece.startNodeId : piece.endNodeId;
      return {
        kind: "offset-exceeds-radius",
        place: { itemId: section.id, profileId: profile.id, ...(nodeId !== undefined && { nodeId }) },
        name: profile.name,
        radiusMm: 1 / Math.abs(curvaturePerMm),
        offsetMm,
        atXMm: profileAtPlace(chart, { index, t })[0],
      };
    }
  }
  return undefined;
}

/** Where a piece's curvature is looked at: an arc once, a cubic in 32 places (its curvature is near linear in t). */
export const bendSamples = (piece: CurvePiece): readonly number[] =>
  piece.kind === "arc" ? [0.5] : Array.from({ length: 33 }, (_, i) => i / 32);
