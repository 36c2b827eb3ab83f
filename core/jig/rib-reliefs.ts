import { at } from "../foundation/index.ts";
import { endsOf } from "./crossing-rib.ts";
import type { JigPiece } from "./jig-piece.ts";
import { heightOnTop } from "./simplify-top.ts";
import type { RibRelief } from "./types.ts";

/** Nearer to its end a rib is not cut, mm. */
const FROM_END_MM = 3;

/**
 * The hollows in a rib's top under the joints that cross it, so that glue that is pressed out does not bond the tray to
 * its jig: as deep as half their width (common practice). A joint is where the part on top changes.
 */
export function ribReliefs(
  piece: Pick<JigPiece, "points" | "top">,
  widthMm: number,
  seamsMm: readonly number[],
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
  return [...borders, ...seams]
    .filter(({ atMm }) => isInside(atMm))
    .sort((a, b) => a.atMm - b.atMm)
    .map(({ atMm, between }) => ({
      atMm,
      widthMm,
      levelMm: heightOnTop(top, atMm) - widthMm / 2,
      between,
    }));
}

const nearestPart = (points: JigPiece["points"], atMm: number): string =>
  points.reduce(
    (best, point) => (Math.abs(point.atMm - atMm) < Math.abs(best.atMm - atMm) ? point : best),
    at(points, 0),
  ).partId;
