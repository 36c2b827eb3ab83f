import { at } from "../foundation/index.ts";
import { type FenceSheet, type LyingSheet, type SeatStation, seatBevelRad } from "../surfaces/index.ts";
import type { SheetJoint } from "./sheet-joint.ts";
import type { JointStation } from "./types.ts";

/**
 * A fence under each stretch of sheet that it stands under. Its upper edge butts against the sheet, bevelled by the
 * slope across it at every place; positive where the left (outboard) face is the longer one.
 */
export function seatJoints(fence: FenceSheet, sheets: readonly LyingSheet[]): readonly SheetJoint[] {
  return runsOfSeat(fence.seat).flatMap((run): readonly SheetJoint[] => {
    const [first, last] = [at(run, 0), at(run, -1)];
    const sheet = sheets.find(({ id }) => id === first.sheetId);
    if (!sheet || run.length < 2) return [];
    const stations = stationsOf(run, fence.thicknessMm);
    return [
      {
        kind: "fence seat",
        sheets: [fence, sheet],
        edgeIds: ["upper", ""],
        cut: stations.some(({ bevelRad }) => bevelRad[0] !== 0) ? "butt" : "square",
        stations,
        lengthMm: at(stations, -1).alongMm,
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

function stationsOf(run: readonly SeatStation[], thicknessMm: number): readonly JointStation[] {
  let alongMm = 0;
  return run.map((station, i) => {
    const before = run[i - 1];
    if (before) alongMm += Math.hypot(station.alongMm - before.alongMm, station.midZMm - before.midZMm);
    return {
      alongMm,
      at: { ...station.at, z: station.midZMm },
      foldRad: 0,
      bevelRad: [seatBevelRad(station.bevelRad, thicknessMm), 0],
      setBackMm: [0, 0],
    };
  });
}
