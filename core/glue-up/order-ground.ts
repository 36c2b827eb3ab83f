import { at } from "../foundation/index.ts";
import type { Bundle } from "./bundles.ts";
import type { Bond } from "./glue-bonds.ts";
import type { GlueTimes } from "./glue-times.ts";
import { type GlueUnit, isImageOf } from "./glue-units.ts";
import { type Placement, standingBonds } from "./neighbours.ts";

/** What an order is looked for in. */
export interface OrderGround {
  readonly bundles: readonly Bundle[];
  readonly bonds: readonly Bond[];
  readonly times: GlueTimes;
  /** Making a joint ready, spreading, shutting and holding it. */
  readonly jointMinutes: (bond: Bond) => number;
  /** Whether a bundle may come now, as far as the builder's own wishes go. */
  readonly mayCome: (bundle: Bundle, standing: readonly GlueUnit[]) => boolean;
  /** Whether two images may come in one step. */
  readonly mayPair: (one: Bundle, other: Bundle) => boolean;
}

/**
 * What an order costs, the worst first: pieces that nothing holds when they come, and joints
 * that hand and brush no longer reach then; sheets that have to be let in between
 * others; transitions laid before what they join; pieces that come after a closer; then the minutes to the end of the last
 * step, as if the shop never shut.
 */
export type OrderCost = readonly [
  unheld: number,
  closers: number,
  early: number,
  late: number,
  minutes: number,
];

/** The order in which sheets come to the jig, and what it costs. */
export interface SheetOrder {
  readonly placements: readonly Placement[];
  readonly cost: OrderCost;
}

/** The ground with what is asked of it again and again. */
export interface Ground extends OrderGround {
  readonly bondsOf: ReadonlyMap<GlueUnit, readonly Bond[]>;
  readonly minutesOf: ReadonlyMap<string, number>;
  readonly imageOf: ReadonlyMap<Bundle, Bundle>;
  /** Of all work on the jig. */
  readonly workMinutes: number;
}

/** The ground with its figures. */
export function prepared(asked: OrderGround): Ground {
  const { bundles, bonds, jointMinutes } = asked;
  const units = bundles.flatMap((bundle) => bundle.units);
  const minutesOf = new Map(bonds.map((bond) => [bond.id, jointMinutes(bond)]));
  const images = bundles.flatMap((bundle) => {
    const image = bundles.find((other) => isPair(bundle, other, asked));
    return image === undefined ? [] : [[bundle, image] as const];
  });
  const laying = bundles.reduce((sum, { layMinutes }) => sum + layMinutes, 0);
  return {
    ...asked,
    bondsOf: new Map(
      units.map((unit) => [unit, bonds.filter(({ sides }) => sides.some((side) => side.includes(unit)))]),
    ),
    minutesOf,
    imageOf: new Map(images),
    workMinutes: [...minutesOf.values()].reduce((sum, minutes) => sum + minutes, laying),
  };
}

function isPair(one: Bundle, other: Bundle, { bonds, mayPair }: OrderGround): boolean {
  const [a, b] = [one.units[0], other.units[0]];
  if (a === undefined || b === undefined || one.units.length + other.units.length > 2) return false;
  return isImageOf(a, b) && standingBonds(a, [b], bonds).length === 0 && mayPair(one, other);
}

/** A minute's thousandth is rounding. */
const SAME_MINUTES = 1e-3;

/** Whether one cost is under another: by the first figure in which they differ. */
export function isCheaper(one: OrderCost, other: OrderCost): boolean {
  const differs = one.findIndex((value, i) => Math.abs(value - at(other, i)) > SAME_MINUTES);
  return differs >= 0 && at(one, differs) < at(other, differs);
}
