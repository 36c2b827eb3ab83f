import type { Problem } from "../foundation/index.ts";
import { makingOf, ribBoardOf } from "../project/index.ts";
import type { ReleaseLock } from "./board-types.ts";
import { endsOf, sharedMm } from "./crossing-rib.ts";
import { longestRibMm } from "./finish-rib.ts";
import type { JigGround } from "./jig-ground.ts";
import type { JigPiece } from "./jig-piece.ts";
import type { RibPlace } from "./rib-places.ts";
import type { AssemblyStep, Rib } from "./types.ts";

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

/** A typed rib in which a fence runs along; one that was spaced out is left out, for the fence carries the sheet. */
export function fenceProblem({ id, runs }: JigPiece, otherName: string, { jig }: JigGround): Problem[] {
  if (jig[runs].kind !== "typed") return [];
  const place = { ribId: id, setting: `jig.${runs}.atMm` };
  return [{ kind: "rib-in-fence", place, name: `Rib ${id}`, otherName }];
}

/** What cannot be made of a rib as the settings ask. */
export function makingProblems(rib: Rib, project: JigGround): Problem[] {
  const place = { ribId: rib.id };
  const us = rib.outlineMm.map(({ u }) => u);
  const vs = rib.outlineMm.map(({ v }) => v);
  const lengthMm = Math.max(...us) - Math.min(...us);
  const heightMm = Math.max(...vs) - Math.min(...vs);
  const longestMm = longestRibMm(project);
  const board = ribBoardOf(project);
  const widthMm =
    board === undefined
      ? Number.POSITIVE_INFINITY
      : Math.min(board.lengthMm, board.widthMm) - 2 * project.cutting.stockEdgeMm;
  const { name } = rib;
  return [
    ...(lengthMm > longestMm && rib.splices.length === 0
      ? [{ kind: "rib-not-spliced" as const, place, name, lengthMm, longestMm }]
      : []),
    ...(heightMm > widthMm && widthMm > 0
      ? [{ kind: "rib-higher-than-board" as const, place, name, heightMm, widthMm }]
      : []),
  ];
}

/** A rib that others keep out when it is its turn. */
export const lockedProblem = ({ ribId, lockedBy }: AssemblyStep): Problem[] =>
  lockedBy.map((other) => ({
    kind: "rib-locked-out",
    place: { ribId },
    name: `Rib ${ribId}`,
    otherName: `rib ${other}`,
  }));

/** What keeps the shell from lifting off its ribs; a wing does once its plate is on. */
export function releaseProblem(lock: ReleaseLock, { stand, runs }: Pick<Rib, "stand" | "runs">): Problem[] {
  const { ribId, by, partId, overMm, at: spot, alongMm, openToMm } = lock;
  const words = { name: partId, ribName: `rib ${ribId}`, stand, runs };
  return [{ kind: "shell-locked", by, place: { ribId }, ...words, overMm, at: spot, alongMm, openToMm }];
}

/** The ribs of one set in which no hole of the wanted size finds room, told at once. */
export function holeProblem(ribs: readonly Rib[], project: JigGround): Problem[] {
  const { holeMm } = makingOf(project);
  const without = holeMm > 0 ? ribs.filter(({ holesMm }) => holesMm.length === 0) : [];
  const [first] = without;
  if (first === undefined) return [];
  const place = { ribId: first.id, setting: "jig.making.holeMm" };
  const name = `${without.length === 1 ? "Rib" : "Ribs"} ${without.map(({ id }) => id).join(", ")}`;
  return [{ kind: "rib-hole-does-not-fit", place, name, holeMm }];
}
