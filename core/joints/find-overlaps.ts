import { addSpace, type PlanPoint, type Problem } from "../foundation/index.ts";
import { nameOfItem } from "../project/index.ts";
import { faceOver, inwardAt, type LyingSheet, type RegionEdge, spotOnEdge } from "../surfaces/index.ts";
import { edgesOf } from "./edge-places.ts";
import type { JointGround } from "./joint-ground.ts";

/** Places along each edge at which a sheet is looked for inside another. */
const LOOKS = 6;
/** Beyond the tolerance, so that edges that meet do not count, mm. */
const BEYOND_MM = 0.1;
/** How far in an overlap is measured, mm. */
const MOST_MM = 400;

/** How far two sheets lie in each other. */
interface Overlap {
  readonly mm: number;
  readonly at: PlanPoint;
  readonly pair: readonly [LyingSheet, LyingSheet];
}

/**
 * Sheets of different items that lie in each other: just inside an edge of one the other is there too, at the same
 * height or with less than the foam's thickness between. One problem for each pair, with how far the edge that is least
 * far inside lies in the other sheet, and where.
 */
export function findOverlaps(project: JointGround, sheets: readonly LyingSheet[]): readonly Problem[] {
  const ready = sheets
    .filter(({ planLoops }) => planLoops.length > 0)
    .map((sheet) => ({ sheet, drawn: faceOver(sheet, 0) }));
  const least = new Map<string, Overlap>();
  const nudgeMm = project.joints.toleranceMm + BEYOND_MM;
  for (const one of ready) {
    const others = ready.filter(
      (other) => other.sheet.itemId !== one.sheet.itemId && boxesMeet(one.sheet, other.sheet),
    );
    for (const edge of others.length > 0 ? edgesOf(one.sheet) : []) {
      if (edge.role === "seam" || edge.role === "centre" || edge.isApex) continue;
      for (const other of others) {
        const overlap = alongEdge(one.sheet, edge, other, nudgeMm);
        const key = [one.sheet.itemId, other.sheet.itemId].sort().join("/");
        if (overlap && overlap.mm < (least.get(key)?.mm ?? Number.POSITIVE_INFINITY)) least.set(key, overlap);
      }
    }
  }
  return [...least.values()].flatMap(({ mm, at, pair }): readonly Problem[] => {
    const [a, b] = pair.map(({ itemId }) => project.items.find(({ id }) => id === itemId));
    if (!a || !b) return [];
    const place = { itemId: a.id };
    return [
      { kind: "sheets-overlap", place, name: nameOfItem(a), otherName: nameOfItem(b), overlapMm: mm, at },
    ];
  });
}

/** Where an edge lies farthest inside another sheet, going in from it until that sheet ends. */
function alongEdge(
  sheet: LyingSheet,
  edge: RegionEdge,
  other: { readonly sheet: LyingSheet; readonly drawn: ReturnType<typeof faceOver> },
  nudgeMm: number,
): Overlap | undefined {
  const limitMm = Math.min(sheet.thicknessMm, other.sheet.thicknessMm);
  let farthest: Overlap | undefined;
  for (let i = 0; i < LOOKS; i++) {
    const spot = spotOnEdge(sheet, edge, (i + 0.5) / LOOKS);
    const inward = inwardAt(spot);
    const lies = (mm: number): boolean => {
      const p = addSpace(spot.point, inward, mm);
      const over = other.drawn({ x: p.x, y: p.y });
      return over !== undefined && Math.abs(over.z - p.z) < limitMm;
    };
    if (!lies(nudgeMm)) continue;
    let [mm, beyond] = [nudgeMm, nudgeMm];
    while (mm < MOST_MM && lies(mm)) [mm, beyond] = [mm * 1.5, mm];
    for (let k = 0; k < HALVINGS; k++) {
      const middle = (mm + beyond) / 2;
      if (lies(middle)) beyond = middle;
      else mm = middle;
    }
    const { x, y } = spot.point;
    if (beyond > (farthest?.mm ?? 0)) farthest = { mm: beyond, at: { x, y }, pair: [sheet, other.sheet] };
  }
  return farthest;
}

const HALVINGS = 12;

function boxesMeet(a: LyingSheet, b: LyingSheet): boolean {
  const [[aLeast, aMost], [bLeast, bMost]] = [a.planBox, b.planBox];
  return aLeast.x <= bMost.x && bLeast.x <= aMost.x && aLeast.y <= bMost.y && bLeast.y <= aMost.y;
}
