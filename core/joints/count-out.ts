import { at, type PlanPoint } from "../foundation/index.ts";
import { type Hand, partIdOf } from "../surfaces/index.ts";
import { edgesWithId } from "./edge-places.ts";
import type { SheetJoint } from "./sheet-joint.ts";
import type { Joint } from "./types.ts";

/** Gives every joint to the hands that have it, in a fixed order, and names it. */
export function countOut(found: readonly SheetJoint[]): readonly Joint[] {
  const counts = new Map<string, number>();
  return found.flatMap((joint) =>
    countings(joint).map(({ hands: [first, second], isImage }): Joint => {
      const partIds = [partIdOf(joint.sheets[0].id, first), partIdOf(joint.sheets[1].id, second)] as const;
      const pair = `${partIds[0]}/${partIds[1]}`;
      const count = (counts.get(pair) ?? 0) + 1;
      counts.set(pair, count);
      const acrossMm = (y: number): number => (isImage ? 0 - y : y);
      const side = ({ x, y }: PlanPoint): PlanPoint => ({ x, y: acrossMm(y) });
      const stations = joint.stations.map((station) => ({
        ...station,
        at: { ...station.at, y: acrossMm(station.at.y) },
      }));
      const [start, end] = [at(stations, 0), at(stations, -1)];
      return {
        id: count === 1 ? pair : `${pair}#${count}`,
        kind: joint.kind,
        partIds,
        edgeIds: isImage ? [imageEdgeId(joint, 0), imageEdgeId(joint, 1)] : joint.edgeIds,
        lengthMm: joint.lengthMm,
        foldRad: [start.foldRad, end.foldRad],
        cut: joint.cut,
        ...(joint.through !== undefined && { through: joint.through }),
        bevelRad: start.bevelRad,
        setBackMm: start.setBackMm,
        stations,
        from: side(joint.from),
        to: side(joint.to),
      };
    }),
  );
}

/** The image of a drawn edge is an edge of its own where a sheet is joined to its other half; else it is the same edge. */
function imageEdgeId({ sheets, edgeIds }: SheetJoint, side: 0 | 1): string {
  const edgeId = `${edgeIds[side]}.left`;
  return edgesWithId(sheets[side], edgeId).length > 0 ? edgeId : edgeIds[side];
}

/** A transition from one half to the other has both edges itself: each meets one hand of its neighbour. */
const spansCentre = ({ sheets: [first, second] }: SheetJoint): boolean =>
  first.kind === "transition" && first.hands.length === 1 && second.hands.length === 2;

/** The hands that a joint is made on, and whether there it is the image of the joint that was found. */
interface Counting {
  readonly hands: readonly [Hand, Hand];
  readonly isImage: boolean;
}

function countings(joint: SheetJoint): readonly Counting[] {
  const [first, second] = joint.sheets;
  if (joint.kind === "centre") return [{ hands: ["right", "left"], isImage: false }];
  if (spansCentre(joint)) return [{ hands: ["whole", joint.isWithImage ? "left" : "right"], isImage: false }];
  const handsOn = (hand: "right" | "left"): Counting["hands"] => [
    first.hands.length === 2 ? hand : "whole",
    second.hands.length === 2 ? hand : "whole",
  ];
  const found = { hands: handsOn("right"), isImage: false };
  const hasImage = first.hands.length === 2 || second.hands.length === 2 || isDrawnHalf(joint);
  return hasImage ? [found, { hands: handsOn("left"), isImage: true }] : [found];
}

/** Whether the edge that a joint of two whole sheets was found along is drawn on one half and has its image on the other. */
const isDrawnHalf = (joint: SheetJoint): boolean => imageEdgeId(joint, 0) !== joint.edgeIds[0];
