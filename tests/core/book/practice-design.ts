import type { Design } from "../../../core/design.ts";
import type { FlatPoint } from "../../../core/foundation/index.ts";
import type { Rib } from "../../../core/jig/index.ts";
import { NO_PANELS } from "../../../core/panels/index.ts";
import type { FlatEdge, Part, PartEdge } from "../../../core/patterns/index.ts";
import { emptyProject, type Project } from "../../../core/project/index.ts";
import { emptySchedule } from "../../../core/schedule/index.ts";
import { NO_SKINS } from "../../../core/skins/index.ts";
import { NO_WEIGHT } from "../../../core/totals/index.ts";
import { bareStep } from "../glue-up/bare-step.ts";
import { bareJig, bareRib } from "../jig/bare-rib.ts";

/** An invented practice piece, written down by hand: one bent strip of 600 by 300 mm on two ribs alike. */
export function practiceDesign(paper: Partial<Project["paper"]> = {}): Design {
  const empty = emptyProject({ id: "practice-piece", title: "Practice piece", issuedOn: "2026-11-25" });
  const project: Project = {
    ...empty,
    titleBlock: {
      owner: "A builder",
      creator: "A builder",
      approver: "",
      issuedOn: "2026-11-25",
      revision: "A",
    },
    paper: { ...empty.paper, templateWay: "full", ...paper },
  };
  const edges = outlineEdges();
  const outline = edges.flatMap((edge) => edge.points.slice(0, -1));
  const partEdges: readonly PartEdge[] = edges.map(({ edgeId, name, role }) => ({
    edgeId,
    name,
    role,
    drawnLengthMm: 600.4,
    spaceLengthMm: 601.2,
    flatLengthMm: 601.2,
    bevelRad: [0, 0],
    bevels: [],
  }));
  const part: Part = {
    id: "S1R",
    sheetId: "S1",
    itemId: "s1",
    name: "Practice section",
    kind: "section",
    hand: "right",
    faceShown: "upper face",
    foamId: "xps",
    thicknessMm: 10,
    loops: [{ edges }],
    edges: partEdges,
    spaceAreaMm2: 180000,
    flatAreaMm2: 180000,
    zones: [
      { fromUMm: 0, toUMm: 210, verdict: "flat", strain: 0 },
      {
        fromUMm: 210,
        toUMm: 390,
        verdict: "bend cold",
        leastRadiusMm: 905,
        inside: "upper face",
        strain: 0.0055,
      },
      { fromUMm: 390, toUMm: 600, verdict: "flat", strain: 0 },
    ],
    minRadiusMm: 905,
    maxStrain: 0.0055,
    verdict: "bend cold",
    seat: [],
    rulings: [],
  };
  return {
    project,
    plates: [],
    sheets: [],
    joints: [],
    jointOffers: [],
    parts: [part],
    seams: [],
    strips: [
      {
        id: "S1R",
        partId: "S1R",
        loops: [{ edges }],
        outlineMm: outline,
        holesMm: [],
        cutLinesMm: [outline],
        edges: partEdges,
        areaMm2: 180000,
        stockId: empty.stock[0]?.id ?? "",
      },
    ],
    marking: [
      {
        stripId: "S1R",
        origin: { u: 0, v: 0 },
        rows: [0, 100, 200, 300, 400, 500, 600].map((alongMm) => ({
          alongMm,
          offsetsMm: [0, outerEdge(alongMm)],
          bevelsRad: [0, 0],
          reason: "station" as const,
        })),
        joinedBy: "straight lines" as const,
        straightMissMm: 0.42,
        battenMissMm: 0.03,
      },
    ],
    jig: bareJig([rib("L1R", 60), rib("L2R", 240)], {
      levelZMm: -20,
      corners: [
        { x: -50, y: -50 },
        { x: 650, y: 350 },
      ],
      lines: [
        { ribId: "L1R", from: { x: 0, y: 60 }, to: { x: 600, y: 60 }, toward: "left" },
        { ribId: "L2R", from: { x: 0, y: 240 }, to: { x: 600, y: 240 }, toward: "left" },
      ],
    }),
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
    holds: [],
    glueUp: [
      bareStep({
        title: "Lay S1R on the ribs",
        adds: ["S1R"],
        why: "It rests on both ribs.",
        pins: 12,
        pinSpacingMm: 50,
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
      partCount: 1,
      stripCount: 1,
      foamAreaMm2: 180000,
      foamMassKg: 0.059,
      metalMassKg: 0,
      glueMassKg: 0,
      jointLengthMm: 0,
      stock: [{ stockId: empty.stock[0]?.id ?? "", name: "XPS 10 mm", areaMm2: 180000, sheetsAtLeast: 1 }],
      ribBoardAreaMm2: 144000,
      ribBoardsAtLeast: 1,
      ribBoardMassKg: 1.1,
      handsOnHours: 2.5,
    },
    problems: [],
  };
}

/** The curved outer edge, 280 to 300 mm off the datum. */
const outerEdge = (u: number): number => 280 + 20 * Math.sin((Math.PI * u) / 600);

function outlineEdges(): readonly FlatEdge[] {
  const outer = Array.from({ length: 601 }, (_, i): FlatPoint => ({ u: 600 - i, v: outerEdge(600 - i) }));
  const corner = (u: number, v: number): FlatPoint => ({ u, v });
  return [
    { edgeId: "n1", name: "inner edge", role: "free", points: [corner(0, 0), corner(600, 0)] },
    { edgeId: "n2", name: "rear edge", role: "free", points: [corner(600, 0), corner(600, outerEdge(600))] },
    { edgeId: "n3", name: "outer edge", role: "free", points: outer },
    { edgeId: "n4", name: "front edge", role: "free", points: [corner(0, outerEdge(0)), corner(0, 0)] },
  ];
}

function rib(id: string, atMm: number): Rib {
  const top = (u: number) => 90 + 30 * (u / 600) ** 2;
  const along = Array.from({ length: 121 }, (_, i) => 600 - i * 5);
  return bareRib({
    id,
    name: `rib along ${id}`,
    runs: "along",
    atMm,
    thicknessMm: 12,
    stationFace: "right",
    heights: [0, 100, 200, 300, 400, 500, 600].map((u) => ({
      atMm: u,
      stationFaceMm: top(u),
      farFaceMm: top(u),
      bevelRad: 0,
      partId: "S1R",
    })),
    outlineMm: [{ u: 0, v: 0 }, { u: 600, v: 0 }, ...along.map((u) => ({ u, v: top(u) }))],
    cut: "square",
    mostProudMm: 0,
    straightTop: false,
    sameAs: "L1R",
  });
}
