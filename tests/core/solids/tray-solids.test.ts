import { describe, expect, it } from "vitest";
import { type Design, designTray } from "../../../core/design.ts";
import { at } from "../../../core/foundation/index.ts";
import { bendSolid, type Solid, traySolids } from "../../../core/solids/index.ts";
import { facePointAt } from "../../../core/surfaces/index.ts";
import { readExample } from "../../read-example.ts";
import { circleNodes, opening, withOpenings } from "../openings.ts";
import { METAL, plateOf, rectangle as plateRectangle, projectOf, wing } from "../plates/plates.ts";
import {
  arcProfile,
  fence,
  freeEdge,
  planNode,
  rectangle,
  relativeMiss,
  section,
  sideNode,
  stretchOf,
  transition,
  tray,
} from "../trays.ts";
import { middleAreaMm2, openSides, outlineLengthsMm, trianglesOf, volumeMm3 } from "./measure-solids.ts";

/** Chords and bends in steps: what a picture may lose of an area, and of a volume. */
const AREA_RELATIVE = 0.002;
const VOLUME_RELATIVE = 0.01;
/** A bend in steps of two degrees is shorter than its arc by 5e-5; a half-bent sheet may not change by more than that twice. */
const STRETCH_RELATIVE = 2e-4;
/** A section's faces are exact but for single precision. */
const OFF_SECTION_MM = 2e-3;
/**
 * A bevelled edge of a transition is carried into the tangent plane of its ruling: by 6 mm, at the radius of 20 mm that
 * this one has at a fan's point, 6² / (2 · 20) = 0.9 mm off the face; elsewhere hardly at all.
 */
const OFF_TRANSITION_MM = 1;
/** Positions are kept in single precision. */
const SINGLE_MM = 2e-3;
/** The most triangles of a tray that a slow device should draw. */
const MOST_TRIANGLES = 60_000;

/** Two ramps side by side, 180 mm apart, with the transition between them; a wheel opening, a fence, a plate. */
function wholeTray(): Design {
  const floor = [
    sideNode("a", 0, 60),
    sideNode("b", 900, 60, { meets: "corner", tangentOutRad: 0, next: "curve" }),
    sideNode("c", 1800, 120),
  ];
  const ramp = [
    sideNode("a", 0, 100),
    sideNode("b", 700, 100, { meets: "corner", tangentOutRad: 0, next: "curve" }),
    sideNode("c", 1800, 230),
  ];
  const project = tray(
    { floor, ramp },
    [
      section(1, rectangle(0, 1800, 0, 280), { profileId: "floor" }),
      section(2, rectangle(0, 1800, 460, 720), { profileId: "ramp" }),
      fence(1, [
        planNode("x", 560, 590, { next: "curve" }),
        planNode("y", 1000, 560, { next: "curve" }),
        planNode("z", 1700, 600),
      ]),
    ],
    { symmetry: "mirrored" },
  );
  const joined = {
    ...project,
    items: [
      ...project.items,
      transition(1, stretchOf("s1", "outer", "front"), stretchOf("s2", "inner", "rear")),
      plateOf(plateRectangle(300, 800, 0, 180), [wing("r"), wing("f", { angleRad: -0.8 })], { zMm: 57 }),
    ],
    materials: { ...project.materials, metals: [METAL] },
  };
  return designTray(withOpenings(joined, opening(1, circleNodes(400, 590, 70))));
}

const TRAYS: readonly (readonly [string, () => Design])[] = [
  ["the hill-climb floor", () => designTray(readExample("hill-climb-floor"))],
  ["the practice piece", () => designTray(readExample("practice-piece"))],
  ["a tray with a transition, an opening and a plate", wholeTray],
];

const solidOf = (solids: readonly Solid[], id: string): Solid => {
  const solid = solids.find((candidate) => candidate.id === id);
  if (!solid) throw new Error(`no solid ${id} among ${solids.map((one) => one.id).join(", ")}`);
  return solid;
};

/** A flat with closing slots is that of their webs, half a slot's depth outside the middle: so much larger than the middle. */
function slotAreaMm2({ zones, flatAreaMm2, thicknessMm, loops }: Design["parts"][number]): number {
  const us = loops.flatMap(({ edges }) => edges.flatMap(({ points }) => points.map(({ u }) => u)));
  const widthMm = flatAreaMm2 / (Math.max(...us) - Math.min(...us));
  return zones.reduce((sum, { bend }) => {
    const depthMm = bend?.slots ? thicknessMm - bend.slots.webMm : 0;
    return sum + (depthMm / 2) * (bend?.turnRad ?? 0) * widthMm;
  }, 0);
}

