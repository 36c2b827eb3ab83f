import { describe, expect, it } from "vitest";
import {
  addSpace,
  at,
  crossSpace,
  dotSpace,
  lengthSpace,
  type SpacePoint,
} from "../../../core/foundation/index.ts";
import type { Joint } from "../../../core/joints/index.ts";
import type { Project } from "../../../core/project/index.ts";
import { facePointAt, type LyingSheet } from "../../../core/surfaces/index.ts";
import {
  followEdge,
  freeEdge,
  type LaidTray,
  layTray,
  planNode,
  rectangle,
  section,
  sideNode,
  straightProfile,
  stretchOf,
  type TraySettings,
  transition,
  tray,
} from "../trays.ts";

/** Foam may lie in foam by no more than this, and a gap be wider than the glue line by no more. */
const OVERLAP_MM = 0.05;
/** Looks through the thickness, and how deep into a part foam is looked for. */
const LOOKS = 24;

const unit = (a: SpacePoint): SpacePoint => addSpace({ x: 0, y: 0, z: 0 }, a, 1 / lengthSpace(a));

/**
 * One part at one place of a joint, in the plane square to the edge: its inward normal, the direction into it, and how
 * far before the drawn edge its foam begins at each depth. Built from the joint's figures as a builder would: the neutral
 * fibre ends at the set-back, and the wall leans by the bevel.
 */
interface Wall {
  readonly normal: SpacePoint;
  readonly inward: SpacePoint;
  readonly lowerMm: number;
  readonly upperMm: number;
  readonly startsAt: (depthMm: number) => number;
}

interface Side {
  readonly sheet: LyingSheet;
  readonly normal: SpacePoint;
  /** From the edge to where the sheet was found. */
  readonly found: SpacePoint;
}

/** The sheet beside a place of its edge, on one hand: found a hair beside it in one of sixteen directions. */
function sideOf(sheet: LyingSheet, isLeft: boolean, point: SpacePoint): Side {
  const sign = isLeft ? -1 : 1;
  const found = Array.from({ length: 16 }, (_, i) => {
    const [dx, dy] = [Math.cos((i * Math.PI) / 8) * 0.02, Math.sin((i * Math.PI) / 8) * 0.02];
    const face = facePointAt(sheet, 0, { x: point.x + dx, y: sign * (point.y + dy) });
    return face && { dx, dy, normal: { ...face.normal, y: sign * face.normal.y } };
  }).filter((one) => one !== undefined);
  if (found.length === 0) throw new Error("no sheet beside the joint");
  const sum = (key: "dx" | "dy") => found.reduce((total, one) => total + one[key], 0);
  return { sheet, normal: at(found, 0).normal, found: { x: sum("dx"), y: sum("dy"), z: 0 } };
}

function wallOf(
  { sheet, normal, found }: Side,
  along: SpacePoint,
  figures: { readonly setBackMm: number; readonly bevelRad: number },
): Wall {
  const square = unit(addSpace(normal, along, -dotSpace(normal, along)));
  const side = crossSpace(square, along);
  const { coreLowerMm, coreUpperMm, neutralMm } = sheet.depths;
  return {
    normal: square,
    inward: dotSpace(found, side) > 0 ? side : addSpace({ x: 0, y: 0, z: 0 }, side, -1),
    lowerMm: coreLowerMm,
    upperMm: coreUpperMm,
    startsAt: (depthMm) => figures.setBackMm + (depthMm - neutralMm) * Math.tan(figures.bevelRad),
  };
}

/** Where tangent planes cross at this much, the edge runs along their crossing. */
const CROSSING = 0.02;

/** How deep a place, from the drawn edge, lies in a part's foam: below 0 outside. */
function depthInFoam(wall: Wall, place: SpacePoint): number {
  const depth = dotSpace(place, wall.normal);
  const cosine = Math.cos(Math.atan(wall.startsAt(1) - wall.startsAt(0)));
  return Math.min(
    depth - wall.lowerMm,
    wall.upperMm - depth,
    (dotSpace(place, wall.inward) - wall.startsAt(depth)) * cosine,
  );
}

