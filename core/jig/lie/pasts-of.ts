import type { RunPast } from "../../cutting/index.ts";
import { at } from "../../foundation/index.ts";
import type { Rib } from "../types.ts";
import type { LieLine, LiePast, LieStation } from "./types.ts";

/**
 * What foam that runs past edges is good for, once for each end of a sheet: the worst from the last rib but one before the
 * trim line to there, as it lies and as it would lie if it ended at the trim line.
 */
export function pastsOf(
  pasts: readonly RunPast[],
  lines: readonly LieLine[],
  ribs: readonly Rib[],
): readonly LiePast[] {
  const isSameEnd = (a: RunPast, b: RunPast) => a.sheetId === b.sheetId && a.toward === b.toward;
  return pasts
    .filter((past, i) => pasts.findIndex((one) => isSameEnd(one, past)) === i)
    .map((past) =>
      pastOf(
        pasts.filter((one) => isSameEnd(one, past)),
        past,
        lines,
        ribs,
      ),
    );
}

function pastOf(
  edges: readonly RunPast[],
  { partIds, toward, lengthMm, ribXMm }: RunPast,
  lines: readonly LieLine[],
  ribs: readonly Rib[],
): LiePast {
  const own = lines.filter(({ partId, over }) => over === "across" && partIds.includes(partId));
  const rib = ribs.find(
    ({ isOutboard, atMm }) => isOutboard && atMm >= ribXMm[0] - 1e-6 && atMm <= ribXMm[1] + 1e-6,
  );
  const worst = (of: (line: LieLine) => readonly LieStation[]): number =>
    own
      .flatMap((line) => of(line).filter(isAtEnd(line, toward)))
      .reduce((most, { errorMm }) => (Math.abs(errorMm) > Math.abs(most) ? errorMm : most), 0);
  return {
    partIds,
    edgeIds: edges.map(({ edgeId }) => edgeId),
    edgeName: edges.map(({ edgeName }) => edgeName).join(" and "),
    toward,
    lengthMm,
    ...(rib && { ribId: rib.id }),
    withMm: worst(({ stations }) => stations),
    withoutMm: worst(({ without }) => without),
  };
}

/** Whether a station lies beyond the last rib but one that stands inside the trim line. */
function isAtEnd({ ribsMm, stations }: LieLine, toward: RunPast["toward"]): (station: LieStation) => boolean {
  const [from, to] = [at(stations, 0).alongMm, at(stations, -1).alongMm];
  const inside = ribsMm.filter((mm) => mm > from && mm < to);
  const border = (toward === "last" ? inside[inside.length - 2] : inside[1]) ?? (from + to) / 2;
  return ({ alongMm }) => (toward === "last" ? alongMm >= border : alongMm <= border);
}
