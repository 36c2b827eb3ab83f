import type { FlatPoint, SpacePoint } from "../foundation/index.ts";
import type { SeatStation } from "../surfaces/index.ts";
import type { FlatLoop, FlatRuling, OpeningWeb, PartEdge } from "./types.ts";

/** The image of a flat loop: v changes sign, and the walk is turned round so that outlines stay counter-clockwise. */
export const mirrorLoop = (loop: FlatLoop): FlatLoop => ({
  edges: loop.edges.toReversed().map((edge) => ({
    ...edge,
    points: edge.points.toReversed().map(({ u, v }) => ({ u, v: v === 0 ? 0 : -v })),
  })),
});

/** The image of a fence's seat: what was left of the line is now right of it. */
export const mirrorSeat = (station: SeatStation): SeatStation => ({
  ...station,
  at: { x: station.at.x, y: -station.at.y },
  leftZMm: station.rightZMm,
  rightZMm: station.leftZMm,
  bevelRad: -station.bevelRad,
});

/** The image of an edge: it runs the other way. */
export const mirrorEdge = (edge: PartEdge): PartEdge => {
  const lengthMm = edge.bevels.at(-1)?.alongMm ?? 0;
  return {
    ...edge,
    bevelRad: [edge.bevelRad[1], edge.bevelRad[0]],
    bevels: edge.bevels
      .toReversed()
      .map(({ alongMm, bevelRad }) => ({ alongMm: lengthMm - alongMm, bevelRad })),
  };
};

export const mirrorRuling = (ruling: FlatRuling): FlatRuling => ({
  ...ruling,
  from: mirrorFlat(ruling.from),
  to: mirrorFlat(ruling.to),
  fromSpace: mirrorSpace(ruling.fromSpace),
  toSpace: mirrorSpace(ruling.toSpace),
  twistRad: -ruling.twistRad,
});

const mirrorFlat = ({ u, v }: FlatPoint): FlatPoint => ({ u, v: -v });
const mirrorSpace = ({ x, y, z }: SpacePoint): SpacePoint => ({ x, y: -y, z });

export const mirrorWeb = (web: OpeningWeb): OpeningWeb => ({
  ...web,
  from: mirrorFlat(web.from),
  to: mirrorFlat(web.to),
});
