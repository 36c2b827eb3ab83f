import type { PlanPoint, SpacePoint } from "../foundation/index.ts";
import { faceOver, type Sheet } from "../surfaces/index.ts";
import type { Bond } from "./glue-bonds.ts";
import type { GlueUnit } from "./glue-units.ts";

/** Under less than this a hand with a brush does not go; over a sheet that lies lower by this no other is (common practice), mm. */
const HAND_HIGH_MM = 100;
const SAME_SHEET_MM = 15;
/** So far a brush alone reaches in where no hand goes (common practice), mm. */
export const BRUSH_MM = 150;
/** Where the open edge is looked for round a place. */
const WAYS = Array.from({ length: 8 }, (_, i) => (i * Math.PI) / 4);

/** What joints are looked at in. */
export interface ReachGround {
  readonly sheets: readonly Sheet[];
  /** Upside down the hand comes from the air side. */
  readonly attitude: "upright" | "inverted";
  readonly reachMm: number;
}

/**
 * The joints with the pieces that close each off once they lie over it: a hand with a brush comes down from the side that
 * looks up in the jig, or in under an open edge, as far as it reaches (`reachMm`, or a brush alone where it is low there).
 */
export function closedJoints(
  bonds: readonly Bond[],
  units: readonly GlueUnit[],
  ground: ReachGround,
): readonly Bond[] {
  const roofs = units.flatMap((unit) => roofOf(unit, ground.sheets));
  if (roofs.length < 2) return bonds;
  return bonds.map((bond) => {
    const own = new Set(bond.sides.flat().map(({ part }) => part));
    // A fence is glued from the air side however the tray is turned.
    const side = bond.kind === "fence seat" ? { ...ground, attitude: "inverted" as const } : ground;
    const over = roofs.filter(({ unit }) => !own.has(unit.part));
    const closedBy = over.filter((roof) => (bond.points ?? []).some((point) => isClosed(point, roof, side)));
    return closedBy.length === 0 ? bond : { ...bond, closedBy: closedBy.map(({ unit }) => unit) };
  });
}

/** The piece's surface over the plan, as far as it reaches. */
interface Roof {
  readonly unit: GlueUnit;
  readonly zAt: (p: PlanPoint) => number | undefined;
}

function roofOf(unit: GlueUnit, sheets: readonly Sheet[]): readonly Roof[] {
  const sheet = sheets.find(({ id }) => id === unit.part.sheetId);
  if (sheet === undefined || sheet.kind === "fence" || sheet.planLoops.length === 0) return [];
  const over = faceOver(sheet, sheet.depths.neutralMm);
  const sideOfY = unit.part.hand === "left" ? -1 : 1;
  return [{ unit, zAt: ({ x, y }) => over({ x, y: sideOfY * y })?.z }];
}

function isClosed(point: SpacePoint, { zAt }: Roof, { attitude, reachMm }: ReachGround): boolean {
  const above = zAt(point);
  if (above === undefined) return false;
  const highMm = attitude === "inverted" ? point.z - above : above - point.z;
  if (highMm < SAME_SHEET_MM) return false;
  const farMm = highMm < HAND_HIGH_MM ? BRUSH_MM : reachMm;
  return WAYS.every((rad) => {
    const p = { x: point.x + farMm * Math.cos(rad), y: point.y + farMm * Math.sin(rad) };
    return zAt(p) !== undefined;
  });
}