/** The deepest overlap and the widest gap between the walls of a joint at one of its stations. */
function lookAtStation(
  laid: LaidTray,
  joint: Joint,
  index: number,
): { overlapMm: number; touchMm: number; gapeMm: number } {
  const station = at(joint.stations, index);
  const [before, after] = [
    at(joint.stations, Math.max(0, index - 1)),
    at(joint.stations, Math.min(joint.stations.length - 1, index + 1)),
  ];
  const sides = joint.partIds.map((partId) => {
    const part = laid.parts.find(({ id }) => id === partId);
    const sheet = laid.sheets.find(({ id }) => id === part?.sheetId);
    if (!sheet || sheet.kind === "fence") throw new Error("no sheet");
    return sideOf(sheet, part?.hand === "left", station.at);
  });
  const crossing = crossSpace(at(sides, 0).normal, at(sides, 1).normal);
  const chord = addSpace(after.at, before.at, -1);
  const along = unit(lengthSpace(crossing) > CROSSING ? crossing : chord);
  const walls = sides.map((side, i) =>
    wallOf(side, along, { setBackMm: at(station.setBackMm, i), bevelRad: at(station.bevelRad, i) }),
  );
  const [a, b] = [at(walls, 0), at(walls, 1)];
  let overlapMm = 0;
  let touchMm = Number.POSITIVE_INFINITY;
  let gapeMm = 0;
  for (const [one, other] of [
    [a, b],
    [b, a],
  ] as const) {
    for (let i = 0; i <= LOOKS; i++) {
      const depth = one.lowerMm + ((one.upperMm - one.lowerMm) * i) / LOOKS;
      const edge = addSpace(
        addSpace({ x: 0, y: 0, z: 0 }, one.normal, depth),
        one.inward,
        one.startsAt(depth),
      );
      for (const deeperMm of [0, 0.5, 2, 6, 15])
        overlapMm = Math.max(overlapMm, depthInFoam(other, addSpace(edge, one.inward, deeperMm)));
      const gapMm = -depthInFoam(other, edge);
      touchMm = Math.min(touchMm, gapMm);
      gapeMm = Math.max(gapeMm, gapMm);
    }
  }
  return { overlapMm, touchMm, gapeMm };
}

function judge(laid: LaidTray, glueGapMm: number): number {
  let looked = 0;
  for (const joint of laid.joints.filter(({ kind }) => kind !== "fence seat")) {
    for (let i = 1; i + 1 < Math.max(joint.stations.length, 3); i++) {
      const index = Math.min(i, joint.stations.length - 1);
      const { overlapMm, touchMm, gapeMm } = lookAtStation(laid, joint, index);
      looked++;
      expect(overlapMm, `${joint.id} station ${index}: foam in foam`).toBeLessThan(OVERLAP_MM);
      expect(touchMm, `${joint.id} station ${index}: nearest gap`).toBeLessThan(glueGapMm + OVERLAP_MM);
      if (joint.cut === "mitre")
        expect(gapeMm, `${joint.id} station ${index}: widest gap`).toBeLessThan(glueGapMm + OVERLAP_MM);
    }
  }
  return looked;
}

const LEVEL = straightProfile(-50, 100, 1850, 100);
/** Two ramps of different lengths and heights. */
const RAMPS = {
  p: [
    sideNode("a", 0, 100),
    sideNode("b", 900, 100, { next: "curve", meets: "smooth" }),
    sideNode("c", 1800, 160, { tangentInRad: Math.atan(120 / 900) }),
  ],
  q: [
    sideNode("a", 0, 140),
    sideNode("b", 900, 140, { next: "curve", meets: "smooth" }),
    sideNode("c", 1800, 250, { tangentInRad: Math.atan(220 / 900) }),
  ],
};

const centre = section(1, rectangle(0, 1800, 0, 300));
const lower = (changes = {}) =>
  section(
    2,
    [
      followEdge("shared", { itemId: "s1", fromNodeId: "outer", toNodeId: "front" }, "against"),
      planNode("far", 1800, 560),
      planNode("off", 0, 560),
    ],
    changes,
  );
