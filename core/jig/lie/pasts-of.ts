import type { RunPast } from "../../cutting/index.ts";
import { at } from "../../foundation/index.ts";
import type { Laid } from "../laid/laid-face.ts";
import { outboardRoom } from "../outboard-places.ts";
import type { Rib } from "../types.ts";
import type { LieLine, LiePast, LieStation } from "./types.ts";

/**
 * What foam that runs past edges is good for, once for each end of a sheet: the worst from the last rib but one before the
 * trim line to there, as it lies and as it would lie if it ended at the trim line.
 */
export function pastsOf(laid: Laid, lines: readonly LieLine[], ribs: readonly Rib[]): readonly LiePast[] {
  const { pasts } = laid;
  const isSameEnd = (a: RunPast, b: RunPast) => a.sheetId === b.sheetId && a.toward === b.toward;
  return pasts
    .filter((past, i) => pasts.findIndex((one) => isSameEnd(one, past)) === i)
    .map((past) =>
      pastOf(
        pasts.filter((one) => isSameEnd(one, past)),
        outboardRib(past, laid, ribs),
        lines,
      ),
    );
}

function pastOf(edges: readonly RunPast[], rib: Rib | undefined, lines: readonly LieLine[]): LiePast {
  const { partIds, toward, lengthMm } = at(edges, 0);
  const own = lines.filter(({ partId, over }) => over === "across" && partIds.includes(partId));
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

/** The rib that holds foam past an edge. */
function outboardRib(past: RunPast, laid: Laid, ribs: readonly Rib[]): Rib | undefined {
  const [least, most] = outboardRoom(past, laid);
  return ribs.find(({ isOutboard, atMm }) => isOutboard && atMm >= least - 1e-6 && atMm <= most + 1e-6);
}

/** Whether a station lies beyond the last rib but one that stands inside the trim line. */
function isAtEnd({ ribsMm, stations }: LieLine, toward: RunPast["toward"]): (station: LieStation) => boolean {
  const [from, to] = [at(stations, 0).alongMm, at(stations, -1).alongMm];
  const inside = ribsMm.filter((mm) => mm > from && mm < to);
  const border = (toward === "last" ? inside[inside.length - 2] : inside[1]) ?? (from + to) / 2;
  return ({ alongMm }) => (toward === "last" ? alongMm >= border : alongMm <= border);
}
