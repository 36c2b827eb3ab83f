import type { BendMethod, Origin, Project } from "../project/index.ts";
import { layPlanks, type Plank } from "./planks.ts";
import { kerfOfClosing, laySlots, type SlotPattern, type SlotSide } from "./relief-slots.ts";
import { stretchCurve, type TurnTable } from "./stretch-curve.ts";
import type { ZoneLimits } from "./types.ts";

/** What of a project the bends of a sheet follow from, besides the sheet. */
export interface BendGround {
  readonly leastBendRatio: number;
  readonly ratioFrom: Origin | "test";
  readonly thicknessMm: number;
  readonly bending: Project["bending"];
  /** The methods chosen on the sheet's item. */
  readonly choices: readonly { readonly atMm: number; readonly method: BendMethod }[];
}

/** Slots laid in a stretch, and whether the foam stands them. */
export interface SlotsTried {
  readonly pattern: SlotPattern;
  readonly webMm: number;
  /** How far the web's middle lies from that of the foam, toward the inward normal. */
  readonly offsetMm: number;
  readonly limits: NonNullable<ZoneLimits["slots"]>;
  readonly isSound: boolean;
}

/** The foam between two slots is at least so many kerfs wide, so that it stands the saw (common practice). */
const LEAST_TOOTH_KERFS = 2;

/** A slot is at least so deep, mm: less closes nothing. */
const LEAST_DEPTH_MM = 1;

/** How thick a kerf is: as the three slots on scrap closed, where they were tried, else as typed. */
export const slotKerfMm = ({ slotKerfMm: typedMm, slotTest }: Project["bending"]): number =>
  slotTest ? kerfOfClosing(slotTest.depthMm, slotTest.closedRad / TEST_SLOTS) : typedMm;

/** Slots in the test strip. */
export const TEST_SLOTS = 3;

/** Relief slots in a stretch; undefined where the foam is no thicker than the web. */
export function trySlots(
  table: TurnTable,
  leastRadiusMm: number,
  side: SlotSide,
  ground: BendGround,
): SlotsTried | undefined {
  const { thicknessMm, bending, leastBendRatio } = ground;
  const webMm = bending.slotWebMm;
  const depthMm = thicknessMm - webMm;
  if (depthMm < LEAST_DEPTH_MM) return undefined;
  const outwardMm = (side === "closing" ? 1 : -1) * (depthMm / 2);
  const offsetMm = -table.sense * outwardMm;
  const kerfMm = slotKerfMm(bending);
  const web = stretchCurve(table, offsetMm);
  const pattern = laySlots(web, { side, kerfMm, depthMm, sagittaMm: bending.sagittaMm });
  const toothMm = pattern.pitchMm && pattern.pitchMm[0] - kerfMm;
  const limits = {
    webRadiusMm: leastRadiusMm + outwardMm,
    leastWebRadiusMm: leastBendRatio * webMm,
    ...(toothMm !== undefined && { toothMm }),
    leastToothMm: LEAST_TOOTH_KERFS * kerfMm,
  };
  const isSound =
    limits.webRadiusMm >= limits.leastWebRadiusMm && (toothMm ?? limits.leastToothMm) >= limits.leastToothMm;
  return { pattern, webMm, offsetMm, limits, isSound };
}

export interface PlanksTried {
  readonly planks: readonly Plank[];
  readonly limits: NonNullable<ZoneLimits["planks"]>;
  readonly isSound: boolean;
}

/** Planks in a stretch. */
export function tryPlanks(table: TurnTable, { thicknessMm, bending }: BendGround): PlanksTried {
  const planks = layPlanks(stretchCurve(table, 0), bending.sagittaMm);
  const limits = {
    widthMm: Math.min(...planks.map(({ widthMm }) => widthMm)),
    leastWidthMm: thicknessMm,
  };
  return { planks, limits, isSound: limits.widthMm >= limits.leastWidthMm };
}
