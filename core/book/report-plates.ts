import type { FlatPoint, SpacePoint } from "../foundation/index.ts";
import { at } from "../foundation/index.ts";
import {
  type BendFigures,
  type BendLine,
  type FoldedPlate,
  type FoldingStep,
  type PlateEdgeRole,
  type PlateHand,
  type PlatePart,
  type PlateUnderFoam,
  plateUnderFoam,
  polygonOfPlateLoop,
} from "../plates/index.ts";
import type { Design } from "./design.ts";

/** A stretch of a plate's flat outline. */
export interface ReportPlateEdge {
  readonly edgeId: string;
  readonly name: string;
  readonly role: PlateEdgeRole;
  readonly flatLengthMm: number;
}

/** A bend of a plate: its figures, and its lines on the flat. `flangeMm` is flat, from the bend to the free edge. */
export interface ReportBend extends BendFigures {
  readonly id: string;
  readonly wingId: string;
  readonly name: string;
  readonly lengthMm: number;
  readonly baseTangentMm: readonly [FlatPoint, FlatPoint];
  readonly middleMm: readonly [FlatPoint, FlatPoint];
  readonly wingTangentMm: readonly [FlatPoint, FlatPoint];
}

/** A wing folded up, in space, on the right hand or whole: foot start, foot end, free end, free start. */
export interface ReportWing {
  readonly id: string;
  readonly wingId: string;
  readonly airFaceMm: readonly SpacePoint[];
  readonly upperFaceMm: readonly SpacePoint[];
}

/** A folded metal plate on one hand, its flat seen from the upper face. */
export interface ReportPlate {
  readonly id: string;
  readonly plateId: string;
  readonly itemId: string;
  readonly name: string;
  readonly hand: PlateHand;
  readonly faceShown: "upper face";
  readonly metalId: string;
  readonly metalName: string;
  readonly thicknessMm: number;
  readonly zMm: number;
  /** Counter-clockwise; holes clockwise. */
  readonly outlineMm: readonly FlatPoint[];
  readonly holesMm: readonly (readonly FlatPoint[])[];
  readonly edges: readonly ReportPlateEdge[];
  /** Extent of the blank along u and v. */
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly flatAreaMm2: number;
  readonly baseAreaMm2: number;
  readonly bendAreaMm2: number;
  readonly wingAreaMm2: number;
  readonly massKg: number;
  readonly bends: readonly ReportBend[];
  readonly folding: readonly FoldingStep[];
  readonly wings: readonly ReportWing[];
  readonly underFoam: PlateUnderFoam | null;
}

/** Every plate of a design on every hand. */
export const reportPlates = (design: Design): readonly ReportPlate[] =>
  design.plates.flatMap((plate) => plate.parts.map((part) => reportPlate(design, plate, part)));

function reportPlate({ project }: Design, plate: FoldedPlate, part: PlatePart): ReportPlate {
  const item = project.items.find(({ id }) => id === plate.itemId);
  const [outline, ...holes] = part.loops.map(polygonOfPlateLoop);
  return {
    id: part.id,
    plateId: plate.id,
    itemId: plate.itemId,
    name: plate.name,
    hand: part.hand,
    faceShown: "upper face",
    metalId: plate.metalId,
    metalName: plate.metalName,
    thicknessMm: plate.thicknessMm,
    zMm: plate.zMm,
    outlineMm: outline ?? [],
    holesMm: holes,
    edges: part.loops.flatMap(({ edges }) =>
      edges.map(({ edgeId, name, role, points }) => ({
        edgeId,
        name,
        role,
        flatLengthMm: lengthMm(points),
      })),
    ),
    lengthMm: part.lengthMm,
    widthMm: part.widthMm,
    flatAreaMm2: plate.flatAreaMm2,
    baseAreaMm2: plate.baseAreaMm2,
    bendAreaMm2: plate.bendAreaMm2,
    wingAreaMm2: plate.wingAreaMm2,
    massKg: plate.massKg,
    bends: part.bends.map(reportBend),
    folding: plate.folding,
    wings: plate.wings.map(({ id, wingId, airFace, upperFace }) => ({
      id,
      wingId,
      airFaceMm: airFace,
      upperFaceMm: upperFace,
    })),
    underFoam: item?.kind === "plate" ? plateUnderFoam(project, item) : null,
  };
}

const reportBend = ({ figures, baseTangent, middle, wingTangent, ...bend }: BendLine): ReportBend => ({
  ...bend,
  ...figures,
  baseTangentMm: baseTangent,
  middleMm: middle,
  wingTangentMm: wingTangent,
});

const lengthMm = (points: readonly FlatPoint[]): number =>
  points.reduce((sum, p, i) => {
    if (i === 0) return sum;
    const before = at(points, i - 1);
    return sum + Math.hypot(p.u - before.u, p.v - before.v);
  }, 0);
