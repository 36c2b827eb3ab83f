import type { Problem } from "../foundation/index.ts";
import type { Gluing, OrderWish, Project } from "../project/index.ts";
import { bundlesOf } from "./bundles.ts";
import type { Bond } from "./glue-bonds.ts";
import { glueTimes } from "./glue-times.ts";
import { type GlueUnit, unitMassKg } from "./glue-units.ts";
import { holdLine } from "./hold-line.ts";
import type { Placement } from "./neighbours.ts";
import type { OrderGround, SheetOrder } from "./order-ground.ts";
import { orderSheets } from "./order-sheets.ts";
import { readWishes } from "./order-wishes.ts";
import { layMinutes, readyMinutes, wetMinutes } from "./step-minutes.ts";

/**
 * The order in which sheets come to the jig, as the builder wishes it and else as is cheapest. Problems: those of wishes
 * (`readWishes`), and order-wish-costs where without them fewer gaps would have to be closed or the work would end sooner.
 */
export function planOrder(
  sheets: readonly GlueUnit[],
  bonds: readonly Bond[],
  project: Project,
  gluing: Gluing,
): { readonly placements: readonly Placement[]; readonly problems: readonly Problem[] } {
  const free = groundOf(sheets, bonds, project, gluing);
  const wishes: readonly OrderWish[] = project.glue.order ?? [];
  if (wishes.length === 0) return { placements: orderSheets(free).placements, problems: [] };
  const { problems, ...asked } = readWishes(wishes, sheets);
  const order = orderSheets({ ...free, ...asked });
  return { placements: order.placements, problems: [...problems, ...costOfWishes(order, orderSheets(free))] };
}

/** The ground of an order without wishes. */
export function groundOf(
  sheets: readonly GlueUnit[],
  bonds: readonly Bond[],
  project: Project,
  gluing: Gluing,
): OrderGround {
  const { hands, glue, shopCelsius } = gluing;
  const jointMinutes = (bond: Bond): number => {
    const line = { lengthMm: bond.lengthMm, pins: holdLine(bond, gluing).pins };
    return readyMinutes([line], hands) + wetMinutes([line], hands);
  };
  const lay = (unit: GlueUnit) => layMinutes([unitMassKg(unit, project)], hands);
  return {
    bundles: bundlesOf(sheets, bonds, lay, jointMinutes),
    bonds: bonds.filter(({ sides }) => sides.every((side) => side.some((unit) => sheets.includes(unit)))),
    times: glueTimes(glue, shopCelsius),
    jointMinutes,
    mayCome: () => true,
    mayPair: () => true,
  };
}

/** Less than this later is not worth a word, hours. */
const WORTH_HOURS = 1;

function costOfWishes(wished: SheetOrder, free: SheetOrder): readonly Problem[] {
  const hours = (wished.cost[4] - free.cost[4]) / 60;
  const closersOf = ({ placements }: SheetOrder) =>
    placements.filter(({ role }) => role === "closer").flatMap(({ units }) => units.map(({ id }) => id));
  const before = closersOf(free);
  const closerIds = closersOf(wished).filter((id) => !before.includes(id));
  if (closerIds.length === 0 && hours < WORTH_HOURS) return [];
  const place = { setting: "glue.order" };
  return [{ kind: "order-wish-costs", place, name: "your order", closerIds, hours: Math.max(0, hours) }];
}
