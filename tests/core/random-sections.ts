import fc from "fast-check";
import { at } from "../../core/foundation/index.ts";
import type { PlanNode, Project, Section, SideNode } from "../../core/project/index.ts";
import { planNode, section, sideNode, type TraySettings, tray } from "./trays.ts";

/** The outline's middle and least and largest reach from it; the profile reaches over all that heading can shear. */
const MIDDLE = { x: 500, y: 350 };
const REACH = { least: 110, most: 320 };
const PROFILE = { from: 0, to: 1000, heightMm: 300 };

export interface RandomSection {
  readonly profile: readonly SideNode[];
  readonly outline: readonly PlanNode[];
  readonly changes: Partial<Section>;
  readonly settings: TraySettings;
}

export const projectOf = ({ profile, outline, changes, settings }: RandomSection): Project =>
  tray({ p: profile }, [section(1, outline, changes)], { leastBendRatio: BENT_WHOLE, ...settings });

/** So tight bends are for checking, not for building: the foam of these sections takes them whole. */
const BENT_WHOLE = 1;

/** Evenly spread; random doubles would crowd about 0, and every section would be nearly flat. */
const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: 10_000 }).map((n) => min + ((max - min) * n) / 10_000);

/** Profiles of flats, tangent ramps and curves; with `corner` one place is left sharp. */
const anyProfile = (corner: boolean): fc.Arbitrary<readonly SideNode[]> =>
  fc
    .record({
      spacings: fc.array(between(0.6, 1.4), { minLength: 3, maxLength: 5 }),
      slopes: fc.array(between(-0.35, 0.35), { minLength: 5, maxLength: 5 }),
      curves: fc.array(fc.boolean(), { minLength: 5, maxLength: 5 }),
      radiusShares: fc.array(between(0.2, 0.45), { minLength: 6, maxLength: 6 }),
      sharpAt: fc.integer({ min: 1, max: 4 }),
    })
    .map(({ spacings, slopes, curves, radiusShares, sharpAt }) => {
      const total = spacings.reduce((sum, spacing) => sum + spacing, 0);
      const points: (readonly [number, number])[] = [[PROFILE.from, PROFILE.heightMm]];
      spacings.forEach((spacing, i) => {
        const [x, z] = points[i] ?? [0, 0];
        const run = (spacing / total) * (PROFILE.to - PROFILE.from);
        points.push([x + run, z + run * (slopes[i] ?? 0)]);
      });
      const sharp = Math.min(sharpAt, points.length - 2);
      const isCurve = (i: number) =>
        i >= 0 && i < spacings.length && curves[i] === true && !(corner && (i === sharp || i === sharp - 1));
      return points.map(([x, z], i): SideNode => {
        const isInner = i > 0 && i < points.length - 1;
        const next = isCurve(i) ? "curve" : "line";
        if (!isInner || (corner && i === sharp)) return sideNode(`p${i}`, x, z, { next });
        if (isCurve(i) || isCurve(i - 1)) return sideNode(`p${i}`, x, z, { next, meets: "smooth" });
        const [before, after] = [at(points, i - 1), at(points, i + 1)];
        const turn = Math.abs(
          Math.atan2(after[1] - z, after[0] - x) - Math.atan2(z - before[1], x - before[0]),
        );
        const room = Math.min(
          Math.hypot(after[0] - x, after[1] - z),
          Math.hypot(x - before[0], z - before[1]),
        );
        const radiusMm = Math.min(
          15_000,
          ((radiusShares[i] ?? 0.3) * room) / Math.tan(Math.max(turn, 1e-3) / 2),
        );
        return sideNode(`p${i}`, x, z, { radiusMm });
      });
    });

/** Outlines round their middle, of lines, curves and radii, concave as they come. */
const anyOutline: fc.Arbitrary<readonly PlanNode[]> = fc
  .record({
    reaches: fc.array(between(REACH.least, REACH.most), { minLength: 4, maxLength: 8 }),
    jitters: fc.array(between(-0.3, 0.3), { minLength: 8, maxLength: 8 }),
    curves: fc.array(fc.boolean(), { minLength: 8, maxLength: 8 }),
    rounded: fc.array(fc.boolean(), { minLength: 8, maxLength: 8 }),
    smooth: fc.array(fc.boolean(), { minLength: 8, maxLength: 8 }),
    turned: fc.boolean(),
  })
  .map(({ reaches, jitters, curves, rounded, smooth, turned }) => {
    const count = reaches.length;
    const points = reaches.map((reach, i): readonly [number, number] => {
      const angle = ((i + (jitters[i] ?? 0)) / count) * 2 * Math.PI;
      return [MIDDLE.x + reach * Math.cos(angle), MIDDLE.y + reach * Math.sin(angle)];
    });
    const isCurve = (i: number) => curves[(i + count) % count] === true;
    const nodes = points.map(([x, y], i): PlanNode => {
      const next = isCurve(i) ? "curve" : "line";
      const isBetweenLines = !isCurve(i) && !isCurve(i - 1);
      if (isBetweenLines && rounded[i]) return planNode(`n${i}`, x, y, { next, radiusMm: 15 });
      if (!isBetweenLines && smooth[i]) return planNode(`n${i}`, x, y, { next, meets: "smooth" });
      return planNode(`n${i}`, x, y, { next });
    });
    return turned ? drawnBackward(nodes) : nodes;
  });

/** The same outline drawn the other way round: each node leaves by the segment that it was reached by. */
export const drawnBackward = (nodes: readonly PlanNode[]): readonly PlanNode[] =>
  nodes
    .map((node, i) => ({ ...node, next: at(nodes, (i + nodes.length - 1) % nodes.length).next }))
    .toReversed();

const anySettings = fc.record({
  symmetry: fc.constantFrom("none" as const, "mirrored" as const),
  drawnFace: fc.constantFrom("air" as const, "neutral" as const),
  thicknessMm: fc.constantFrom(5, 10, 20),
});

const anyLean = fc.record({
  headingRad: between(-0.25, 0.25),
  tiltRad: between(-0.25, 0.25),
  pivotYMm: between(0, 500),
});

/** Smooth sections; most lean. Some cannot be drawn (an outline that meets itself): see `isDrawable`. */
export const anySection: fc.Arbitrary<RandomSection> = fc.record({
  profile: anyProfile(false),
  outline: anyOutline,
  changes: fc.oneof({ weight: 3, arbitrary: anyLean }, { weight: 1, arbitrary: fc.constant({}) }),
  settings: anySettings,
});

/** Sections that a sharp corner of the profile may divide. */
export const anyCorneredSection: fc.Arbitrary<RandomSection> = fc.record({
  profile: anyProfile(true),
  outline: anyOutline,
  changes: anyLean,
  settings: anySettings,
});
