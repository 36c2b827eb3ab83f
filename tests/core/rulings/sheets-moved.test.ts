import fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import {
  areaOfRuled,
  developRuled,
  lengthOnRuled,
  pairEdges,
  type RuledSurface,
  type SpaceEdge,
  twistProfile,
} from "../../../core/rulings/index.ts";
import { edgeOf, splitAt, type Triple } from "./edges-of.ts";
import { flatArea, flatLength, shapeDifference } from "./flat-figures.ts";
import { coneEdges, type EdgeFunctions, warpedEdges } from "./random-edges.ts";

// Many sheets a test: on a busy machine that takes a while.
vi.setConfig({ testTimeout: 60_000 });

const SEED = 20_417;
const RUNS = 12;
/** Flat patterns are the same within this: a fifth of a knife's line. */
const CONGRUENT_MM = 0.01;
/** Lengths, and areas of sheets without twist, between space and flat. */
const LENGTH_RELATIVE = 1e-6;
const DEVELOPABLE_RAD = Math.PI / 1800;
const DEPTH_MM = 6;

const FOAM = { thicknessMm: 10, leastRadiusMm: 600 };
const pair = (first: SpaceEdge, second: SpaceEdge): RuledSurface => pairEdges(first, second, FOAM);
const sheetOf = ({ first, second }: EdgeFunctions): RuledSurface => pair(edgeOf(first), edgeOf(second));

const backward = (f: (t: number) => Triple) => (t: number) => f(1 - t);
const mirror =
  (f: (t: number) => Triple) =>
  (t: number): Triple => {
    const [x, y, z] = f(t);
    return [x, -y, z];
  };

/** A turn about a slanting axis that leaves up mostly up, and a shift. */
const move =
  (f: (t: number) => Triple, yaw: number) =>
  (t: number): Triple => {
    const [x, y, z] = f(t);
    const [cos, sin] = [Math.cos(yaw), Math.sin(yaw)];
    const [px, py] = [cos * x - sin * y, sin * x + cos * y];
    const [c, s] = [Math.cos(0.3), Math.sin(0.3)];
    return [px + 310, c * py - s * z - 170, s * py + c * z + 45];
  };

/** Flat points of both edges at even shares of the edges' lengths, first edge forward, then the second. */
function flatMarks(sheet: RuledSurface, depthMm = 0): readonly { readonly u: number; readonly v: number }[] {
  const flat = developRuled(sheet, depthMm);
  return ([0, 1] as const).flatMap((t) =>
    Array.from({ length: 11 }, (_, k) => flat.flatAt({ sMm: sOfShare(sheet, t, k / 10), t })),
  );
}

