import { describe, expect, it } from "vitest";
import { at, distanceSpace } from "../../../core/foundation/index.ts";
import type { TransitionEdge } from "../../../core/project/index.ts";
import { type EaseLimits, easeTransition } from "../../../core/surfaces/index.ts";
import { freeEdge, rectangle, section, sideNode, stretchOf, transition, tray } from "../trays.ts";

const LEVEL = { p: [sideNode("a", -50, 60), sideNode("b", 1850, 60)] };
const floor = section(1, rectangle(0, 1800, 0, 300));

/** A free edge of curves over even stations; heights in mm. */
const lifted = (...heights: readonly number[]): TransitionEdge => ({
  kind: "free",
  nodes: heights.map((z, i) => ({
    id: `e${i + 1}`,
    x: (1800 * i) / (heights.length - 1),
    y: 480,
    z,
    next: "curve",
  })),
});

const NODES_OF = (edge: TransitionEdge) => (edge.kind === "free" ? edge.nodes : []);

const ease = (edge: TransitionEdge, limits: EaseLimits) =>
  easeTransition(
    tray(LEVEL, [floor, transition(1, stretchOf("s1", "outer", "front"), edge)], {
      symmetry: "mirrored",
      thicknessMm: 10,
    }),
    "t1",
    limits,
  );

describe("easing a free edge", () => {
  const bumpy = lifted(80, 92, 78, 95, 84);

  it("takes twist out, and moves no node farther than the band", () => {
    const eased = ease(bumpy, { bandMm: 4, movesPlan: false });
    expect(eased?.after.maxTwistRad ?? 1).toBeLessThan(eased?.before.maxTwistRad ?? 0);
    eased?.nodes.forEach((node, i) => {
      expect(distanceSpace(node, at(NODES_OF(bumpy), i))).toBeLessThanOrEqual(4.01);
      expect([node.x, node.y]).toEqual([at(NODES_OF(bumpy), i).x, at(NODES_OF(bumpy), i).y]);
    });
  });

  it("with room enough ends where a flat sheet does: all twist gone", () => {
    const eased = ease(bumpy, { bandMm: 40, movesPlan: false });
    expect(eased?.before.maxTwistRad ?? 0).toBeGreaterThan(0.01);
    expect(eased?.after.maxTwistRad ?? 1).toBeLessThan(0.0018);
    expect(eased?.after.verdict).toBe("developable");
  });

  it("that lies in one plane with the other edge changes nothing", () => {
    const edge = freeEdge([0, 480, 60], [1800, 480, 60]);
    const eased = ease(edge, { bandMm: 10, movesPlan: true });
    expect(eased?.nodes).toEqual(NODES_OF(edge));
    expect(eased?.movedMm).toBe(0);
  });

  it("may move it in plan too, and then costs the foam no more than without", () => {
    const inHeight = ease(bumpy, { bandMm: 4, movesPlan: false });
    const inPlan = ease(bumpy, { bandMm: 4, movesPlan: true });
    expect(inPlan?.after.pressStrain ?? 1).toBeLessThanOrEqual((inHeight?.after.pressStrain ?? 0) + 1e-12);
  });

  it("is the same every time", () => {
    expect(ease(bumpy, { bandMm: 4, movesPlan: false })).toEqual(
      ease(bumpy, { bandMm: 4, movesPlan: false }),
    );
  });

  it("is not to be had without a free edge", () => {
    expect(ease(stretchOf("s1", "front", "inner"), { bandMm: 4, movesPlan: false })).toBeUndefined();
  });
});
