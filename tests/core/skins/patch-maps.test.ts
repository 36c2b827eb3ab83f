import { describe, expect, it } from "vitest";
import { designTray } from "../../../core/design.ts";
import type { FlatPoint, PlanPoint } from "../../../core/foundation/index.ts";
import { besideLine, placeBeside } from "../../../core/skins/across-joint.ts";
import { patchMaps } from "../../../core/skins/index.ts";
import { readExample } from "../../read-example.ts";

const demo = readExample("hill-climb-floor");
const bare = { ...demo, laminate: { edgeFinish: "insert" as const } };
const design = designTray(bare);
const maps = patchMaps(design, design.skins);
const patches = design.skins.faces.flatMap(({ fields }) => fields.flatMap((field) => field.patches));

/** The area of loops by the shoelace formula, holes taken off by their sense. */
const shoelace = (loops: readonly (readonly PlanPoint[])[]): number =>
  Math.abs(
    loops.reduce(
      (sum, loop) =>
        sum +
        loop.reduce((own, a, i) => {
          const b = loop[(i + 1) % loop.length] ?? a;
          return own + (a.x * b.y - b.x * a.y) / 2;
        }, 0),
      0,
    ),
  );

const isInside = ({ x, y }: PlanPoint, loops: readonly (readonly PlanPoint[])[]): boolean => {
  let crossings = 0;
  for (const loop of loops)
    for (const [i, b] of loop.entries()) {
      const a = loop[(i + loop.length - 1) % loop.length] ?? b;
      if (a.y > y !== b.y > y && a.x + ((y - a.y) * (b.x - a.x)) / (b.y - a.y) > x) crossings += 1;
    }
  return crossings % 2 === 1;
};

describe("places beside a line", () => {
  const line: readonly FlatPoint[] = [
    { u: 0, v: 0 },
    { u: 100, v: 0 },
    { u: 200, v: 50 },
  ];

  it("are told by their length along it and their distance to the left, and found again so", () => {
    expect(besideLine(line, { u: 40, v: 30 })).toEqual({ alongMm: 40, leftMm: 30, awayMm: 30 });
    expect(besideLine(line, { u: -20, v: -7 })).toMatchObject({ alongMm: -20, leftMm: -7 });
    const total = 100 + Math.hypot(100, 50);
    for (const place of [
      { u: 40, v: 30 },
      { u: -20, v: -7 },
      { u: 150, v: -20 },
      { u: 230, v: 60 },
    ]) {
      const { alongMm, leftMm } = besideLine(line, place);
      const again = placeBeside(line, alongMm / total, leftMm);
      expect(Math.hypot(again.u - place.u, again.v - place.v)).toBeLessThan(1e-9);
    }
  });
});

describe("the maps of the demo's patches", () => {
  it("show every patch once where it lies: on its face in plan, on fences laid flat", () => {
    const plans = maps.filter(({ frame }) => frame === "plan");
    const onPlans = plans.flatMap(({ plies }) =>
      plies.flatMap((ply) => ply.patches.map(({ patchId }) => patchId)),
    );
    const onFences = maps
      .filter(({ face }) => face === "fence sides")
      .flatMap(({ plies }) => plies.flatMap((ply) => ply.patches.map(({ patchId }) => patchId)));
    expect([...onPlans, ...onFences].sort()).toEqual(patches.map(({ id }) => id).sort());
  });

  it("cover every place of the tray in plan in every ply, joints crossed: a grid of places, the outline as drawn", () => {
    // The centre floor and the outer floor as the document draws them, at y > 0; the upper face has no slot for fences.
    const upper = maps.find(({ id }) => id === "upper face");
    for (const ply of upper?.plies ?? []) {
      let [inCloth, all] = [0, 0];
      for (let x = 60; x < 1340; x += 37)
        for (let y = -560; y < 560; y += 23) {
          // The outer edge at these stations lies at y 560 or farther out from x 400 on.
          if (x < 420 && Math.abs(y) > 400) continue;
          all += 1;
          if (ply.patches.some(({ loopsMm }) => isInside({ x, y }, loopsMm))) inCloth += 1;
        }
      expect(all).toBeGreaterThan(1000);
      expect(inCloth / all).toBeGreaterThan(0.998);
    }
  });

  it("where the floor is flat a patch has its own area in plan, and lies under its part's outline", () => {
    const upper = maps.find(({ id }) => id === "upper face");
    const [first] = upper?.plies ?? [];
    const seen = first?.patches.find(({ patchId }) => patchId === "S1-U.1");
    const area = patches.find(({ id }) => id === "S1-U.1")?.areaMm2 ?? 0;
    // Flat from x 0 to 1000 and rising gently behind: plan and cloth differ by less than a per cent.
    expect(Math.abs(shoelace(seen?.loopsMm ?? []) / area - 1)).toBeLessThan(0.01);
    const xs = seen?.loopsMm.flat().map(({ x }) => x) ?? [];
    expect(Math.min(...xs)).toBeGreaterThan(20);
    expect(Math.max(...xs)).toBeLessThan(1401);
  });

  it("laps along a joint have its length times the overlap", () => {
    const lower = maps.find(({ id }) => id === "lower face");
    const [first] = lower?.plies ?? [];
    const lap = first?.laps.find(
      ({ patchIds }) => patchIds.includes("T1R-L.1") && patchIds.includes("S1-L.1"),
    );
    // The step joins the centre floor over 1400 mm; its cloth laps onto it by 50 mm.
    expect(Math.abs((lap?.areaMm2 ?? 0) / (1400 * 50) - 1)).toBeLessThan(0.03);
    const sessionOf = (id: string) => first?.patches.find(({ patchId }) => patchId === id)?.session;
    expect(lap?.isOnCured).toBe(sessionOf("T1R-L.1") !== sessionOf("S1-L.1"));
  });

  it("are the same for both hands, seen over the centre line", () => {
    const lower = maps.find(({ id }) => id === "lower face");
    for (const { patches: seen } of lower?.plies ?? []) {
      const areaOf = (id: string) => shoelace(seen.find(({ patchId }) => patchId === id)?.loopsMm ?? []);
      const right = seen.map(({ patchId }) => patchId).filter((id) => id.includes("R-"));
      expect(right.length).toBeGreaterThan(3);
      for (const id of right)
        expect(Math.abs(areaOf(id) / areaOf(id.replace("R-", "L-")) - 1)).toBeLessThan(0.01);
      const xOf = (id: string) =>
        seen
          .find(({ patchId }) => patchId === id)
          ?.loopsMm.flat()
          .map(({ y }) => y) ?? [];
      // From below the right half of the car lies below the centre line.
      expect(Math.max(...xOf("S2R-L.1b"), -1e9)).toBeLessThanOrEqual(0);
    }
  });

  it("what leans steeply is drawn laid flat as well", () => {
    expect(
      maps.filter(({ frame, face }) => frame === "flat" && face !== "fence sides").map(({ id }) => id),
    ).toContain("S3-L");
  });
});
