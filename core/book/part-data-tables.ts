import { roundTo } from "../foundation/index.ts";
import { edgeMarks } from "../marking/index.ts";
import { type DataTable, degrees, mm } from "./data-table.ts";
import type { Design } from "./design.ts";

/** Parts, their edges and strips, what is marked on them, and where they meet and bend, as tables. */
export const partDataTables = (design: Design): readonly DataTable[] => [
  partsTable(design),
  edgesTable(design),
  stripsTable(design),
  markingTable(design),
  edgeMarksTable(design),
  jointsTable(design),
  jointStationsTable(design),
  rulingsTable(design),
  bendsTable(design),
];

const partsTable = (design: Design): DataTable => ({
  name: "parts",
  header: [
    "part",
    "name",
    "kind",
    "hand",
    "face shown",
    "thickness mm",
    "area mm2",
    "least radius mm",
    "strain",
    "verdict",
  ],
  rows: design.parts.map((part) => [
    part.id,
    part.name,
    part.kind,
    part.hand,
    part.faceShown,
    mm(part.thicknessMm),
    mm(part.flatAreaMm2),
    part.minRadiusMm === undefined ? "" : mm(part.minRadiusMm),
    roundTo(part.maxStrain, 6),
    part.verdict,
  ]),
});

const edgesTable = (design: Design): DataTable => ({
  name: "edges",
  header: [
    "strip",
    "edge",
    "name",
    "role",
    "drawn mm",
    "in space mm",
    "flat mm",
    "bevel start deg",
    "bevel end deg",
  ],
  rows: design.strips.flatMap((strip) =>
    strip.edges.map((edge) => [
      strip.id,
      edge.edgeId,
      edge.name,
      edge.role,
      mm(edge.drawnLengthMm),
      mm(edge.spaceLengthMm),
      mm(edge.flatLengthMm),
      degrees(edge.bevelRad[0]),
      degrees(edge.bevelRad[1]),
    ]),
  ),
});

const stripsTable = (design: Design): DataTable => ({
  name: "strips",
  header: ["strip", "part", "stock", "length mm", "width mm", "area mm2"],
  rows: design.strips.map((strip) => {
    const us = strip.outlineMm.map((p) => p.u);
    const vs = strip.outlineMm.map((p) => p.v);
    return [strip.id, strip.partId, strip.stockId ?? "", mm(spanOf(us)), mm(spanOf(vs)), mm(strip.areaMm2)];
  }),
});

/** Largest less smallest. */
export const spanOf = (values: readonly number[]): number => {
  let [least, most] = [Infinity, -Infinity];
  for (const value of values) {
    least = Math.min(least, value);
    most = Math.max(most, value);
  }
  return most >= least ? most - least : 0;
};

function markingTable(design: Design): DataTable {
  const most = Math.max(0, ...design.marking.flatMap(({ rows }) => rows.map((row) => row.offsetsMm.length)));
  return {
    name: "marking-out",
    header: [
      "strip",
      "along mm",
      "why",
      ...Array.from({ length: most }, (_, i) => [`mark ${i + 1} mm`, `bevel ${i + 1} deg`]).flat(),
    ],
    rows: design.marking.flatMap((table) =>
      table.rows.map((row) => [
        table.stripId,
        mm(row.alongMm),
        row.reason,
        ...Array.from({ length: most }, (_, i) => {
          const offset = row.offsetsMm[i];
          return offset === undefined ? ["", ""] : [mm(offset), degrees(row.bevelsRad[i] ?? 0)];
        }).flat(),
      ]),
    ),
  };
}

/** The marks along edges: those of one joint and number meet; the bevel at each. */
const edgeMarksTable = (design: Design): DataTable => ({
  name: "edge-marks",
  header: ["strip", "edge", "joint", "number", "along joint mm", "from corner mm", "u", "v", "bevel deg"],
  rows: edgeMarks(design).map(({ stripId, edgeId, joint, fromCornerMm, at, bevelRad }) => [
    stripId,
    edgeId,
    joint?.id ?? "",
    joint?.label ?? "",
    joint === undefined ? "" : mm(joint.alongMm),
    mm(fromCornerMm),
    mm(at.u),
    mm(at.v),
    degrees(bevelRad),
  ]),
});

/** The joint at every place where its angle is told. */
const jointStationsTable = (design: Design): DataTable => ({
  name: "joint-stations",
  header: [
    "joint",
    "along mm",
    "x",
    "y",
    "z",
    "fold deg",
    "bevel deg",
    "other bevel deg",
    "set-back mm",
    "other set-back mm",
  ],
  rows: design.joints.flatMap(({ id, stations }) =>
    stations.map(({ alongMm, at, foldRad, bevelRad, setBackMm }) => [
      id,
      mm(alongMm),
      mm(at.x),
      mm(at.y),
      mm(at.z),
      degrees(foldRad),
      degrees(bevelRad[0]),
      degrees(bevelRad[1]),
      mm(setBackMm[0]),
      mm(setBackMm[1]),
    ]),
  ),
});

/** Where the rulings of transitions run: along both edges and on the flat pattern. */
const rulingsTable = (design: Design): DataTable => ({
  name: "rulings",
  header: ["part", "first edge mm", "second edge mm", "from u", "from v", "to u", "to v", "twist deg"],
  rows: design.parts.flatMap(({ id, rulings }) =>
    rulings.map(({ firstMm, secondMm, from, to, twistRad }) => [
      id,
      mm(firstMm),
      mm(secondMm),
      mm(from.u),
      mm(from.v),
      mm(to.u),
      mm(to.v),
      degrees(twistRad),
    ]),
  ),
});

const jointsTable = (design: Design): DataTable => ({
  name: "joints",
  header: [
    "joint",
    "kind",
    "part",
    "other part",
    "length mm",
    "fold start deg",
    "fold end deg",
    "cut",
    "bevel deg",
    "other bevel deg",
  ],
  rows: design.joints.map((joint) => [
    joint.id,
    joint.kind,
    joint.partIds[0],
    joint.partIds[1],
    mm(joint.lengthMm),
    degrees(joint.foldRad[0]),
    degrees(joint.foldRad[1]),
    joint.cut,
    degrees(joint.bevelRad[0]),
    degrees(joint.bevelRad[1]),
  ]),
});

const bendsTable = (design: Design): DataTable => ({
  name: "bends",
  header: [
    "plate",
    "bend",
    "way",
    "angle deg",
    "inside radius mm",
    "k factor",
    "allowance mm",
    "deduction mm",
    "set-back mm",
    "flange mm",
    "length mm",
  ],
  rows: design.plates.flatMap(({ parts }) =>
    parts.flatMap((part) =>
      part.bends.map(({ name, figures, lengthMm }) => [
        part.id,
        name,
        figures.direction,
        degrees(figures.angleRad),
        mm(figures.insideRadiusMm),
        roundTo(figures.kFactor, 4),
        mm(figures.allowanceMm),
        mm(figures.deductionMm),
        mm(figures.setBackMm),
        mm(figures.flangeMm),
        mm(lengthMm),
      ]),
    ),
  ),
});
