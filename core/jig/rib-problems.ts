import type { Problem } from "../foundation/index.ts";
import { endsOf, sharedMm } from "./crossing-rib.ts";
import type { JigGround } from "./jig-ground.ts";
import type { JigPiece } from "./jig-piece.ts";
import type { RibPlace } from "./rib-places.ts";

/** A typed place over which there is no foam; a place that was spaced out is left out without a word. */
export function nothingProblem({ id, runs, atMm }: RibPlace, { jig }: JigGround): Problem[] {
  if (jig[runs].kind !== "typed") return [];
  const place = { ribId: id, setting: `jig.${runs}.atMm` };
  return [{ kind: "rib-under-nothing", place, name: `Rib ${id}`, atMm }];
}

/** A rib whose square-cut top would stand too proud. */
export function bevelProblem({ id, choice }: JigPiece, { jig }: JigGround): Problem[] {
  const { cut, mostProudMm, bevelProudMm } = choice;
  if (cut === "square") return [];
  const limitMm = jig.proudLimitMm;
  const fold = bevelProudMm > limitMm ? { foldProudMm: bevelProudMm } : {};
  const place = { ribId: id };
  return [{ kind: "rib-needs-bevel", place, name: `Rib ${id}`, proudMm: mostProudMm, limitMm, ...fold }];
}

/** A rib that stands in the board of one before it in the same direction; the nearest one is named. */
export function overlapProblem(piece: JigPiece, before: readonly JigPiece[]): Problem[] {
  const others = before
    .filter(({ runs, top }) => runs === piece.runs && sharedMm(endsOf({ top }), endsOf(piece)) > 0)
    .map((other) => ({ other, overlapMm: sharedMm(other.body, piece.body) }))
    .sort((a, b) => b.overlapMm - a.overlapMm);
  const [most] = others;
  if (most === undefined || most.overlapMm === 0) return [];
  const { other, overlapMm } = most;
  const place = { ribId: piece.id };
  return [{ kind: "ribs-overlap", place, name: `Rib ${piece.id}`, otherName: `Rib ${other.id}`, overlapMm }];
}
