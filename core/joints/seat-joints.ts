import { at } from "../foundation/index.ts";
import type { FenceSheet, SectionSheet } from "../surfaces/index.ts";
import type { FoldCut } from "./cut-of-fold.ts";
import type { SheetJoint } from "./sheet-joint.ts";

/** A fence under each sheet that it stands under. */
export function seatJoints(fence: FenceSheet, sections: readonly SectionSheet[]): readonly SheetJoint[] {
  const stations = [...fence.seat].sort((a, b) => a.alongMm - b.alongMm);
  const square: FoldCut = { cut: "square", bevelRad: [0, 0], setBackMm: [0, 0] };
  return [...new Set(stations.map(({ sheetId }) => sheetId))].flatMap((sheetId): readonly SheetJoint[] => {
    const over = stations.filter((station) => station.sheetId === sheetId);
    const sheet = sections.find(({ id }) => id === sheetId);
    if (!sheet || over.length < 2) return [];
    const [first, last] = [at(over, 0), at(over, -1)];
    let lengthMm = 0;
    for (let i = 0; i + 1 < over.length; i++) {
      const [a, b] = [at(over, i), at(over, i + 1)];
      lengthMm += Math.hypot(b.alongMm - a.alongMm, b.midZMm - a.midZMm);
    }
    const base = { kind: "fence seat" as const, foldRad: [0, 0] as const, cut: square, lengthMm };
    return [{ ...base, sheets: [fence, sheet], edgeIds: ["upper", ""], from: first.at, to: last.at }];
  });
}
