import { type LabelBox, stepClear } from "../../../core/foundation/index.ts";
import type { RibSet } from "../../../core/jig/index.ts";
import type { Scale, Spot } from "../../drawings/index.ts";

/** Where the code of a rib and the number at its other end stand, px: the middle of their base line; along, its start. */
export interface CodePlace {
  readonly code: Spot;
  readonly number: Spot;
}

/** A code or a number with air around it, and how far a row stands from the next. */
const LABEL_PX = { width: 40, height: 13 };
const ROW_PX = 15;

/**
 * The codes of ribs beyond their ends and the numbers of their places beyond the other ends, by rib; those that would
 * cover others step outward by rows.
 */
export function codePlaces(
  { ribs, baseboard }: RibSet,
  scale: Pick<Scale, "toPx">,
): ReadonlyMap<string, CodePlace> {
  const standing: LabelBox[] = [];
  const place = ([x, y]: Spot, left: number, step: Step): Spot => {
    const box = {
      left: x + left,
      right: x + left + LABEL_PX.width,
      bottom: y - LABEL_PX.height + 2,
      top: y + 2,
    };
    const clear = stepClear(box, step, standing);
    standing.push(clear);
    return [x + clear.left - box.left, y + clear.bottom - box.bottom];
  };
  return new Map(
    ribs.flatMap((rib): [string, CodePlace][] => {
      const line = baseboard.lines.find(({ ribId }) => ribId === rib.id);
      if (line === undefined) return [];
      const [from, to] = [scale.toPx([line.from.x, line.from.y]), scale.toPx([line.to.x, line.to.y])];
      if (rib.runs === "along") {
        const beyond: Spot = [Math.max(from[0], to[0]) + 8, from[1] + 4];
        const code = place(beyond, 0, { x: LABEL_PX.width, y: 0 });
        return [[rib.id, { code, number: code }]];
      }
      const [top, bottom] = [Math.min(from[1], to[1]), Math.max(from[1], to[1])];
      const half = -LABEL_PX.width / 2;
      const code = place([from[0], top - 8], half, { x: 0, y: -ROW_PX });
      const number = place([from[0], bottom + 16], half, { x: 0, y: ROW_PX });
      return [[rib.id, { code, number }]];
    }),
  );
}

interface Step {
  readonly x: number;
  readonly y: number;
}
