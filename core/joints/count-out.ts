import { at, type PlanPoint } from "../foundation/index.ts";
import { type Hand, partIdOf } from "../surfaces/index.ts";
import type { SheetJoint } from "./sheet-joint.ts";
import type { Joint } from "./types.ts";

/** Gives every joint to the hands that have it, in a fixed order, and names it. */
export function countOut(found: readonly SheetJoint[]): readonly Joint[] {
  const counts = new Map<string, number>();
  return found.flatMap((joint) =>
    handPairs(joint).map(([first, second]): Joint => {
      const partIds = [partIdOf(joint.sheets[0].id, first), partIdOf(joint.sheets[1].id, second)] as const;
      const pair = `${partIds[0]}/${partIds[1]}`;
      const count = (counts.get(pair) ?? 0) + 1;
      counts.set(pair, count);
      const onLeft = first === "left" || second === "left";
      const sign = onLeft && joint.kind !== "centre" && !spansCentre(joint) ? -1 : 1;
      const side = ({ x, y }: PlanPoint): PlanPoint => ({ x, y: sign * y });
      const stations = joint.stations.map((station) => ({
        ...station,
        at: { ...station.at, y: sign * station.at.y },
      }));
      const [start, end] = [at(stations, 0), at(stations, -1)];
      return {
        id: count === 1 ? pair : `${pair}#${count}`,
        kind: joint.kind,
        partIds,
        edgeIds: [ownEdgeId(joint, 0, first, second), ownEdgeId(joint, 1, second, first)],
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

/** A whole sheet that meets a left part does so along the image of the drawn edge. */
function ownEdgeId({ edgeIds }: SheetJoint, side: 0 | 1, own: Hand, other: Hand): string {
  const edgeId = edgeIds[side];
  return own === "whole" && other === "left" && edgeId !== "" ? `${edgeId}.left` : edgeId;
}

/** A transition from one half to the other has both edges itself: each meets one hand of its neighbour. */
const spansCentre = ({ sheets: [first, second] }: SheetJoint): boolean =>
  first.kind === "transition" && first.hands.length === 1 && second.hands.length === 2;

function handPairs(joint: SheetJoint): readonly (readonly [Hand, Hand])[] {
  const [first, second] = joint.sheets;
  if (joint.kind === "centre") return [["right", "left"]];
  if (spansCentre(joint)) return [["whole", joint.isWithImage ? "left" : "right"]];
  if (first.hands.length === 2 && second.hands.length === 2)
    return [
      ["right", "right"],
      ["left", "left"],
    ];
  if (first.hands.length === 2)
    return [
      ["right", "whole"],
      ["left", "whole"],
    ];
  if (second.hands.length === 2)
    return [
      ["whole", "right"],
      ["whole", "left"],
    ];
  return [["whole", "whole"]];
}
