import { at, type SpacePoint } from "../foundation/index.ts";
import { narrowedMm } from "./bend-figures.ts";
import { startFrame } from "./edge-frame.ts";
import type { BaseEdge, BendFigures, FoldedWing, MetalLine, PlacedWing } from "./types.ts";

/** Bends are drawn in steps of this turn at most. */
const STEP_RAD = Math.PI / 36;

/**
 * A wing folded up, in space, over a base whose air side lies at `zMm`. The base ends at the bend's tangent; the bend
 * turns about an axis over it (up) or under it (down); the wing goes on straight.
 */
export function foldWing(placed: PlacedWing, edge: BaseEdge, zMm: number): FoldedWing {
  const { figures, startAlongMm, endAlongMm, startTaperRad, endTaperRad } = placed;
  const section = bendSection(figures);
  const frame = startFrame(at(edge.points, 0), at(edge.points, -1));
  const lay = (alongMm: number, { outMm, upMm }: SectionPoint): SpacePoint => ({
    x: frame.origin.x + frame.along.x * alongMm + frame.outward.x * outMm,
    y: frame.origin.y + frame.along.y * alongMm + frame.outward.y * outMm,
    z: zMm + upMm,
  });
  const across = (turnRad: number): MetalLine => {
    const [air, upper] = [section.bendAt(turnRad, "air"), section.bendAt(turnRad, "upper")];
    return {
      air: [lay(startAlongMm, air), lay(endAlongMm, air)],
      upper: [lay(startAlongMm, upper), lay(endAlongMm, upper)],
    };
  };
  const steps = Math.max(2, Math.ceil(figures.angleRad / STEP_RAD - 1e-9));
  const bend = Array.from({ length: steps + 1 }, (_, i) => across((figures.angleRad * i) / steps));
  const freeStartMm = startAlongMm + narrowedMm(figures, startTaperRad);
  const freeEndMm = endAlongMm - narrowedMm(figures, endTaperRad);
  const faceOf = (face: Face): readonly SpacePoint[] => {
    const [foot, free] = [section.flangeAt(0, face), section.flangeAt(figures.flangeMm, face)];
    return [lay(startAlongMm, foot), lay(endAlongMm, foot), lay(freeEndMm, free), lay(freeStartMm, free)];
  };
  const { id, wingId, name } = placed;
  return { id, wingId, name, airFace: faceOf("air"), upperFace: faceOf("upper"), bend };
}

type Face = "air" | "upper";

/** A point in the section square to a bend: outward from the drawn edge, and up from the base's air side. */
interface SectionPoint {
  readonly outMm: number;
  readonly upMm: number;
}

interface BendSection {
  /** On a face of the bend, turned so far out of the base. */
  readonly bendAt: (turnRad: number, face: Face) => SectionPoint;
  /** On a face of the wing, so far beyond its bend. */
  readonly flangeAt: (beyondMm: number, face: Face) => SectionPoint;
}

/** The section of a bend: arcs about one axis, straight on from their ends. */
function bendSection({
  direction,
  angleRad,
  insideRadiusMm,
  thicknessMm,
  airSetBackMm,
}: BendFigures): BendSection {
  const sign = direction === "up" ? 1 : -1;
  const axisUpMm = direction === "up" ? insideRadiusMm + thicknessMm : -insideRadiusMm;
  const radiusMm = (face: Face): number =>
    insideRadiusMm + ((face === "air") === (direction === "up") ? thicknessMm : 0);
  const bendAt = (turnRad: number, face: Face): SectionPoint => ({
    outMm: -airSetBackMm + radiusMm(face) * Math.sin(turnRad),
    upMm: axisUpMm - sign * radiusMm(face) * Math.cos(turnRad),
  });
  const flangeAt = (beyondMm: number, face: Face): SectionPoint => {
    const { outMm, upMm } = bendAt(angleRad, face);
    return {
      outMm: outMm + beyondMm * Math.cos(angleRad),
      upMm: upMm + sign * beyondMm * Math.sin(angleRad),
    };
  };
  return { bendAt, flangeAt };
}
