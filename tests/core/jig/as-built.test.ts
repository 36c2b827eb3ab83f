import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Design, designTray } from "../../../core/design.ts";
import { at } from "../../../core/foundation/index.ts";
import type { Project } from "../../../core/project/index.ts";
import { plainProject } from "../cutting/plain-project.ts";
import { box, section, straightProfile } from "./jig-trays.ts";

type Measured = NonNullable<Project["asBuilt"]>;

/** A sloping floor, 1200 by 400 on each hand, upright on four ribs; its upward face lies 10 mm and a skin over the line. */
function floor(asBuilt?: Measured): Design {
  const plain = plainProject();
  return designTray(
    plainProject({
      profiles: [
        straightProfile("p", [
          [0, 100],
          [1200, 160],
        ]),
      ],
      items: [section("s1", 1, box(0, 1200, 0, 400), "p")],
      jig: { ...plain.jig, across: { kind: "typed", atMm: [50, 400, 800, 1150] } },
      ...(asBuilt && { asBuilt }),
    }),
  );
}

const bare = floor();
const { checks } = bare.lie;
/** What would be measured where the whole stands off by a plane, and one rib by a step more. */
const measuredAs = (off: (x: number, y: number, ribId: string) => number): Measured =>
  checks.map(({ at: { x, y }, drawnMm, ribId }) => ({ x, y, heightMm: drawnMm + off(x, y, ribId) }));

describe("the table to check laid foam by", () => {
  it("has places over every rib, with the height of the foam's upper face over the baseboard", () => {
    expect([...new Set(checks.map(({ ribId }) => ribId))]).toEqual(bare.jig.ribs.map(({ id }) => id));
    const slope = 60 / 1200;
    const square = Math.hypot(1, slope);
    for (const { at: place, drawnMm } of checks) {
      const airMm = 100 + slope * place.x;
      // Foam and lower skin, 10.8 mm square to the line.
      expect(drawnMm + bare.jig.baseboard.levelZMm).toBeCloseTo(airMm + 10.8 * square, 6);
    }
  });
});

describe("laid foam as it was measured", () => {
  it("stands off nowhere where it is as drawn", () => {
    const { asBuilt } = floor(measuredAs(() => 0)).lie;
    expect(asBuilt?.shims).toEqual([]);
    for (const { offMm, leftMm } of asBuilt?.places ?? []) {
      expect(offMm).toBeCloseTo(0, 9);
      expect(leftMm).toBeCloseTo(0, 9);
    }
  });

  it("asks for no shim where the whole is lifted and tilted, by any plane", () => {
    const slopes = fc.double({ min: -0.01, max: 0.01, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: -20, max: 20, noNaN: true }), slopes, slopes, (lift, a, b) => {
        const { asBuilt } = floor(measuredAs((x, y) => lift + a * x + b * y)).lie;
        expect(asBuilt?.fit.liftMm).toBeCloseTo(lift, 6);
        expect(asBuilt?.fit.slopeX).toBeCloseTo(a, 9);
        expect(asBuilt?.fit.slopeY).toBeCloseTo(b, 9);
        expect(asBuilt?.shims).toEqual([]);
      }),
      { seed: 3, numRuns: 20 },
    );
  });

  it("is told its tilt both ways where the places that were measured lie slantwise", () => {
    const slope = 60 / 1200;
    const upMm = 100 + 10.8 * Math.hypot(1, slope) - bare.jig.baseboard.levelZMm;
    const spots = [
      [60, 20],
      [400, 150],
      [800, 290],
      [1140, 380],
      [1140, 90],
    ] as const;
    const measured = spots.map(([x, y]) => ({
      x,
      y,
      heightMm: upMm + slope * x + 2 + 0.004 * x - 0.006 * y,
    }));
    const { asBuilt } = floor(measured).lie;
    expect(asBuilt?.fit.slopeX).toBeCloseTo(0.004, 8);
    expect(asBuilt?.fit.slopeY).toBeCloseTo(-0.006, 8);
    expect(asBuilt?.fit.liftMm).toBeCloseTo(2, 6);
  });

  it("raises most the rib that stands low, by what the best plane leaves of it", () => {
    const { asBuilt } = floor(measuredAs((_x, _y, ribId) => (ribId === "A2" ? -3 : 0))).lie;
    const most = (asBuilt?.shims ?? []).toSorted((a, b) => b.byMm - a.byMm);
    expect(at(most, 0).ribId).toBe("A2");
    // The plane of least squares through 0, −3, 0, 0 at 50, 400, 800 and 1150, by the textbook's line.
    const xs = [50, 400, 800, 1150];
    const offs = [0, -3, 0, 0];
    const [x0, o0] = [600, -0.75];
    const slope =
      xs.reduce((sum, x, i) => sum + (x - x0) * (at(offs, i) - o0), 0) /
      xs.reduce((sum, x) => sum + (x - x0) ** 2, 0);
    expect(at(most, 0).byMm).toBeCloseTo(3 + o0 + slope * (400 - x0), 2);
  });

  it("tells of one place alone only how high it stands", () => {
    const [first] = measuredAs(() => 2);
    const { asBuilt } = floor(first ? [first] : []).lie;
    expect(asBuilt?.fit).toEqual({ liftMm: expect.closeTo(2, 9), slopeX: 0, slopeY: 0 });
    expect(asBuilt?.shims).toEqual([]);
  });

  it("names a height that cannot be one, and leaves out a place off the tray", () => {
    const design = floor([
      { x: 400, y: 100, heightMm: Number.NaN },
      { x: 9000, y: 100, heightMm: 50 },
    ]);
    expect(design.problems.map(({ place }) => place.setting)).toContain("asBuilt");
    expect(design.lie.asBuilt).toBeUndefined();
  });
});
