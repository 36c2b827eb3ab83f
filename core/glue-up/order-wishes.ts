import type { Problem } from "../foundation/index.ts";
import type { OrderWish } from "../project/index.ts";
import type { Bundle } from "./bundles.ts";
import type { GlueUnit } from "./glue-units.ts";
import type { OrderGround } from "./order-ground.ts";

/** What the builder asks of the order, as far as it can be had at once. */
export interface Wishes extends Pick<OrderGround, "mayCome" | "mayPair"> {
  readonly problems: readonly Problem[];
}

/** One unit that is not to come before another. */
interface Rule {
  readonly later: GlueUnit;
  readonly earlier: GlueUnit;
}

/**
 * The builder's wishes for the order of sheets, one after the other. Problems: order-names-nothing where a wish is for
 * something that is not laid in the order of sheets, order-contradicts where those before it already ask for the opposite;
 * such a wish is left out.
 */
export function readWishes(wishes: readonly OrderWish[], units: readonly GlueUnit[]): Wishes {
  const problems: Problem[] = [];
  const rules: Rule[] = [];
  const apart: (readonly [string, string])[] = [];
  const place = { setting: "glue.order" };
  wishes.forEach((wish) => {
    const named = [wish.unitId, ...("otherId" in wish ? [wish.otherId] : [])];
    const missing = named.find((id) => namedBy(id, units).length === 0);
    if (missing !== undefined) {
      problems.push({ kind: "order-names-nothing", place, name: missing });
      return;
    }
    if (wish.kind === "apart") {
      apart.push([wish.unitId, wish.otherId]);
      return;
    }
    const asked = rulesOf(wish, wishes, units);
    if (asked.some((rule) => rule.later === rule.earlier) || isCircle([...rules, ...asked], units)) {
      problems.push({ kind: "order-contradicts", place, name: wish.unitId });
      return;
    }
    rules.push(...asked);
  });
  return {
    problems,
    mayCome: (bundle, standing) =>
      rules.every(
        ({ later, earlier }) =>
          !bundle.units.includes(later) || bundle.units.includes(earlier) || standing.includes(earlier),
      ),
    mayPair: (one, other) =>
      !apart.some(([a, b]) => isNamed(a, b, one, other) || isNamed(b, a, one, other)) &&
      !rules.some(({ later, earlier }) => isBetween(later, earlier, one, other)),
  };
}

function rulesOf(wish: OrderWish, all: readonly OrderWish[], units: readonly GlueUnit[]): readonly Rule[] {
  const own = namedBy(wish.unitId, units);
  if (wish.kind === "after" || wish.kind === "apart")
    return own.flatMap((later) => namedBy(wish.otherId, units).map((earlier) => ({ later, earlier })));
  const alike = all.filter(({ kind }) => kind === wish.kind).flatMap(({ unitId }) => namedBy(unitId, units));
  const others = units.filter((unit) => !alike.includes(unit));
  return own.flatMap((unit) =>
    others.map((other) =>
      wish.kind === "first" ? { later: other, earlier: unit } : { later: unit, earlier: other },
    ),
  );
}

/** Units by their own id, or all of a part by the part's. */
const namedBy = (id: string, units: readonly GlueUnit[]): readonly GlueUnit[] =>
  units.filter((unit) => unit.id === id || unit.part.id === id || unit.adds.includes(id));

const isNamed = (a: string, b: string, one: Bundle, other: Bundle): boolean =>
  namedBy(a, one.units).length > 0 && namedBy(b, other.units).length > 0;

const isBetween = (later: GlueUnit, earlier: GlueUnit, one: Bundle, other: Bundle): boolean =>
  (one.units.includes(later) && other.units.includes(earlier)) ||
  (one.units.includes(earlier) && other.units.includes(later));

/** Whether rules ask that something comes before itself. */
function isCircle(rules: readonly Rule[], units: readonly GlueUnit[]): boolean {
  let left: readonly GlueUnit[] = units;
  while (left.length > 0) {
    const free = left.filter(
      (unit) => !rules.some(({ later, earlier }) => later === unit && left.includes(earlier)),
    );
    if (free.length === 0) return true;
    left = left.filter((unit) => !free.includes(unit));
  }
  return false;
}
