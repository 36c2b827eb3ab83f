import type { Problem } from "../foundation/index.ts";
import { dewPointCelsius } from "../laminate/index.ts";
import type { Part } from "../patterns/index.ts";
import { foamOf, isPolystyrene, laminateOf, type Project } from "../project/index.ts";
import type { SkinFace } from "./types.ts";

/** A surface is to be so much warmer than the dew point of the air, °C (published for coatings). */
export const ABOVE_DEW_POINT_CELSIUS = 3;

/** What of shop, resin and foam does not go together. Problems: shop-too-cold, shop-too-damp, resin-dissolves-foam. */
export function shopProblems(
  faces: readonly SkinFace[],
  parts: readonly Part[],
  project: Project,
): readonly Problem[] {
  const { resin, shopCelsius, leastCelsius, humidityShare } = laminateOf(project);
  if (faces.length === 0 || !resin) return [];
  const dewPoint = dewPointCelsius(shopCelsius, humidityShare);
  const cold: Problem = {
    kind: "shop-too-cold",
    place: { setting: "laminate.shopCelsius" },
    name: resin.name,
    celsius: shopCelsius,
    leastCelsius,
  };
  const damp: Problem = {
    kind: "shop-too-damp",
    place: { setting: "laminate.humidityShare" },
    name: resin.name,
    celsius: shopCelsius,
    dewPointCelsius: dewPoint,
    leastAboveCelsius: ABOVE_DEW_POINT_CELSIUS,
  };
  return [
    ...(shopCelsius < leastCelsius ? [cold] : []),
    ...(shopCelsius - dewPoint < ABOVE_DEW_POINT_CELSIUS ? [damp] : []),
    ...dissolvedFoams(parts, project).map(
      (name): Problem => ({
        kind: "resin-dissolves-foam",
        place: { setting: "laminate.resinId" },
        name,
        resinName: resin.name,
        resinKind: resin.kind ?? "epoxy",
      }),
    ),
  ];
}

/**
 * The foams that the resin's styrene dissolves, by name: polystyrene under polyester or vinyl ester (published in builders'
 * archives and in tables of chemical resistance).
 */
export function dissolvedFoams(parts: readonly Part[], project: Project): readonly string[] {
  const { resin } = laminateOf(project);
  if (!resin || (resin.kind ?? "epoxy") === "epoxy") return [];
  const foams = [...new Set(parts.map(({ foamId }) => foamId))].flatMap((id) => foamOf(project, id) ?? []);
  return foams.filter(isPolystyrene).map(({ name }) => name);
}
