import { allRibs, type RibSet } from "../jig/index.ts";
import { type DataTable, degrees, mm } from "./data-table.ts";
import type { Design } from "./design.ts";

/** The lists of the jig and its cradle: ribs, their heights, what is cut out of them, the boards, posts and standing fences. */
export function jigDataTables(design: Design): readonly DataTable[] {
  const { jig } = design;
  const stands = jig.cradle === undefined ? [jig] : [jig, jig.cradle];
  return [
    ribsTable(design),
    ribHeightsTable(design),
    ribCutsTable(design),
    boardsTable(stands),
    postsTable(stands),
    fenceStandsTable(stands),
  ];
}

const ribsTable = ({ jig }: Design): DataTable => ({
  name: "ribs",
  header: [
    "rib",
    "runs",
    "at mm",
    "thickness mm",
    "station face",
    "cut",
    "straight top",
    "same as",
    "stand",
    "attitude",
    "pieces",
  ],
  rows: allRibs(jig).map((rib) => [
    rib.id,
    rib.runs,
    mm(rib.atMm),
    mm(rib.thicknessMm),
    rib.stationFace,
    rib.cut,
    rib.straightTop ? "yes" : "no",
    rib.sameAs,
    rib.stand,
    rib.attitude,
    rib.pieces.map(({ id }) => id).join(" "),
  ]),
});

const ribHeightsTable = ({ jig }: Design): DataTable => ({
  name: "rib-heights",
  header: ["rib", "position mm", "station face mm", "far face mm", "bevel deg", "part"],
  rows: allRibs(jig).flatMap((rib) =>
    rib.heights.map((height) => [
      rib.id,
      mm(height.atMm),
      mm(height.stationFaceMm),
      mm(height.farFaceMm),
      degrees(height.bevelRad),
      height.partId,
    ]),
  ),
});

/** Everything that is cut out of a rib, or where it is cut apart: from and to along it, and the level that it ends at. */
const ribCutsTable = ({ jig }: Design): DataTable => ({
  name: "rib-cuts",
  header: ["rib", "cut", "from mm", "to mm", "level mm", "for"],
  rows: allRibs(jig).flatMap((rib) => [
    ...rib.laps.map((lap) => [
      rib.id,
      `slot from ${lap.from === "top" ? "above" : "below"}`,
      mm(lap.fromMm),
      mm(lap.toMm),
      mm(lap.levelMm),
      lap.otherId,
    ]),
    ...rib.notches.map((notch) => [
      rib.id,
      "notch",
      mm(notch.fromMm),
      mm(notch.toMm),
      mm(notch.levelMm),
      notch.fencePartId,
    ]),
    ...rib.reliefs.map(({ atMm, widthMm, levelMm, between }) => [
      rib.id,
      "hollow",
      mm(atMm - widthMm / 2),
      mm(atMm + widthMm / 2),
      mm(levelMm),
      [...new Set(between)].join(" "),
    ]),
    ...rib.tabs.map(([fromMm, toMm]) => [rib.id, "tab", mm(fromMm), mm(toMm), "", "board"]),
    ...rib.splices.map(({ atMm, way, plate }) => [
      rib.id,
      "splice",
      mm(atMm),
      mm(atMm),
      "",
      plate?.id ?? way,
    ]),
  ]),
});

const boardsTable = (stands: readonly RibSet[]): DataTable => ({
  name: "baseboards",
  header: ["board", "what", "x mm", "y mm", "to x mm", "to y mm", "rib", "height mm", "packing mm"],
  rows: stands.flatMap(({ baseboard }, i) => {
    const name = i === 0 ? "jig" : "cradle";
    return [
      ...baseboard.sheets.map(({ id, corners: [a, b] }) => [
        name,
        `sheet ${id}`,
        mm(a.x),
        mm(a.y),
        mm(b.x),
        mm(b.y),
        "",
        "",
        "",
      ]),
      ...baseboard.square.marks.map((p, k) => [name, `mark ${k + 1}`, mm(p.x), mm(p.y), "", "", "", "", ""]),
      ...baseboard.lines.map(({ ribId, from, to, toward }) => [
        name,
        `line, body toward ${toward}`,
        mm(from.x),
        mm(from.y),
        mm(to.x),
        mm(to.y),
        ribId,
        "",
        "",
      ]),
      ...baseboard.slots.map(({ ribId, corners: [a, b] }) => [
        name,
        "slot",
        mm(a.x),
        mm(a.y),
        mm(b.x),
        mm(b.y),
        ribId,
        "",
        "",
      ]),
      ...baseboard.shims.map(({ ribId, at: p, boardMm, packingMm }) => [
        name,
        "foot",
        mm(p.x),
        mm(p.y),
        "",
        "",
        ribId,
        mm(boardMm),
        mm(packingMm),
      ]),
    ];
  }),
});

const postsTable = (stands: readonly RibSet[]): DataTable => ({
  name: "posts",
  header: [
    "post",
    "rib",
    "x mm",
    "y mm",
    "height mm",
    "rises rearward deg",
    "rises to the right deg",
    "part",
  ],
  rows: stands.flatMap(({ posts }) =>
    posts.map((post) => [
      post.id,
      post.ribId,
      mm(post.at.x),
      mm(post.at.y),
      mm(post.heightMm),
      degrees(post.slopeAlongRad),
      degrees(post.slopeAcrossRad),
      post.partId,
    ]),
  ),
});

const fenceStandsTable = (stands: readonly RibSet[]): DataTable => ({
  name: "fence-heights",
  header: ["fence", "along mm", "x mm", "y mm", "lower edge mm", "upper edge mm"],
  rows: stands.flatMap(({ fenceStands }) =>
    fenceStands.flatMap(({ partId, stations }) =>
      stations.map(({ alongMm, at: p, lowerMm, upperMm }) => [
        partId,
        mm(alongMm),
        mm(p.x),
        mm(p.y),
        mm(lowerMm),
        mm(upperMm),
      ]),
    ),
  ),
});