/** Where the sweep has passed a share of one edge. */
function sOfShare(sheet: RuledSurface, t: 0 | 1, share: number): number {
  const edge = t === 0 ? sheet.first : sheet.second;
  if (share === 0 || share === 1) return share * sheet.lengthSMm;
  const target = share * edge.lengthMm;
  const lengthAt = (sMm: number) => {
    const k = Math.max(0, sheet.rulings.findIndex((ruling) => ruling.sMm >= sMm) - 1);
    const [from, to] = [sheet.rulings[k], sheet.rulings[k + 1]];
    if (!from || !to) return 0;
    const span = to.sMm - from.sMm;
    const x = (sMm - from.sMm) / span;
    const rise = to.firstMm - from.firstMm;
    const [m0, m1] = [from.slopeAfter * span, to.slopeBefore * span];
    const first = from.firstMm + x * (m0 + x * (3 * rise - 2 * m0 - m1 + x * (m0 + m1 - 2 * rise)));
    return t === 0 ? first : 2 * sMm - first;
  };
  let [low, high] = [0, sheet.lengthSMm];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (lengthAt(middle) < target) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

const maxTwist = (sheet: RuledSurface): number =>
  Math.max(...twistProfile(sheet, 10).map(({ twistRad }) => Math.abs(twistRad)));

const both = fc.oneof(warpedEdges, coneEdges);
const check = (property: (edges: EdgeFunctions) => void, edges = both) =>
  fc.assert(fc.property(edges, property), { seed: SEED, numRuns: RUNS });

describe("the flat pattern of a ruled sheet", () => {
  it("stays the same when the sheet is moved and turned", () => {
    check((edges) => {
      const here = flatMarks(sheetOf(edges));
      for (const yaw of [0.7, 3.6]) {
        const there = sheetOf({ first: move(edges.first, yaw), second: move(edges.second, yaw) });
        expect(shapeDifference(here, flatMarks(there))).toBeLessThan(CONGRUENT_MM);
      }
    });
  });

  it("is the mirror image when the sheet is mirrored, not the same", () => {
    check((edges) => {
      const [sheet, image] = [
        sheetOf(edges),
        sheetOf({ first: mirror(edges.first), second: mirror(edges.second) }),
      ];
      expect(shapeDifference(flatMarks(sheet), flatMarks(image))).toBeLessThan(CONGRUENT_MM);
      const [area, imageArea] = [sheet, image].map((one) => flatArea(one, developRuled(one, 0)));
      expect(Math.sign(area ?? 0)).toBe(-Math.sign(imageArea ?? 0));
    });
  });

  it("lies in the same place whichever edge comes first and whichever way both run", () => {
    check((edges) => {
      const here = flatMarks(sheetOf(edges), DEPTH_MM);
      const [first, second] = [edgeOf(edges.first), edgeOf(edges.second)];
      const swapped = flatMarks(pair(second, first), DEPTH_MM);
      const reversed = flatMarks(
        pair(edgeOf(backward(edges.first)), edgeOf(backward(edges.second))),
        DEPTH_MM,
      );
      const oneReversed = flatMarks(pair(first, edgeOf(backward(edges.second))), DEPTH_MM);
      here.forEach(({ u, v }, k) => {
        const half = here.length / 2;
        const inHalf = k % half;
        const others = [
          swapped[(k + half) % here.length],
          reversed[k - inHalf + (half - 1 - inHalf)],
          oneReversed[k],
        ];
        for (const other of others)
          expect(Math.hypot((other?.u ?? 0) - u, (other?.v ?? 0) - v)).toBeLessThan(CONGRUENT_MM);
      });
    });
  });

  it("does not depend on into how many pieces an edge is drawn", () => {
    check((edges) => {
      const here = flatMarks(sheetOf(edges));
      const split = pair(splitAt(edges.first, [0.13, 0.5, 0.77]), splitAt(edges.second, [0.31, 0.64]));
      expect(shapeDifference(here, flatMarks(split))).toBeLessThan(CONGRUENT_MM);
    });
  });

  it("does not depend on how many rulings carry it", () => {
    check((edges) => {
      const [few, many] = [72, 190].map((nodes) =>
        pairEdges(edgeOf(edges.first), edgeOf(edges.second), { ...FOAM, nodes }),
      );
      if (few && many) expect(shapeDifference(flatMarks(few), flatMarks(many))).toBeLessThan(CONGRUENT_MM);
    }, coneEdges);
  });
});

describe("a ruled sheet laid flat", () => {
  it("keeps the lengths of both edges, at the drawn face and at the neutral fibre", () => {
    check((edges) => {
      const sheet = sheetOf(edges);
      for (const depthMm of [0, DEPTH_MM])
        for (const t of [0, 1]) {
          const flat = developRuled(sheet, depthMm);
          const space = lengthOnRuled(sheet, depthMm, t);
          expect(Math.abs(flatLength(sheet, flat, t) / space - 1)).toBeLessThan(LENGTH_RELATIVE);
        }
      expect(Math.abs(lengthOnRuled(sheet, 0, 0) / sheet.first.lengthMm - 1)).toBeLessThan(LENGTH_RELATIVE);
      expect(Math.abs(lengthOnRuled(sheet, 0, 1) / sheet.second.lengthMm - 1)).toBeLessThan(LENGTH_RELATIVE);
    });
  });

  it("keeps its area where it is not twisted, and loses no more than a tenth of the twist's square where it is", () => {
    check((edges) => {
      const sheet = sheetOf(edges);
      const [flat, space] = [Math.abs(flatArea(sheet, developRuled(sheet, 0))), areaOfRuled(sheet, 0)];
      const twist = maxTwist(sheet);
      const allowed = twist < DEVELOPABLE_RAD ? LENGTH_RELATIVE : (twist * twist) / 10;
      expect(Math.abs(flat / space - 1)).toBeLessThan(allowed);
    });
  });

  it("has no twist between edges of one cone", () => {
    check((edges) => {
      expect(maxTwist(sheetOf(edges))).toBeLessThan(1e-6);
    }, coneEdges);
  });
});
