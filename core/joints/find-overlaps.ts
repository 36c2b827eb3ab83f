import { addSpace, type PlanPoint, type Problem } from "../foundation/index.ts";
import { nameOfItem, type Project } from "../project/index.ts";
import { faceOver, inwardAt, type LyingSheet, spotOnEdge } from "../surfaces/index.ts";
import { edgesOf } from "./edge-places.ts";

/** Places along each edge at which a sheet is looked for inside another. */
const LOOKS = 6;
/** Beyond the tolerance, so that edges that meet do not count, mm. */
const BEYOND_MM = 0.1;
/** How far in an overlap is measured, mm. */
const MOST_MM = 400;

/**
 * Sheets of different items that lie in each other: just inside an edge of one the other is there too, at the same
 * height or with less than the foam's thickness between. One problem for each pair, with the widest overlap and where.
 */
export function findOverlaps(project: Project, sheets: readonly LyingSheet[]): readonly Problem[] {
  const ready = sheets
    .filter(({ planLoops }) => planLoops.length > 0)
    .map((sheet) => ({ sheet, drawn: faceOver(sheet, 0) }));
  const worst = new Map<
    string,
    { readonly mm: number; readonly at: PlanPoint; readonly pair: readonly LyingSheet[] }
  >();
  const nudgeMm = project.joints.toleranceMm + BEYOND_MM;
  for (const { sheet } of ready) {
    const others = ready.filter(
      (other) => other.sheet.itemId !== sheet.itemId && boxesMeet(sheet, other.sheet),
    );
    if (others.length === 0) continue;
    for (const edge of edgesOf(sheet)) {
      if (edge.role === "seam" || edge.role === "centre" || edge.isApex) continue;
      for (let i = 0; i < LOOKS; i++) {
        const spot = spotOnEdge(sheet, edge, (i + 0.5) / LOOKS);
        const inward = inwardAt(spot);
        const insideBy = (mm: number) => addSpace(spot.point, inward, mm);
        for (const { sheet: other, drawn } of others) {
          const limitMm = Math.min(sheet.thicknessMm, other.thicknessMm);
          const lies = (mm: number): boolean => {
            const p = insideBy(mm);
            const over = drawn({ x: p.x, y: p.y });
            return over !== undefined && Math.abs(over.z - p.z) < limitMm;
          };
          if (!lies(nudgeMm)) continue;
          let mm = nudgeMm;
          while (mm < MOST_MM && lies(mm * 1.5)) mm *= 1.5;
          const key = [sheet.itemId, other.itemId].sort().join("/");
          const { x, y } = spot.point;
          if (mm > (worst.get(key)?.mm ?? 0)) worst.set(key, { mm, at: { x, y }, pair: [sheet, other] });
        }
      }
    }
  }
  return [...worst.values()].flatMap(({ mm, at, pair }): readonly Problem[] => {
    const [a, b] = pair.map(({ itemId }) => project.items.find(({ id }) => id === itemId));
    if (!a || !b) return [];
    const place = { itemId: a.id };
    return [
      { kind: "sheets-overlap", place, name: nameOfItem(a), otherName: nameOfItem(b), overlapMm: mm, at },
    ];
  });
}

function boxesMeet(a: LyingSheet, b: LyingSheet): boolean {
  const [[aLeast, aMost], [bLeast, bMost]] = [a.planBox, b.planBox];
  return aLeast.x <= bMost.x && bLeast.x <= aMost.x && aLeast.y <= bMost.y && bLeast.y <= aMost.y;
}
