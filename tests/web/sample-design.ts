import type { Design } from "../../core/design.ts";
import type { FlatPoint } from "../../core/foundation/index.ts";
import { NO_PANELS } from "../../core/panels/index.ts";
import type { Part } from "../../core/patterns/index.ts";
import { emptyProject } from "../../core/project/defaults.ts";
import type { Project, Section } from "../../core/project/index.ts";
import { emptySchedule } from "../../core/schedule/index.ts";
import { NO_SKINS } from "../../core/skins/index.ts";
import { NO_WEIGHT } from "../../core/totals/index.ts";
import { bareStep } from "../core/glue-up/bare-step.ts";
import { bareJig, bareRib } from "../core/jig/bare-rib.ts";

/** A flat loop with one edge a side, from its corners. */
function loop(corners: readonly FlatPoint[]): Part["loops"][number] {
  return {
    edges: corners.map((corner, index) => ({
      edgeId: `e${index + 1}`,
      name: `edge ${index + 1}`,
      role: index === 2 ? ("joint" as const) : ("free" as const),
      points: [corner, corners[(index + 1) % corners.length] ?? corner],
    })),
  };
}

function lengthOf(points: readonly FlatPoint[]): number {
  const [a, b] = [points[0], points.at(-1)];
  return a && b ? Math.hypot(b.u - a.u, b.v - a.v) : 0;
}

function section(id: string, number: number, y0: number, y1: number): Section {
  const corner = (key: string, x: number, y: number) => ({
    kind: "node" as const,
    id: key,
    x,
    y,
    next: "line" as const,
  });
  return {
    kind: "section",
    id,
    number,
    name: number === 1 ? "Centre floor" : "Outer floor",
    outline: {
      closed: true,
      elements: [corner("n1", 0, y0), corner("n2", 1900, y0), corner("n3", 2000, y1), corner("n4", 120, y1)],
    },
    profileId: "p1",
    headingRad: 0,
    tiltRad: 0,
  };
}

/** A small tray written by hand: two sections, one of them a part on each hand. */
export const sampleProject: Project = {
  ...emptyProject({ id: "sample", title: "Sample floor", issuedOn: "2026-11-25" }),
  profiles: [
    {
      id: "p1",
      name: "Floor line",
      nodes: [
        { kind: "node", id: "a", x: 0, z: 60, next: "line" },
        { kind: "node", id: "b", x: 2000, z: 60, next: "line" },
      ],
    },
  ],
  items: [section("s1", 1, 0, 300), section("s2", 2, 300, 640)],
};

function part(id: string, itemId: string, hand: Part["hand"], corners: readonly FlatPoint[]): Part {
  const outline = loop(corners);
  return {
    id,
    sheetId: id.replace(/[RL]$/, ""),
    itemId,
    name: itemId === "s1" ? "Centre floor" : "Outer floor",
    kind: "section",
    hand,
    faceShown: "upper face",
    foamId: "xps",
    thicknessMm: 10,
    loops: [outline],
    edges: outline.edges.map((edge) => ({
      edgeId: edge.edgeId,
      name: edge.name,
      role: edge.role,
      drawnLengthMm: lengthOf(edge.points) * 1.004,
      spaceLengthMm: lengthOf(edge.points),
      flatLengthMm: lengthOf(edge.points),
      bevelRad: [0, edge.role === "joint" ? 0.06 : 0],
      bevels: [],
    })),
    spaceAreaMm2: 620000,
    flatAreaMm2: 620000,
    zones: [
      { fromUMm: 0, toUMm: 1240, verdict: "flat", strain: 0 },
      {
        fromUMm: 1240,
        toUMm: 1520,
        verdict: "bend cold",
        leastRadiusMm: 812,
        inside: "upper face",
        strain: 0.0062,
      },
      { fromUMm: 1520, toUMm: 2010, verdict: "flat", strain: 0 },
    ],
    minRadiusMm: 812,
    maxStrain: 0.0062,
    verdict: "bend cold",
    seat: [],
    rulings: [],
  };
}

const parts: readonly Part[] = [
  part("S1", "s1", "whole", [
    { u: 0, v: -300 },
    { u: 2010, v: -300 },
    { u: 2010, v: 300 },
    { u: 0, v: 300 },
  ]),
  part("S2R", "s2", "right", [
    { u: 0, v: 300 },
    { u: 1908, v: 300 },
    { u: 2010, v: 640 },
    { u: 120, v: 640 },
  ]),
  part("S2L", "s2", "left", [
    { u: 120, v: -640 },
    { u: 2010, v: -640 },
    { u: 1908, v: -300 },
    { u: 0, v: -300 },
  ]),
];