describe.each(TRAYS)("solids of %s", (_, make) => {
  const design = make();
  const solids = traySolids(design);

  it("has one for every part and every plate, few enough to be drawn", () => {
    const ids = [...design.parts, ...design.plates.flatMap(({ parts }) => parts)].map(({ id }) => id);
    expect([...new Set(solids.map(({ partId }) => partId))].sort()).toEqual([...ids].sort());
    expect(new Set(solids.map(({ id }) => id)).size).toBe(solids.length);
    const triangles = solids.reduce((sum, solid) => sum + solid.triangles.length / 3, 0);
    expect(triangles).toBeLessThan(MOST_TRIANGLES);
  });

  it("is closed, and every triangle looks outward", () => {
    for (const solid of solids) {
      expect(openSides(solid), solid.id).toBe(0);
      expect(volumeMm3(solid), solid.id).toBeGreaterThan(0);
    }
  });

  it("has the area of the flat part at mid-thickness, and that area times the thickness as volume", () => {
    for (const part of design.parts) {
      const solid = solidOf(solids, part.id);
      const middleMm2 = part.flatAreaMm2 - slotAreaMm2(part);
      expect(relativeMiss(middleAreaMm2(solid), middleMm2), part.id).toBeLessThan(AREA_RELATIVE);
      const volume = middleMm2 * part.thicknessMm;
      expect(relativeMiss(volumeMm3(solid), volume), part.id).toBeLessThan(VOLUME_RELATIVE);
    }
  });

  it("keeps its area and the lengths of its drawn edges when it is half bent or laid flat", () => {
    for (const solid of solids) {
      if (!solid.bend || solid.kind === "plate") continue;
      const wholeArea = middleAreaMm2(solid);
      const lengths = outlineLengthsMm(solid, solid.positions).reduce((a, b) => a + b, 0);
      for (const share of [0, 0.25, 0.5, 0.75]) {
        const bent = bendSolid(solid, share);
        expect(relativeMiss(middleAreaMm2(solid, bent), wholeArea), solid.id).toBeLessThan(AREA_RELATIVE);
        const now = outlineLengthsMm(solid, bent).reduce((a, b) => a + b, 0);
        expect(relativeMiss(now, lengths), solid.id).toBeLessThan(AREA_RELATIVE);
      }
    }
  });

  it("lies in one plane when it is laid flat, both faces its thickness apart", () => {
    for (const part of design.parts) {
      const solid = solidOf(solids, part.id);
      const volume = volumeMm3(solid, bendSolid(solid, 0));
      const expected = part.flatAreaMm2 * part.thicknessMm;
      expect(relativeMiss(volume, expected), part.id).toBeLessThan(VOLUME_RELATIVE);
      expect(thicknessOverAllMm(solid, bendSolid(solid, 0)), part.id).toBeLessThan(part.thicknessMm + 0.01);
    }
  });

  it("shows the left hand as the image of the right", () => {
    for (const right of solids) {
      if (!right.partId.endsWith("R")) continue;
      const left = solidOf(solids, right.id.replace(/R(\/|$)/, "L$1"));
      expect(left.positions.length).toBe(right.positions.length);
      for (const share of [1, 0.5, 0]) {
        const [a, b] = [bendSolid(right, share), bendSolid(left, share)];
        const worst = a.reduce(
          (most, value, i) => Math.max(most, Math.abs((i % 3 === 1 ? -value : value) - (b[i] ?? 0))),
          0,
        );
        expect(worst, right.id).toBeLessThan(SINGLE_MM);
      }
    }
  });

  it("stands where its faces are: at the height of the foam's face over the plan", () => {
    for (const sheet of design.sheets) {
      if (sheet.kind === "fence") continue;
      const solid = solids.find(({ partId, isImage }) => partId.startsWith(sheet.id) && !isImage);
      if (!solid) throw new Error(`no solid of ${sheet.id}`);
      let [compared, worstMm] = [0, 0];
      spotsOf(solid.positions).forEach(([x = 0, y = 0, z = 0], vertex) => {
        const depthMm = vertex % 2 === 0 ? sheet.depths.coreLowerMm : sheet.depths.coreUpperMm;
        const face = facePointAt(sheet, depthMm, { x, y });
        if (!face) return;
        compared += 1;
        worstMm = Math.max(worstMm, Math.abs(face.z - z));
      });
      expect(compared, sheet.id).toBeGreaterThan(3);
      expect(worstMm, sheet.id).toBeLessThan(sheet.kind === "section" ? OFF_SECTION_MM : OFF_TRANSITION_MM);
    }
  });

  it("can be sent from one thread to another", () => {
    expect(structuredClone(solids)).toEqual(solids);
  });
});

/** How far apart two parallel planes are that hold a body which is thinner than it is wide: by its largest triangle. */
function thicknessOverAllMm(solid: Solid, positions: Float32Array): number {
  const spot = (index: number) => [0, 1, 2].map((axis) => positions[3 * index + axis] ?? Number.NaN);
  let best: { readonly size: number; readonly normal: readonly number[] } | undefined;
  for (const triangle of trianglesOf(solid)) {
    const [a = [], b = [], c = []] = triangle.map(spot);
    const [ux = 0, uy = 0, uz = 0] = b.map((value, i) => value - (a[i] ?? 0));
    const [vx = 0, vy = 0, vz = 0] = c.map((value, i) => value - (a[i] ?? 0));
    const normal = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
    const size = Math.hypot(...normal);
    if (!best || size > best.size) best = { size, normal: normal.map((value) => value / size) };
  }
  const heights = Array.from({ length: positions.length / 3 }, (_, i) =>
    spot(i).reduce((sum, value, axis) => sum + value * (best?.normal[axis] ?? 0), 0),
  );
  return Math.max(...heights) - Math.min(...heights);
}

