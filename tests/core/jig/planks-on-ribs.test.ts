import { describe, expect, it } from "vitest";
import { designTray } from "../../../core/design.ts";
import { assert } from "../../../core/foundation/index.ts";
import { plainProject } from "../cutting/plain-project.ts";
import { box, section } from "./jig-trays.ts";

const THICK = 20;
const RADIUS = 300;
/** The bend turns by this, between two straights. */
const TURN = Math.PI / 5;

/** A floor that turns up by a bend too tight for anything but planks, upright, on ribs everywhere along the bend. */
function planked(sagittaMm: number, attitude: "upright" | "inverted") {
  const plain = plainProject();
  const corner = 400;
  const tangentMm = RADIUS * Math.tan(TURN / 2);
  const ribs = Array.from({ length: 9 }, (_, i) => corner - tangentMm + 6 + i * 20);
  const design = designTray(
    plainProject({
      drawnFace: "neutral",
      symmetry: "none",
      skins: { lowerMm: 0, upperMm: 0 },
      bending: { ...plain.bending, sagittaMm },
      profiles: [
        {
          id: "p",
          name: "Bend",
          nodes: [
            { kind: "node", id: "p1", x: 0, z: 100, next: "line" },
            { kind: "node", id: "p2", x: corner, z: 100, radiusMm: RADIUS, next: "line" },
            {
              kind: "node",
              id: "p3",
              x: corner + 400 * Math.cos(TURN),
              z: 100 + 400 * Math.sin(TURN),
              next: "line",
            },
          ],
        },
      ],
      items: [
        {
          ...section("s1", 1, box(0, corner + 400 * Math.cos(TURN), 0, 300), "p"),
          bends: [{ atMm: corner, method: "planks" }],
          core: { foamId: "xps", thicknessMm: THICK },
        },
      ],
      jig: { ...plain.jig, attitude, across: { kind: "typed", atMm: ribs }, lie: { pushN: 0 } },
    }),
  );
  const planks = design.parts[0]?.zones.flatMap(({ bend }) => bend?.planks ?? []) ?? [];
  assert(planks.length > 1, "it is planked");
  return { design, count: planks.length, centre: { x: corner - tangentMm, z: 100 + RADIUS } };
}

describe.each(["upright", "inverted"] as const)("planks on an %s jig", (attitude) => {
  it.each([0.4, 2])("carry on ribs that are as flat as they are: %s mm off the curve", (sagittaMm) => {
    const { design, count, centre } = planked(sagittaMm, attitude);
    const each = TURN / count;
    // Below the middle, away from the centre of the bend, on an upright jig; above it on an inverted one.
    const away = attitude === "upright" ? THICK / 2 : -THICK / 2;
    const reach = RADIUS * Math.cos(each / 2) + away;
    const { levelZMm } = design.jig.baseboard;
    let seen = 0;
    for (const { atMm, heights } of design.jig.ribs) {
      // Every plank's plane stands square to the middle of its turn; the foam is the innermost of all, seen from outside.
      const planes = Array.from({ length: count }, (_, i) => (i + 0.5) * each);
      const over = planes.map((turn) => {
        const z = centre.z + ((atMm - centre.x) * Math.sin(turn) - reach) / Math.cos(turn);
        return { turn, z };
      });
      const lowest = Math.max(...over.map(({ z }) => z));
      // Between the mitres at both ends of the bend.
      const corner = reach / Math.cos(each / 2);
      const from = centre.x + 0.5;
      const to = centre.x + corner * Math.sin(TURN - each / 2) * Math.cos(0) - 3;
      if (atMm < from || atMm > to) continue;
      for (const { stationFaceMm } of heights) {
        seen += 1;
        const z = attitude === "upright" ? stationFaceMm + levelZMm : levelZMm - stationFaceMm;
        expect(z).toBeCloseTo(lowest, 2);
      }
    }
    expect(seen).toBeGreaterThan(10);
  });
});
