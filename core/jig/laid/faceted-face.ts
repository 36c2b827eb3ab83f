import { at, type PlanPoint } from "../../foundation/index.ts";
import type { Part } from "../../patterns/index.ts";
import { type faceOver, fibreOf, placesAtMiddle, type SectionSheet } from "../../surfaces/index.ts";
import { middleLine, normalOf, offsetPoint, rulingsOver, type SectionPoint } from "./section-line.ts";

/** A flat plank between two rulings of a face, each where the mitre to its neighbour meets that face. */
interface Facet {
  readonly from: SectionPoint;
  readonly to: SectionPoint;
  readonly directionRad: number;
}

/**
 * A face of a section where it is glued up of planks: flat between the plank's edges, which lie on the drawn curve at
 * mid-thickness and meet their neighbours on the mitre. Elsewhere as drawn.
 */
export function facetedFace(
  sheet: SectionSheet,
  part: Pick<Part, "zones" | "stretches">,
  depthMm: number,
  drawn: ReturnType<typeof faceOver>,
): ReturnType<typeof faceOver> {
  const facets = facetsOf(sheet, part, depthMm);
  if (facets.length === 0) return drawn;
  const { crossingOf, crossingUnder, spotOn } = rulingsOver(sheet.chart);
  const spans = facets.map((facet) => ({
    ...facet,
    fromMm: crossingOf(facet.from),
    toMm: crossingOf(facet.to),
  }));
  return (p: PlanPoint) => {
    const face = drawn(p);
    const crossing = crossingUnder(p);
    const facet = face && spans.find(({ fromMm, toMm }) => crossing >= fromMm && crossing <= toMm);
    if (!facet) return face;
    const share = (crossing - facet.fromMm) / (facet.toMm - facet.fromMm);
    const { from, to } = facet;
    const { z } = spotOn({ a: from.a + share * (to.a - from.a), b: from.b + share * (to.b - from.b) }, p.y);
    return { x: p.x, y: p.y, z, normal: normalOf(sheet.chart, facet.directionRad) };
  };
}

function facetsOf(
  sheet: SectionSheet,
  { zones, stretches }: Pick<Part, "zones" | "stretches">,
  depthMm: number,
): readonly Facet[] {
  const planked = zones.flatMap(({ bend, verdict }) =>
    verdict === "planks" && bend?.planks ? [bend.planks] : [],
  );
  if (planked.length === 0) return [];
  const { middleAt } = fibreOf(sheet, stretches);
  const spotAt = middleLine(sheet, placesAtMiddle(sheet));
  const inwardMm = depthMm - sheet.depths.neutralMm;
  return planked.flatMap((planks): readonly Facet[] => {
    const edges = [at(planks, 0).fromUMm, ...planks.map(({ toUMm }) => toUMm)].map((uMm) =>
      spotAt(middleAt(uMm)),
    );
    const directions = planks.map((_, i) => {
      const [from, to] = [at(edges, i), at(edges, i + 1)];
      return Math.atan2(to.b - from.b, to.a - from.a);
    });
    const around = [at(edges, 0).directionRad, ...directions, at(edges, -1).directionRad];
    const corners = edges.map((edge, i) => offsetPoint(edge, [at(around, i), at(around, i + 1)], inwardMm));
    return directions.map((directionRad, i) => ({
      from: at(corners, i),
      to: at(corners, i + 1),
      directionRad,
    }));
  });
}
