import type { Part } from "../patterns/index.ts";
import { type EdgeFinish, finishOfEdge, type LaminateSettings } from "../project/index.ts";
import type { FaceEdge, FaceRegion } from "./face-regions.ts";
import { filletArcMm } from "./fillets.ts";
import { inwardOf } from "./joint-laps.ts";
import { type Area, bandBeside, lengthMm, subtract } from "./polygons.ts";
import type { FinishedEdges } from "./types.ts";

/** Round the edge and so far onto the other face; what is laid past it and trimmed off, mm (common practice). */
const [WRAP_MM, TRIM_MM] = [25, 20];
/** Each ply ends so far behind the one below, mm (published, weak: 6; here 10). */
const PLY_STEP_MM = 10;

/** Cloth beyond the edges of a face in a ply: round free edges as they are finished, and from a fence onto the sheet it stands on. */
export function edgeFlaps(
  region: FaceRegion,
  ply: number,
  laminate: LaminateSettings,
  faces: { readonly isLaidSecond: boolean; readonly standsOnCore: boolean },
): Area {
  return region.edges.flatMap((edge): Area => {
    const widthMm = beyondMm(region, edge, ply, laminate, faces);
    if (widthMm <= 0) return [];
    const inward = inwardOf(edge.line, region.area);
    return subtract(bandBeside(edge.line, -inward * widthMm), region.inner);
  });
}

function beyondMm(
  region: FaceRegion,
  edge: FaceEdge,
  ply: number,
  laminate: LaminateSettings,
  { isLaidSecond, standsOnCore }: { readonly isLaidSecond: boolean; readonly standsOnCore: boolean },
): number {
  const isFence = region.part.kind === "fence";
  if (isFence && edge.role === "joint" && standsOnCore) {
    const arcMm = filletArcMm(Math.PI / 2, laminate.filletMm);
    return Math.max(arcMm, arcMm + laminate.overlapMm - ply * PLY_STEP_MM);
  }
  if (edge.role !== "free") return 0;
  switch (finishOfEdge(laminate, region.part.itemId, edge.edgeId)) {
    case "wrapped": {
      // The face that is laid second closes round the edge onto the first; of a fence its outboard side does.
      const closes = isFence ? region.side === "outboard face" : isLaidSecond;
      const { thicknessMm } = region.part;
      return closes ? Math.max(thicknessMm, thicknessMm + WRAP_MM - ply * PLY_STEP_MM) : 0;
    }
    case "flange":
    case "trimmed":
      return TRIM_MM;
    case "insert":
      return 0;
  }
}

/** The free edges of lower faces and inboard sides, each edge once, summed by finish; and what is let in or taken away there. */
export function finishedEdges(
  regions: readonly FaceRegion[],
  laminate: LaminateSettings,
): readonly FinishedEdges[] {
  const own = regions.filter(({ side }) => side === "lower face" || side === "inboard face");
  return FINISHES.flatMap((finish): readonly FinishedEdges[] => {
    const edges = own.flatMap(({ part, edges }) =>
      edges
        .filter(
          ({ role, edgeId }) => role === "free" && finishOfEdge(laminate, part.itemId, edgeId) === finish,
        )
        .map((edge) => ({ part, lengthMm: lengthMm(edge.line) })),
    );
    if (edges.length === 0) return [];
    const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
    const isOfSome = (kind: (part: Part) => boolean) => edges.some(({ part }) => kind(part));
    return [
      {
        finish,
        lengthMm: sum(edges.map((edge) => edge.lengthMm)),
        widthMm: finish === "flange" ? laminate.flangeMm : finish === "insert" ? laminate.insertMm : 0,
        chamferRun: laminate.chamferRun,
        foamAwayMm3: sum(
          edges.map(({ part, ...edge }) => edge.lengthMm * foamAwayMm2(finish, part, laminate)),
        ),
        thicknessesMm: [...new Set(edges.map(({ part }) => part.thicknessMm))].sort((a, b) => a - b),
        areOnFences: isOfSome(({ kind }) => kind === "fence"),
        areOnSheets: isOfSome(({ kind }) => kind !== "fence"),
      },
    ];
  });
}

/** Whether free edges of a lying face have a flange: there the second skin comes to lie on the first. */
export const hasFlangeOn = ({ part, edges }: FaceRegion, laminate: LaminateSettings): boolean =>
  part.kind !== "fence" &&
  edges.some(
    ({ role, edgeId }) => role === "free" && finishOfEdge(laminate, part.itemId, edgeId) === "flange",
  );

const FINISHES: readonly EdgeFinish[] = ["wrapped", "flange", "insert", "trimmed"];

/** Of each part the foam that its flanges take away once it was cut, mm³: what was cut short for them is gone before. */
export const foamAwayMm3 = (part: Part, laminate: LaminateSettings): number =>
  part.panel
    ? 0
    : part.edges
        .filter(({ role }) => role === "free")
        .reduce((total, { edgeId, flatLengthMm }) => {
          const finish = finishOfEdge(laminate, part.itemId, edgeId);
          return total + flatLengthMm * foamAwayMm2(finish, part, laminate);
        }, 0);

/**
 * The section of foam that a flange takes away, mm²: of a lying sheet its own width and half of the chamfer behind it; of a
 * fence, whose foam is cut short for it, a chamfer from each side to the middle.
 */
function foamAwayMm2(
  finish: EdgeFinish,
  { kind, thicknessMm }: Part,
  { flangeMm, chamferRun }: LaminateSettings,
): number {
  if (finish !== "flange") return 0;
  const runMm = chamferRun * thicknessMm;
  return kind === "fence" ? (thicknessMm * runMm) / 4 : thicknessMm * (flangeMm + runMm / 2);
}
