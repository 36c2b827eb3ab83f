import { at } from "../foundation/index.ts";
import type { BoardHeight } from "./board-height.ts";
import type { BoardShim } from "./board-types.ts";
import { planPoint } from "./jig-piece.ts";
import type { Rib } from "./types.ts";

/** Places along a rib that stands on its whole length are so far apart at most, mm. */
const APART_MM = 400;

/** What a measured board asks for under every foot of every rib; empty where none was measured. */
export function boardShims(ribs: readonly Rib[], boardAt: BoardHeight | undefined): readonly BoardShim[] {
  if (boardAt === undefined) return [];
  const places = ribs.flatMap((rib) =>
    footPlaces(rib).map((alongMm) => {
      const p = planPoint(rib.runs, rib.atMm, alongMm);
      return { ribId: rib.id, at: p, boardMm: boardAt(p) };
    }),
  );
  const highestMm = Math.max(...places.map(({ boardMm }) => boardMm));
  return places.map((place) => ({ ...place, packingMm: highestMm - place.boardMm }));
}

function footPlaces({ standsOn }: Rib): readonly number[] {
  const [first, ...rest] = standsOn;
  if (first === undefined) return [];
  if (rest.length > 0) return standsOn.map((foot) => (at(foot, 0) + at(foot, 1)) / 2);
  const [fromMm, toMm] = first;
  const bays = Math.max(1, Math.ceil((toMm - fromMm) / APART_MM));
  return Array.from({ length: bays + 1 }, (_, i) => fromMm + ((toMm - fromMm) * i) / bays);
}
