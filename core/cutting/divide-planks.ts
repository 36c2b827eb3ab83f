import type { BendFace } from "../bending/index.ts";
import type { Part } from "../patterns/index.ts";
import { divideLoops } from "./divide-loops.ts";
import type { Island } from "./group-islands.ts";
import { boundsOfLoops } from "./loop-measures.ts";

/** A cut between two planks, or between a plank and what is beside it, and the bevel of both its edges. */
export interface PlankCut {
  readonly uMm: number;
  /** Off square, rad; positive leaves the air face longer, of a fence the outboard face. */
  readonly bevelRad: number;
}

/** Faces whose being inside a bend leaves the air face, or the outboard face, the longer one. */
const SHORT_FACES: readonly (BendFace | undefined)[] = ["upper face", "inboard face"];

/** A bend's end that lies this near to the end of its strip divides nothing, mm. */
const AT_END_MM = 0.5;

/** Where a part is cut into planks, from front to rear. */
export const plankCuts = ({ zones }: Pick<Part, "zones">): readonly PlankCut[] =>
  zones.flatMap(({ bend, inside }) => {
    const sign = SHORT_FACES.includes(inside) ? 1 : -1;
    return (bend?.planks ?? []).flatMap(({ fromUMm, toUMm, bevelsRad }, i, planks): readonly PlankCut[] => [
      { uMm: fromUMm, bevelRad: sign * bevelsRad[0] },
      ...(i === planks.length - 1 ? [{ uMm: toUMm, bevelRad: sign * bevelsRad[1] }] : []),
    ]);
  });

/** The islands of a part cut into its planks; as they are where it has none. */
export function divideIntoPlanks(islands: readonly Island[], part: Part): readonly Island[] {
  const cuts = plankCuts(part);
  if (cuts.length === 0) return islands;
  return islands.flatMap((island) => {
    const { leastUMm, mostUMm } = boundsOfLoops(island);
    const done: Island[] = [];
    let rest: readonly Island[] = [island];
    for (const { uMm } of cuts) {
      if (uMm < leastUMm + AT_END_MM || uMm > mostUMm - AT_END_MM) continue;
      const divisions = rest.map((piece) => divideLoops(piece, "u", uMm));
      done.push(...divisions.flatMap(({ below }) => below));
      rest = divisions.flatMap(({ above }) => above);
    }
    return [...done, ...rest];
  });
}

/** The bevel of a seam along a ruling; 0 where no planks meet. */
export const plankBevelAt = (part: Pick<Part, "zones">, uMm: number): number =>
  plankCuts(part).find((cut) => Math.abs(cut.uMm - uMm) < 1e-6)?.bevelRad ?? 0;