const apart = section(2, rectangle(0, 1800, 480, 700), { profileId: "q" });

const mirrored = (settings: TraySettings = {}): TraySettings => ({
  symmetry: "mirrored",
  gapLimitMm: 0,
  thicknessMm: 10,
  leastBendRatio: 20,
  ...settings,
});
const DEGREE = Math.PI / 180;

const CASES: readonly (readonly [string, Project, number])[] = [
  ...[-20, -4, 3, 12, 35].map(
    (lean) =>
      [
        `mitred at a lean of ${lean}°`,
        tray({ p: LEVEL }, [centre, lower({ tiltRad: lean * DEGREE })], mirrored()),
        0,
      ] as const,
  ),
  [
    "of 20 on 10 mm foam at 40°, a butt",
    tray(
      { p: LEVEL },
      [centre, lower({ tiltRad: 40 * DEGREE, core: { foamId: "xps", thicknessMm: 20 } })],
      mirrored({ glueGapMm: 0.4 }),
    ),
    0.4,
  ],
  [
    "with a glue line of half a millimetre",
    tray({ p: LEVEL }, [centre, lower({ tiltRad: -15 * DEGREE })], mirrored({ glueGapMm: 0.5 })),
    0.5,
  ],
  [
    "cut square, its wedge left to the glue",
    tray({ p: LEVEL }, [centre, lower({ tiltRad: 2 * DEGREE })], mirrored({ gapLimitMm: 1 })),
    0,
  ],
  [
    "of a transition between two ramps, its angle changing along it",
    tray(
      RAMPS,
      [centre, apart, transition(1, stretchOf("s1", "outer", "front"), stretchOf("s2", "inner", "rear"))],
      mirrored(),
    ),
    0,
  ],
  [
    "of a transition to a free edge that rises and falls through the floor's level, its angle changing sign",
    tray(
      { p: LEVEL },
      [
        centre,
        transition(1, stretchOf("s1", "outer", "front"), {
          kind: "free",
          nodes: [
            { id: "e1", x: 0, y: 520, z: 130, next: "curve" },
            { id: "e2", x: 900, y: 520, z: 100, next: "curve" },
            { id: "e3", x: 1800, y: 520, z: 75, next: "line" },
          ],
        }),
      ],
      mirrored(),
    ),
    0,
  ],
  [
    "along a curved edge",
    tray(
      { p: LEVEL },
      [
        section(1, [
          planNode("a", 0, 0),
          planNode("b", 1800, 0),
          planNode("c", 1800, 250, { next: "curve" }),
          planNode("d", 900, 320, { next: "curve" }),
          planNode("e", 0, 250),
        ]),
        transition(1, stretchOf("s1", "c", "e"), {
          kind: "free",
          nodes: [
            { id: "e1", x: 1800, y: 420, z: 180, next: "curve" },
            { id: "e2", x: 900, y: 500, z: 170, next: "curve" },
            { id: "e3", x: 0, y: 420, z: 160, next: "line" },
          ],
        }),
      ],
      mirrored({ leastBendRatio: 5 }),
    ),
    0,
  ],
  [
    "of two transitions, one on the free edge of the other",
    tray(
      { p: LEVEL },
      [
        centre,
        transition(1, stretchOf("s1", "outer", "front"), freeEdge([0, 450, 130], [1800, 450, 150])),
        transition(
          2,
          stretchOf("t1", "second-start", "second-end"),
          freeEdge([0, 600, 130], [1800, 620, 170]),
        ),
      ],
      mirrored(),
    ),
    0,
  ],
];

describe("the foam on both sides of a joint", () => {
  it.each(CASES)("%s, neither overlaps nor gapes", (_title, project, glueGapMm) => {
    const laid = layTray(project);
    expect(
      laid.problems.filter(({ kind }) => !["transition-twisted", "bend-too-tight"].includes(kind)),
    ).toEqual([]);
    expect(laid.joints.length).toBeGreaterThan(0);
    expect(judge(laid, glueGapMm)).toBeGreaterThan(0);
  });
});
