import type { GlueUnit } from "../../../core/glue-up/glue-units.ts";
import type { OrderGround } from "../../../core/glue-up/order-ground.ts";

/** The five figures of an order's cost, reckoned anew from pieces, joints and times alone. */
export function costOf(order: readonly (readonly GlueUnit[])[], ground: OrderGround): readonly number[] {
  const { bonds, times, jointMinutes, bundles } = ground;
  const stands = new Set<GlueUnit>();
  const made = new Set<string>();
  const glued = new Map<GlueUnit, number>();
  let [unheld, closers, late] = [0, 0, 0];
  let hasClosed = false;
  let clock = 0;
  for (const come of order) {
    const meets = (unit: GlueUnit) =>
      bonds.filter(({ sides: [a, b] }) => {
        const other = a.includes(unit) ? b : b.includes(unit) ? a : [];
        return other.some((one) => stands.has(one));
      });
    const isLetIn = (unit: GlueUnit) => {
      const angles = meets(unit).flatMap(({ middle }) =>
        middle ? [Math.atan2(middle.y - unit.middle.y, middle.x - unit.middle.x)] : [],
      );
      return angles.some((a) => angles.some((b) => Math.cos(a - b) < -0.5));
    };
    const touching = come.filter((unit) => meets(unit).length > 0);
    const letIn = touching.filter(isLetIn);
    if (touching.length === 0 && come.every((unit) => unit.ribIds.length === 0)) unheld++;
    closers += letIn.length;
    if (hasClosed && letIn.length === 0) late++;
    for (const unit of come) stands.add(unit);
    const lines = bonds.filter(
      ({ id, sides }) => !made.has(id) && sides.every((side) => side.some((unit) => stands.has(unit))),
    );
    const touched = lines.flatMap(({ sides }) => sides.flat()).filter((unit) => !come.includes(unit));
    const hangs = letIn.length > 0 || [...come, ...touched].some(({ ribIds }) => ribIds.length < 2);
    const wait = (hangs ? times.loadHours : times.clampHours) * 60;
    for (const unit of touched) clock = Math.max(clock, (glued.get(unit) ?? Number.NEGATIVE_INFINITY) + wait);
    for (const bundle of bundles)
      if (bundle.units.some((unit) => come.includes(unit))) clock += bundle.layMinutes;
    for (const line of lines) {
      clock += jointMinutes(line);
      made.add(line.id);
    }
    for (const unit of lines.flatMap(({ sides }) => sides.flat())) glued.set(unit, clock);
    hasClosed ||= letIn.length > 0;
  }
  // None of these sheets is a transition, so that none can come too early.
  return [unheld, closers, 0, late, clock];
}

/** The least cost over every order of the bundles that the wishes allow, each on its own. */
export function leastCost(ground: OrderGround): readonly number[] {
  let least: readonly number[] | undefined;
  const go = (order: readonly (readonly GlueUnit[])[], left: OrderGround["bundles"]): void => {
    if (left.length === 0) {
      const cost = costOf(order, ground);
      if (least === undefined || isUnder(cost, least)) least = cost;
    }
    for (const bundle of left.filter((one) => ground.mayCome(one, order.flat())))
      go(
        [...order, bundle.units],
        left.filter((other) => other !== bundle),
      );
  };
  go([], ground.bundles);
  return least ?? [];
}

function isUnder(one: readonly number[], other: readonly number[]): boolean {
  for (const [i, value] of one.entries()) {
    const difference = value - (other[i] ?? 0);
    if (Math.abs(difference) > 1e-3) return difference < 0;
  }
  return false;
}
