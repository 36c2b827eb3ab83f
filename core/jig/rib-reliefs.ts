import { at } from "../foundation/index.ts";
import { endsOf } from "./crossing-rib.ts";
import type { JigPiece } from "./jig-piece.ts";
import { hollowsAlong, type JointAlong } from "./joints-along.ts";
import { heightOnTop } from "./simplify-top.ts";
import type { RibRelief } from "./types.ts";

/** Nearer to its end a rib is not cut, mm. */
const FROM_END_MM = 3;

/**
 * The hollows in a rib's top under the joints that cross it, so that glue that is pressed out does not bond the tray to
 * its jig: as deep as half their width (common practice). A joint is where the part on top changes. Under one that runs along
 * the rib in its board hollows of 80 mm follow each other, with land of 20 mm between them, which is taped.
 */
export function ribReliefs(
  piece: Pick<JigPiece, "points" | "top">,
  widthMm: number,
  seamsMm: readonly number[],
  along: readonly JointAlong[] = [],
): readonly RibRelief[] {
  if (widthMm <= 0) return [];
  const { points, top } = piece;
  const borders = points.flatMap((point, i) => {
    const before = points[i - 1];
    return before === undefined || before.partId === point.partId
      ? []
      : [{ atMm: (before.atMm + point.atMm) / 2, between: [before.partId, point.partId] as const }];
  });
  const [firstMm, lastMm] = endsOf({ top });
  const isInside = (atMm: number) =>
    atMm - widthMm / 2 > firstMm + FROM_END_MM && atMm + widthMm / 2 < lastMm - FROM_END_MM;
  const seams = seamsMm.map((atMm) => {
    const partId = nearestPart(points, atMm);
    return { atMm, between: [partId, partId] as const };
  });
  const depthMm = widthMm / 2;
  const crossing = [...borders, ...seams]
    .filter(({ atMm }) => isInside(atMm) && along.every(({ stretch }) => !isOver(stretch, atMm)))
    .map(({ atMm, between }) => ({ atMm, widthMm, between, runs: "across" as const }));
  const running = along.flatMap(({ stretch, between }) =>
    hollowsAlong([
      Math.max(stretch[0], firstMm + FROM_END_MM),
      Math.min(stretch[1], lastMm - FROM_END_MM),
    ]).map((hollow) => ({ ...hollow, between, runs: "along" as const })),
  );
  return [...crossing, ...running]
    .sort((a, b) => a.atMm - b.atMm)
    .map((hollow) => ({ ...hollow, levelMm: heightOnTop(top, hollow.atMm) - depthMm }));
}

const isOver = ([fromMm, toMm]: JointAlong["stretch"], mm: number): boolean => mm >= fromMm && mm <= toMm;

const nearestPart = (points: JigPiece["points"], atMm: number): string =>
  points.reduce(
    (best, point) => (Math.abs(point.atMm - atMm) < Math.abs(best.atMm - atMm) ? point : best),
    at(points, 0),
  ).partId;
