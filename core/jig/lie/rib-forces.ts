import { at } from "../../foundation/index.ts";
import type { LieLine, RibForce } from "./types.ts";

/**
 * What every rib gives every part: the mean over the part's lanes, times how wide the part is along the rib. A rib may
 * press on one lane and hold another down, so both are told. An image on the left gives as the one on the right.
 */
export function ribForces(lines: readonly LieLine[]): readonly RibForce[] {
  const found = new Map<string, Given>();
  for (const { partId, widthMm, ribIds, forcesPerMm } of lines) {
    for (const [i, ribId] of ribIds.entries()) {
      const given = found.get(`${partId} ${ribId}`) ?? { ribId, partId, widthMm, perMm: [] };
      given.perMm.push(at(forcesPerMm, i));
      found.set(`${partId} ${ribId}`, given);
    }
  }
  return [...found.values()].map(({ ribId, partId, widthMm, perMm }) => {
    const over = (sense: 1 | -1) =>
      (widthMm * perMm.reduce((sum, force) => sum + Math.max(0, sense * force), 0)) / perMm.length;
    return { ribId, partId, pressN: over(1), holdDownN: over(-1) };
  });
}

interface Given {
  readonly ribId: string;
  readonly partId: string;
  readonly widthMm: number;
  /** One for each lane of the part over the rib. */
  readonly perMm: number[];
}
