import { lengthOfEdgeMm, type Seam } from "../cutting/index.ts";
import { at, type PlanPoint } from "../foundation/index.ts";
import type { Joint, JointKind } from "../joints/index.ts";
import type { FlatEdge, Part } from "../patterns/index.ts";
import { type GlueUnit, liesFlat } from "./glue-units.ts";

/** A joint or a seam that is glued on the jig, and the units that it holds together. */
export interface Bond {
  readonly id: string;
  readonly kind: JointKind | "seam";
  readonly lengthMm: number;
  /** The units on either side; a side has several where the joint runs past a seam of an uncarried part. */
  readonly sides: readonly [readonly GlueUnit[], readonly GlueUnit[]];
  /** The edges of both parts that a joint runs along; absent for a seam. */
  readonly edgeIds?: readonly [string, string];
  /** Middle in plan; absent for a seam. */
  readonly middle?: PlanPoint;
  readonly isCurved: boolean;
  /** Bevel of both edges off square at its start, rad. */
  readonly bevelRad: readonly [number, number];
  /** Whether both sides lie in one plane before they are bent; only where they do is it glued on the bench. */
  readonly liesFlat: boolean;
  /** Of a seam that is a scarf: how long its taper is. */
  readonly scarfMm?: number | undefined;
}

/** Everything that is glued between units: all joints, and the seams that were not glued on the bench. */
export function glueBonds(
  units: readonly GlueUnit[],
  joints: readonly Joint[],
  seams: readonly Seam[],
): Bond[] {
  const ofJoints = joints.map((joint): Bond => {
    const side = (index: 0 | 1) => unitsWithEdge(units, joint.partIds[index], joint.edgeIds[index]);
    return {
      id: joint.id,
      kind: joint.kind,
      lengthMm: joint.lengthMm,
      sides: [side(0), side(1)],
      edgeIds: joint.edgeIds,
      middle: { x: (joint.from.x + joint.to.x) / 2, y: (joint.from.y + joint.to.y) / 2 },
      isCurved: side(0).some(({ part }) => isEdgeCurved(part, joint.edgeIds[0])),
      bevelRad: joint.bevelRad,
      liesFlat: false,
    };
  });
  const onBench = new Set(units.flatMap(({ benchSeams }) => benchSeams.map(({ id }) => id)));
  const ofSeams = seams
    .filter(({ id }) => !onBench.has(id))
    .map((seam): Bond => {
      const side = (index: 0 | 1) =>
        units.filter(({ strips }) => strips.some(({ id }) => id === seam.stripIds[index]));
      const isCurved = seam.runs === "across rulings" && side(0).some(({ part }) => isBent(part));
      const { id, lengthMm, scarfMm } = seam;
      return {
        id,
        kind: "seam",
        lengthMm,
        sides: [side(0), side(1)],
        isCurved,
        bevelRad: bevelsOf(seam),
        liesFlat: side(0).some(({ part }) => liesFlat(seam, part)),
        scarfMm,
      };
    });
  return [...ofJoints, ...ofSeams];
}

/** Both edges of a seam are cut alike: square, or between planks by half the turn. */
export const bevelsOf = ({ bevelRad = 0 }: Seam): readonly [number, number] => [bevelRad, bevelRad];

/** The units of a part that the edge belongs to; all of the part's when the edge is not named on any strip. */
function unitsWithEdge(units: readonly GlueUnit[], partId: string, edgeId: string): GlueUnit[] {
  const own = units.filter(({ part }) => part.id === partId);
  const touching = own.filter(({ strips }) =>
    strips.some(({ edges }) => edges.some((edge) => edge.edgeId === edgeId)),
  );
  return touching.length > 0 ? touching : own;
}

const isBent = (part: Part): boolean => part.zones.some(({ strain }) => strain > 0);

/** Whether an edge is curved on the flat, or bends with the sheet. */
function isEdgeCurved(part: Part, edgeId: string): boolean {
  const edges = part.loops.flatMap((loop) => loop.edges.filter((edge) => edge.edgeId === edgeId));
  return edges.some((edge) => isCurvedOnFlat(edge) || runsThroughBend(edge, part));
}

function isCurvedOnFlat(edge: FlatEdge): boolean {
  const from = at(edge.points, 0);
  const to = at(edge.points, -1);
  return lengthOfEdgeMm(edge) > Math.hypot(to.u - from.u, to.v - from.v) * 1.0001;
}

function runsThroughBend(edge: FlatEdge, part: Part): boolean {
  const ends = [at(edge.points, 0).u, at(edge.points, -1).u];
  const [leastUMm, mostUMm] = [Math.min(...ends), Math.max(...ends)];
  return part.zones.some(
    ({ fromUMm, toUMm, strain }) => strain > 0 && Math.min(toUMm, mostUMm) - Math.max(fromUMm, leastUMm) > 1,
  );
}
