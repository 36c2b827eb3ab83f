import { lengthOfEdgeMm, type Seam } from "../cutting/index.ts";
import { at, type PlanPoint, type SpacePoint } from "../foundation/index.ts";
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
  /** Places along it in the car; absent for a seam. */
  readonly points?: readonly SpacePoint[];
  /** Pieces that leave no way to it for hand and brush once they lie over it (see `closedJoints`). */
  readonly closedBy?: readonly GlueUnit[];
  /** So much of it is curved, or bends with its sheet. */
  readonly curvedMm: number;
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
      points: spread(joint.stations.map((station) => station.at)),
      middle: { x: (joint.from.x + joint.to.x) / 2, y: (joint.from.y + joint.to.y) / 2 },
      curvedMm: Math.max(0, ...side(0).map(({ part }) => curvedMm(part, joint.edgeIds[0]))),
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
      const bends = seam.runs === "across rulings" ? side(0).map(({ part }) => bentMm(part)) : [];
      const { id, lengthMm, scarfMm } = seam;
      return {
        id,
        kind: "seam",
        lengthMm,
        sides: [side(0), side(1)],
        curvedMm: Math.min(lengthMm, Math.max(0, ...bends)),
        bevelRad: bevelsOf(seam),
        liesFlat: side(0).some(({ part }) => liesFlat(seam, part)),
        scarfMm,
      };
    });
  return [...ofJoints, ...ofSeams];
}

/** No more places than this are looked at along a joint. */
const MOST_PLACES = 9;

/** Some of the places along a joint, its ends among them. */
const spread = (points: readonly SpacePoint[]): readonly SpacePoint[] =>
  points.length <= MOST_PLACES
    ? points
    : Array.from({ length: MOST_PLACES }, (_, i) =>
        at(points, Math.round((i * (points.length - 1)) / (MOST_PLACES - 1))),
      );

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

/** How much of a part is bent, along it. */
const bentMm = ({ zones }: Part): number =>
  sum(zones.map(({ strain, fromUMm, toUMm }) => (strain > 0 ? toUMm - fromUMm : 0)));

/** How much of an edge is curved on the flat, or bends with the sheet. */
const curvedMm = ({ loops, zones }: Part, edgeId: string): number =>
  sum(
    loops
      .flatMap(({ edges }) => edges.filter((edge) => edge.edgeId === edgeId))
      .map((edge) => (isCurvedOnFlat(edge) ? lengthOfEdgeMm(edge) : bentMmOf(edge, zones))),
  );

function isCurvedOnFlat(edge: FlatEdge): boolean {
  const from = at(edge.points, 0);
  const to = at(edge.points, -1);
  return lengthOfEdgeMm(edge) > Math.hypot(to.u - from.u, to.v - from.v) * 1.0001;
}

/** What of a straight edge runs through bends. */
function bentMmOf(edge: FlatEdge, zones: Part["zones"]): number {
  const ends = [at(edge.points, 0).u, at(edge.points, -1).u];
  const [leastUMm, mostUMm] = [Math.min(...ends), Math.max(...ends)];
  if (mostUMm - leastUMm < 1) return 0;
  const alongUMm = sum(
    zones.map(({ fromUMm, toUMm, strain }) =>
      strain > 0 ? Math.max(0, Math.min(toUMm, mostUMm) - Math.max(fromUMm, leastUMm)) : 0,
    ),
  );
  return (alongUMm / (mostUMm - leastUMm)) * lengthOfEdgeMm(edge);
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
