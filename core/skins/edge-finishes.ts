import type { EdgeFinish, LaminateSettings } from "../project/index.ts";
import type { FaceEdge, FaceRegion } from "./face-regions.ts";
import { filletArcMm } from "./fillets.ts";
import { inwardOf } from "./joint-laps.ts";
import { type Area, bandBeside, lengthMm, subtract } from "./polygons.ts";
import type { FinishedEdges } from "./types.ts";

/** Round the edge and so far onto the other face; what is trimmed off; a flange of solid laminate, mm (common practice). */
const [WRAP_MM, TRIM_MM, FLANGE_MM] = [25, 20, 20];
/** A chamfer runs so much for each mm of foam. */
const CHAMFER = 3;
/** Each ply ends so far behind the one below, mm (published, weak: 6; here 10). */
const PLY_STEP_MM = 10;

/** The finish of an edge: its own, or that of all edges. An edge on the left hand goes with its image. */
export function finishOf(
  { part }: FaceRegion,
  { edgeId }: FaceEdge,
  { edgeFinish, edgeFinishes }: LaminateSettings,
): EdgeFinish {
  const plain = edgeId.replace(/\.left$/, "");
  const own = edgeFinishes.find((one) => one.itemId === part.itemId && one.edgeId === plain);
  return own?.finish ?? edgeFinish;
}

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
  switch (finishOf(region, edge, laminate)) {
    case "wrapped": {
      // The face that is laid second closes round the edge onto the first; of a fence its outboard side does.
      const closes = isFence ? region.side === "outboard face" : isLaidSecond;
      const { thicknessMm } = region.part;
      return closes ? Math.max(thicknessMm, thicknessMm + WRAP_MM - ply * PLY_STEP_MM) : 0;
    }
    case "flange":
      return FLANGE_MM;
    case "trimmed":
      return TRIM_MM;
    case "insert":
      return 0;
  }
}

/** The free edges of lower faces and inboard sides, each edge once, summed by finish. */
export function finishedEdges(
  regions: readonly FaceRegion[],
  laminate: LaminateSettings,
): readonly FinishedEdges[] {
  const byFinish = new Map<EdgeFinish, { finish: EdgeFinish; lengthMm: number; foamAwayMm3: number }>();
  for (const region of regions) {
    if (region.side !== "lower face" && region.side !== "inboard face") continue;
    for (const edge of region.edges.filter(({ role }) => role === "free")) {
      const finish = finishOf(region, edge, laminate);
      const known = byFinish.get(finish) ?? { finish, lengthMm: 0, foamAwayMm3: 0 };
      const ownMm = lengthMm(edge.line);
      known.lengthMm += ownMm;
      known.foamAwayMm3 += ownMm * foamAwayMm2(finish, region.part.thicknessMm);
      byFinish.set(finish, known);
    }
  }
  return [...byFinish.values()];
}

/** The section of foam that a finish takes away: of a flange its own width, and half of the chamfer behind it. */
const foamAwayMm2 = (finish: EdgeFinish, thicknessMm: number): number => {
  if (finish === "flange") return thicknessMm * (FLANGE_MM + (CHAMFER * thicknessMm) / 2);
  return finish === "insert" ? thicknessMm * FLANGE_MM : 0;
};