describe("a transition that twist divides", () => {
  it("has a solid for every strip and hand, which together have its area", () => {
    const project = tray({}, [], { symmetry: "mirrored", thicknessMm: 5 });
    const design = designTray({
      ...project,
      items: [
        transition(1, freeEdge([0, 100, 50], [700, 100, 50]), freeEdge([0, 1000, 60], [700, 1000, 260])),
      ],
    });
    const [sheet] = design.sheets;
    const strips = sheet?.kind === "transition" ? sheet.strips.length : 0;
    expect(strips).toBeGreaterThan(1);
    const solids = traySolids(design);
    expect(solids.length).toBe(2 * strips);
    for (const part of design.parts) {
      const own = solids.filter(({ partId }) => partId === part.id);
      for (const solid of own) expect(openSides(solid), solid.id).toBe(0);
      const area = own.reduce((sum, solid) => sum + middleAreaMm2(solid), 0);
      expect(relativeMiss(area, part.flatAreaMm2)).toBeLessThan(AREA_RELATIVE);
    }
  });
});

describe("bending back", () => {
  it("lays the wings of a plate into the plane of its base, as far out as its flat pattern reaches", () => {
    const wings = [
      wing("r", { angleRad: 1.1 }),
      wing("f", { angleRad: -0.8, startTaperRad: 0.3 }),
      wing("o", { startInsetMm: 60, endInsetMm: 90, angleRad: 1.5 }),
    ];
    const { plates } = designTray(
      projectOf(plateOf(plateRectangle(300, 800, 20, 180), wings), { symmetry: "mirrored" }),
    );
    const solids = traySolids({ sheets: [], parts: [], plates });
    const plate = at(plates, 0);
    for (const part of plate.parts) {
      const own = solids.filter(({ partId }) => partId === part.id);
      expect(own.length).toBe(1 + wings.length);
      const spots = own.flatMap((solid) => spotsOf(bendSolid(solid, 0)));
      const extent = (pick: (spot: readonly number[]) => number) =>
        Math.max(...spots.map(pick)) - Math.min(...spots.map(pick));
      expect(extent(([x = 0]) => x)).toBeCloseTo(part.lengthMm, 2);
      expect(extent(([, y = 0]) => y)).toBeCloseTo(part.widthMm, 2);
      for (const [, , z = 0] of spots) {
        expect(z).toBeGreaterThan(plate.zMm - SINGLE_MM);
        expect(z).toBeLessThan(plate.zMm + plate.thicknessMm + SINGLE_MM);
      }
      const volume = own.reduce((sum, solid) => sum + volumeMm3(solid, bendSolid(solid, 0)), 0);
      expect(relativeMiss(volume, plate.flatAreaMm2 * plate.thicknessMm)).toBeLessThan(AREA_RELATIVE);
      for (const solid of own) expect(openSides(solid), solid.id).toBe(0);
    }
  });

  it("takes the bend of a ramp back by its share: the same length on an arc of that share of the angle", () => {
    const radiusMm = 2000;
    const design = designTray(
      tray({ p: arcProfile([0, 50], radiusMm, 0.6, 1) }, [section(1, rectangle(0, 1100, 0, 400))], {
        drawnFace: "neutral",
        skinMm: 0,
      }),
    );
    const solid = solidOf(traySolids(design), "S1");
    // The ramp is an arc from x = 0 to x = 1100: its length, and the chord of that length at any radius.
    const lengthMm = radiusMm * Math.asin(1100 / radiusMm);
    const halfMm = (design.parts[0]?.thicknessMm ?? 0) / 2;
    for (const share of [0.25, 0.5, 1]) {
      const bentMm = radiusMm / share;
      const expected = 2 * (bentMm - halfMm) * Math.sin(lengthMm / (2 * bentMm));
      expect(relativeMiss(upperChordMm(solid, share), expected), `share ${share}`).toBeLessThan(
        STRETCH_RELATIVE,
      );
    }
    expect(relativeMiss(upperChordMm(solid, 0), lengthMm)).toBeLessThan(STRETCH_RELATIVE);
  });
});

const spotsOf = (positions: Float32Array): readonly (readonly number[])[] =>
  Array.from({ length: positions.length / 3 }, (_, i) => [...positions.subarray(3 * i, 3 * i + 3)]);

/** The longest distance between two vertices of the upper face on the edge nearest to the centre line. */
function upperChordMm(solid: Solid, share: number): number {
  const positions = bendSolid(solid, share);
  const spots = Array.from({ length: positions.length / 6 }, (_, i): readonly [number, number, number] => [
    positions[6 * i + 3] ?? 0,
    positions[6 * i + 4] ?? 0,
    positions[6 * i + 5] ?? 0,
  ]).filter(([, y]) => Math.abs(y) < 0.1);
  return Math.max(
    ...spots.flatMap(([x, , z]) => spots.map(([otherX, , otherZ]) => Math.hypot(x - otherX, z - otherZ))),
  );
}