/** What a design of the sample could look like; figures are plausible, not computed. */
export const sampleDesign: Design = {
  project: sampleProject,
  plates: [],
  sheets: [],
  joints: [],
  jointOffers: [],
  parts,
  seams: [],
  strips: parts.map((each) => ({
    id: each.id,
    partId: each.id,
    loops: each.loops,
    outlineMm: each.loops.flatMap((l) => l.edges.map((edge) => edge.points[0] ?? { u: 0, v: 0 })),
    holesMm: [],
    cutLinesMm: [],
    edges: each.edges,
    areaMm2: each.flatAreaMm2,
    stockId: "xps-10-1250x600",
  })),
  marking: parts.map((each) => ({
    stripId: each.id,
    origin: each.loops[0]?.edges[0]?.points[0] ?? { u: 0, v: 0 },
    rows: Array.from({ length: 21 }, (_, index) => ({
      alongMm: index * 100,
      offsetsMm: index === 0 ? [0] : [0, 340 - index * 2.4],
      bevelsRad: index === 0 ? [0] : [0, 0],
      reason: index === 0 || index === 20 ? ("corner" as const) : ("station" as const),
    })),
    joinedBy: "straight lines" as const,
    straightMissMm: 0.31,
    battenMissMm: 0.04,
  })),
  lie: {
    settings: { toleranceMm: 1, pushN: 30, wetKgPerM2: 1.2, runPastMm: 100 },
    lines: [],
    worst: [],
    pushed: [],
    forces: [],
    limits: [],
    pasts: [],
    inOpenings: [],
    checks: [],
    unheld: [],
  },
  jig: bareJig(
    [0, 300, 600, 900, 1200, 1500, 1800].map((atMm, index) =>
      bareRib({
        id: `A${index + 1}`,
        name: `Rib across at ${atMm}`,
        runs: "across" as const,
        atMm,
        thicknessMm: 12,
        stationFace: "front" as const,
        heights: [-640, -300, 0, 300, 640].map((y) => ({
          atMm: y,
          stationFaceMm: 60 + index * index * 1.6,
          farFaceMm: 60.4 + index * index * 1.6,
          bevelRad: 0.01 * index,
          partId: Math.abs(y) > 300 ? (y > 0 ? "S2R" : "S2L") : "S1",
        })),
        outlineMm: [
          { u: -640, v: 0 },
          { u: 640, v: 0 },
          { u: 640, v: 60 + index * index * 1.6 },
          { u: -640, v: 60 + index * index * 1.6 },
        ],
        cut: index > 4 ? ("bevel" as const) : ("square" as const),
        mostProudMm: 0.1 * index,
        straightTop: true,
        sameAs: index === 1 ? "A1" : `A${index + 1}`,
      }),
    ),
    {
      levelZMm: 0,
      corners: [
        { x: -60, y: -700 },
        { x: 2060, y: 700 },
      ],
      lines: [0, 300, 600, 900, 1200, 1500, 1800].map((x, index) => ({
        ribId: `A${index + 1}`,
        from: { x, y: -640 },
        to: { x, y: 640 },
        toward: "rear" as const,
      })),
    },
  ),
  holds: [],
  glueUp: [
    bareStep({
      step: 1,
      place: "jig",
      title: "Lay the centre floor on the ribs",
      adds: ["S1"],
      joins: [],
      standing: [],
      why: "Everything else leans on it, and it rests on every rib.",
      glueLengthMm: 0,
      glueMassKg: 0,
      pins: 18,
      pinSpacingMm: 100,
      waitHours: 0,
      cautions: [],
    }),
    bareStep({
      step: 2,
      place: "jig",
      title: "Bring the right outer floor to it",
      adds: ["S2R"],
      joins: ["S1/S2R"],
      standing: ["S1"],
      why: "Its inboard edge is held by the centre floor and it is still open on the outside.",
      glueLengthMm: 1908,
      glueMassKg: 0.006,
      pins: 20,
      pinSpacingMm: 100,
      waitHours: 4,
      cautions: [
        "The glue gives off vapour that can make you allergic for life. Gloves, goggles, open doors.",
      ],
    }),
  ],
  panels: NO_PANELS,
  skins: NO_SKINS,
  schedule: emptySchedule({ startOn: "2026-01-05" }),
  cloth: [],
  patchMaps: [],
  weight: NO_WEIGHT,
  stock: [],
  totals: {
    partCount: 3,
    stripCount: 5,
    foamAreaMm2: 1860000,
    foamMassKg: 0.61,
    metalMassKg: 0,
    glueMassKg: 0.012,
    jointLengthMm: 3816,
    stock: [
      { stockId: "xps-10-1250x600", name: "XPS 10 mm, 1250 x 600", areaMm2: 1860000, sheetsAtLeast: 3 },
    ],
    ribBoardAreaMm2: 900000,
    ribBoardsAtLeast: 1,
    ribBoardMassKg: 7.2,
    handsOnHours: 14.2,
  },
  problems: [
    { kind: "rib-needs-bevel", place: { ribId: "A6" }, name: "Rib A6", proudMm: 1.4, limitMm: 1 },
    { kind: "too-few-nodes", place: { itemId: "s2" }, name: "Outer floor", count: 2, needed: 3 },
  ],
};
