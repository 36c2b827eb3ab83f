import type { Bundle } from "./bundles.ts";
import type { GlueUnit } from "./glue-units.ts";
import { isLoading } from "./loads.ts";
import { isCloser, standingBonds, waitsFor } from "./neighbours.ts";
import type { Ground, OrderCost, SheetOrder } from "./order-ground.ts";

/** How far an order has come. */
export interface State extends SheetOrder {
  readonly waiting: readonly Bundle[];
  readonly standing: readonly GlueUnit[];
  readonly made: ReadonlySet<string>;
  /** When the last joint of each unit was made. */
  readonly gluedAt: ReadonlyMap<GlueUnit, number>;
  readonly hasCloser: boolean;
  /** What is still to be laid and glued. */
  readonly leftMinutes: number;
}

/** Before anything is laid. */
export const startOf = ({ bundles, workMinutes }: Ground): State => ({
  placements: [],
  cost: [0, 0, 0, 0, 0],
  waiting: bundles,
  standing: [],
  made: new Set(),
  gluedAt: new Map(),
  hasCloser: false,
  leftMinutes: workMinutes,
});

/** What may come next, and how it would be then. */
export interface Next {
  readonly units: readonly GlueUnit[];
  /** 0: a neighbour of what stands; 1: it lies by itself; 2: it closes a gap or comes early; 3: nothing holds it, or a joint of it is out of reach. */
  readonly rank: number;
  readonly start: number;
  readonly after: State;
}

/** What may come next, with its image where that may come along. Where wishes leave nothing, anything may. */
export function candidates(state: State, ground: Ground): readonly Next[] {
  const wished = state.waiting.filter((bundle) => ground.mayCome(bundle, state.standing));
  const open = wished.length > 0 ? wished : state.waiting;
  const taken = new Set<Bundle>();
  return open.flatMap((bundle) => {
    if (taken.has(bundle)) return [];
    const image = ground.imageOf.get(bundle);
    const pair = image !== undefined && open.includes(image) ? [bundle, image] : [bundle];
    for (const one of pair) taken.add(one);
    return [laid(pair, state, ground)];
  });
}

/** The state when some bundles have been laid and glued. */
export function laid(come: readonly Bundle[], state: State, { times, bondsOf, minutesOf }: Ground): Next {
  const ownBonds = (unit: GlueUnit) => bondsOf.get(unit) ?? [];
  const { standing, cost } = state;
  const units = come.flatMap((bundle) => bundle.units);
  const others = state.waiting.filter((bundle) => !come.includes(bundle));
  const waiting = others.flatMap((bundle) => bundle.units);
  const touching = units.filter((unit) => standingBonds(unit, standing, ownBonds(unit)).length > 0);
  const closing = touching.filter((unit) => isCloser(unit, standing, ownBonds(unit)));
  const early = units.filter((unit) => waitsFor(unit, waiting, ownBonds(unit)));
  const unheld = come.filter(
    (bundle) =>
      bundle.units.every((unit) => unit.ribIds.length === 0) &&
      bundle.units.every((unit) => !touching.includes(unit)),
  );
  const role = touching.length === 0 ? "first" : closing.length > 0 || early.length > 0 ? "closer" : "next";
  const there = [...standing, ...units];
  const lines = [...new Set(units.flatMap(ownBonds))].filter(
    (bond) =>
      !state.made.has(bond.id) && bond.sides.every((side) => side.some((unit) => there.includes(unit))),
  );
  const closed = lines.filter(({ closedBy }) => closedBy?.some((unit) => there.includes(unit)));
  const neighbours = lines.flatMap(({ sides }) => sides.flat()).filter((unit) => standing.includes(unit));
  const hours = isLoading(role === "closer" ? "close" : "lay", units, neighbours)
    ? times.loadHours
    : times.clampHours;
  const start = neighbours.reduce((latest, unit) => {
    const glued = state.gluedAt.get(unit);
    return glued === undefined ? latest : Math.max(latest, glued + hours * 60);
  }, cost[4]);
  const minutes =
    come.reduce((sum, { layMinutes }) => sum + layMinutes, 0) +
    lines.reduce((sum, { id }) => sum + (minutesOf.get(id) ?? 0), 0);
  const end = start + minutes;
  const gluedAt = new Map(state.gluedAt);
  for (const unit of lines.flatMap(({ sides }) => sides.flat())) gluedAt.set(unit, end);
  const rank = unheld.length + closed.length > 0 ? 3 : role === "closer" ? 2 : role === "first" ? 1 : 0;
  return {
    units,
    rank,
    start,
    after: {
      placements: [...state.placements, { units, role }],
      cost: [
        cost[0] + unheld.length + closed.length,
        cost[1] + closing.filter(({ part }) => part.kind !== "transition").length,
        cost[2] + early.length,
        cost[3] + (state.hasCloser && role !== "closer" ? 1 : 0),
        end,
      ],
      waiting: others,
      standing: there,
      made: new Set([...state.made, ...lines.map(({ id }) => id)]),
      gluedAt,
      hasCloser: state.hasCloser || role === "closer",
      leftMinutes: state.leftMinutes - minutes,
    },
  };
}

/** No order that goes on from here costs less: all that is left takes its minutes. */
export const boundOf = ({ cost, leftMinutes }: State): OrderCost => [
  cost[0],
  cost[1],
  cost[2],
  cost[3],
  cost[4] + leftMinutes,
];
