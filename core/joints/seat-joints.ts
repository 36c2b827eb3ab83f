import { at } from "../foundation/index.ts";
import { type FenceSheet, type SeatStation, type SectionSheet, seatBevelRad } from "../surfaces/index.ts";
import type { FoldCut } from "./cut-of-fold.ts";
import type { SheetJoint } from "./sheet-joint.ts";

/**
 * A fence under each stretch of sheet that it stands under. Its upper edge butts against the sheet, bevelled by the
 * slope across it; the bevel of a joint is the steepest along it, positive where the left (outboard) face is the
 * longer one.
 */
export function seatJoints(fence: FenceSheet, sections: readonly SectionSheet[]): readonly SheetJoint[] {
  return runsOfSeat(fence.seat).flatMap((run): readonly SheetJoint[] => {
    const [first, last] = [at(run, 0), at(run, -1)];
    const sheet = sections.find(({ id }) => id === first.sheetId);
    if (!sheet || run.length < 2) return [];
    let lengthMm = 0;
    for (let i = 0; i + 1 < run.length; i++) {
      const [a, b] = [at(run, i), at(run, i + 1)];
      lengthMm += Math.hypot(b.alongMm - a.alongMm, b.midZMm - a.midZMm);
    }
    return [
      {
        kind: "fence seat",
        sheets: [fence, sheet],
        edgeIds: ["upper", ""],
        foldRad: [0, 0],
        cut: cutOfSeat(run, fence.thicknessMm),
        lengthMm,
        from: first.at,
        to: last.at,
      },
    ];
  });
}

/** Stations in a row under one sheet, from the front. */
function runsOfSeat(seat: readonly SeatStation[]): readonly (readonly SeatStation[])[] {
  const runs: SeatStation[][] = [];
  for (const station of seat.toSorted((a, b) => a.alongMm - b.alongMm)) {
    const run = runs.at(-1);
    if (run?.at(-1)?.sheetId === station.sheetId) run.push(station);
    else runs.push([station]);
  }
  return runs;
}

function cutOfSeat(run: readonly SeatStation[], thicknessMm: number): FoldCut {
  const steepest = run.reduce(
    (most, { bevelRad }) => (Math.abs(bevelRad) > Math.abs(most) ? bevelRad : most),
    0,
  );
  const bevelRad = seatBevelRad(steepest, thicknessMm);
  return { cut: bevelRad === 0 ? "square" : "butt", bevelRad: [bevelRad, 0], setBackMm: [0, 0] };
}
