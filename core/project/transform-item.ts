import { planLineOf, withPlanLine } from "./edit-lines.ts";
import { mapKept } from "./map-kept.ts";
import { type Motion, moveInPlan, stretchOf } from "./motion.ts";
import type { Item, Plate, Wing } from "./schema.ts";
import { lowerEdgeOf } from "./transform-lower-edge.ts";
import { withAngles } from "./turned-angles.ts";

export function transformItem(item: Item, old: Item, motion: Motion): Item {
  const line = planLineOf(item);
  const elements = mapKept(line.elements, (element) => withAngles(element, motion));
  const angled = elements === line.elements ? item : withPlanLine(item, { ...line, elements });
  switch (angled.kind) {
    case "section":
      return {
        ...angled,
        ...(angled.pivotYMm === undefined ? {} : { pivotYMm: moveInPlan([0, angled.pivotYMm], motion)[1] }),
        ...(motion.kind === "mirror" ? { headingRad: 0 - angled.headingRad } : {}),
        ...(motion.kind === "mirror" && motion.across === "lengthwise"
          ? { tiltRad: 0 - angled.tiltRad }
          : {}),
      };
    case "fence":
      return {
        ...angled,
        lowerEdge: lowerEdgeOf(angled, old.kind === "fence" ? old : angled, motion),
        ...(angled.bends && {
          bends: angled.bends.map((bend) => ({ ...bend, atMm: bend.atMm * stretchOf(motion) })),
        }),
      };
    case "plate":
      return transformPlate(angled, motion);
    case "transition":
      return motion.kind === "scale" ? withScaledRadii(angled, stretchOf(motion)) : angled;
  }
}

function transformPlate(plate: Plate, motion: Motion): Plate {
  const factor = stretchOf(motion);
  const byMm = motion.kind === "move" ? motion.byMm.z : 0;
  const isMirrored = motion.kind === "mirror";
  if (factor === 1 && byMm === 0 && !isMirrored) return plate;
  const wings = plate.wings.map((wing) => {
    const sized: Wing = {
      ...wing,
      lengthMm: wing.lengthMm * factor,
      startInsetMm: wing.startInsetMm * factor,
      endInsetMm: wing.endInsetMm * factor,
    };
    // An outline runs counter-clockwise however it was drawn: a mirrored edge runs the other way.
    return isMirrored
      ? {
          ...sized,
          startInsetMm: sized.endInsetMm,
          endInsetMm: sized.startInsetMm,
          startTaperRad: sized.endTaperRad,
          endTaperRad: sized.startTaperRad,
        }
      : sized;
  });
  return { ...plate, zMm: plate.zMm + byMm, wings };
}

function withScaledRadii(item: Extract<Item, { kind: "transition" }>, factor: number): Item {
  const scaled = (edge: typeof item.first): typeof item.first =>
    edge.kind === "free"
      ? {
          ...edge,
          nodes: edge.nodes.map((node) =>
            node.radiusMm === undefined ? node : { ...node, radiusMm: node.radiusMm * factor },
          ),
        }
      : edge;
  return { ...item, first: scaled(item.first), second: scaled(item.second) };
}
