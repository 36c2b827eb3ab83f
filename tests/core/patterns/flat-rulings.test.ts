import { describe, expect, it } from "vitest";
import { at, distanceFlat } from "../../../core/foundation/index.ts";
import { newOpening } from "../../../core/project/index.ts";
import {
  freeEdge,
  layTray,
  partOf,
  planNode,
  rectangle,
  section,
  straightProfile,
  stretchOf,
  transition,
  tray,
} from "../trays.ts";

const LEVEL = { p: straightProfile(-50, 60, 1850, 60) };
const floor = section(1, rectangle(0, 1800, 0, 300));
const strip = transition(1, stretchOf("s1", "outer", "front"), freeEdge([0, 500, 60], [1800, 500, 60]));
const hole = newOpening({
  id: "o1",
  number: 1,
  name: "Hole",
  closed: true,
  elements: [
    planNode("a", 800, 350),
    planNode("b", 1000, 350),
    planNode("c", 1000, 450),
    planNode("d", 800, 450),
  ],
});
const settings = { symmetry: "mirrored", thicknessMm: 10 } as const;

describe("the rulings on a transition's flat", () => {
  it("run from edge to edge where nothing is cut out of it", () => {
    const part = partOf(layTray(tray(LEVEL, [floor, strip], settings)), "T1R");
    for (const { from, to } of part.rulings) expect(distanceFlat(from, to)).toBeCloseTo(200, 6);
  });

  it("stop at an opening and go on behind it", () => {
    const project = { ...tray(LEVEL, [floor, strip], settings), openings: [hole] };
    const part = partOf(layTray(project), "T1R");
    const over = part.rulings.filter(({ fromSpace }) => fromSpace.x > 810 && fromSpace.x < 990);
    expect(over.length).toBeGreaterThan(3);
    for (const { from, to } of over) expect(distanceFlat(from, to)).toBeCloseTo(50, 3);
    const beside = part.rulings.filter(({ fromSpace }) => fromSpace.x > 1050);
    for (const { from, to } of beside) expect(distanceFlat(from, to)).toBeCloseTo(200, 3);
    expect(at(over, 0).fromSpace.z).toBeCloseTo(60, 6);
  });
});
