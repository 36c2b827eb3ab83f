import { describe, expect, it } from "vitest";
import { type Design, designTray } from "../../../core/design.ts";
import { at, type SpacePoint, wordProblem } from "../../../core/foundation/index.ts";
import { fenceBands } from "../../../core/jig/fence-notches.ts";
import { type ReleaseLock, type Rib, type RibSet, wordRelease } from "../../../core/jig/index.ts";
import { releaseOf } from "../../../core/jig/release.ts";
import { restingFace } from "../../../core/jig/resting-face.ts";
import { emptyProject, type Item, type Project, type TypedMaking } from "../../../core/project/index.ts";
import { traySolids } from "../../../core/solids/index.ts";
import { readExample } from "../../read-example.ts";
import {
  fence,
  freeEdge,
  planNode,
  rectangle,
  section,
  straightProfile,
  stretchOf,
  transition,
  tray,
} from "../trays.ts";
import { boardOf, woodAt } from "./wood.ts";

const { jig: plainJig } = emptyProject({ id: "tray", title: "Tray", issuedOn: "2026-01-01" });

/** A floor at z 100 out to y 300, and what hangs on its outer edge. */
function trayOf(items: readonly Item[], jig: Partial<Project["jig"]> = {}, making: TypedMaking = {}): Design {
  return designTray({
    ...tray(
      { p: straightProfile(-100, 100, 1200, 100) },
      [section(1, rectangle(0, 1000, 0, 300)), ...items],
      {
        symmetry: "mirrored",
        thicknessMm: 10,
      },
    ),
    jig: { ...plainJig, attitude: "upright", across: { kind: "typed", atMm: [300, 700] }, ...jig, making },
  });
}

/** From the floor's outer edge to a free edge at (y, z). */
const lip = (y: number, z: number, coreSide: "above" | "below" = "above") =>
  transition(1, stretchOf("s1", "outer", "front"), freeEdge([1000, y, z], [0, y, z]), { coreSide });

/** What a body of foam, lifted straight up through the wood, runs against: the part, the rib, and how far it is under. */
function heldBy(design: Design, set: RibSet): ReadonlyMap<string, number> {
  const { attitude, levelZMm } = set.baseboard;
  const held = new Map<string, number>();
  for (const { partId, positions, triangles } of traySolids(design)) {
    const corner = (i: number): SpacePoint => ({
      x: positions[3 * i] ?? 0,
      y: positions[3 * i + 1] ?? 0,
      z: positions[3 * i + 2] ?? 0,
    });
    for (let i = 0; i < triangles.length; i += 3) {
      const corners = [0, 1, 2].map((k) => corner(triangles[i + k] ?? 0));
      for (const rib of set.ribs) {
        const [front, rear] = boardOf(rib);
        for (const planeMm of [front + 0.01, (front + rear) / 2, rear - 0.01])
          for (const { alongMm, z } of cutBy(rib, corners, planeMm)) {
            const heightMm = attitude === "upright" ? z - levelZMm : levelZMm - z;
            // Wood that only touches from beside is looked past.
            const over = Math.min(...[-0.6, 0.6].map((mm) => topAt(rib, alongMm + mm) - heightMm));
            const key = `${partId} ${rib.id}`;
            if (over > 2) held.set(key, Math.max(held.get(key) ?? 0, over));
          }
      }
    }
  }
  return held;
}

/** The highest wood over a place along a rib, where its top was not opened. */
const topAt = (rib: Opened, alongMm: number): number =>
  woodAt(rib, alongMm).reduce((top, [, high]) => {
    const own = (rib.openings ?? []).filter(({ alongMm: [from, to] }) => alongMm > from && alongMm < to);
    return Math.max(top, Math.min(high, ...own.map(({ openToMm }) => openToMm)));
  }, Number.NEGATIVE_INFINITY);

/** A rib with what was sawn out of its top as the program told. */
type Opened = Rib & { readonly openings?: readonly ReleaseLock[] };

const opened = (set: RibSet): RibSet => ({
  ...set,
  ribs: set.ribs.map(
    (rib): Opened => ({ ...rib, openings: set.release.locks.filter(({ ribId }) => ribId === rib.id) }),
  ),
});

/** Points every so often where a plane cuts a triangle. */
function cutBy(
  { runs }: Rib,
  corners: readonly SpacePoint[],
  planeMm: number,
): readonly { readonly alongMm: number; readonly z: number }[] {
  const [across, along] = runs === "across" ? (["x", "y"] as const) : (["y", "x"] as const);
  const ends = corners.flatMap((b, i) => {
    const a = at(corners, i - 1);
    const [da, db] = [a[across] - planeMm, b[across] - planeMm];
    if (da > 0 === db > 0) return [];
    const share = da / (da - db);
    return [{ alongMm: a[along] + share * (b[along] - a[along]), z: a.z + share * (b.z - a.z) }];
  });
  const [a, b] = ends;
  if (!a || !b) return [];
  return Array.from({ length: 9 }, (_, i) => ({
    alongMm: a.alongMm + ((b.alongMm - a.alongMm) * i) / 8,
    z: a.z + ((b.z - a.z) * i) / 8,
  }));
}

const lockKeys = ({ release }: RibSet) =>
  release.locks.map(({ partId, ribId }) => `${partId} ${ribId}`).sort();

const RIBS = ["T1L A1", "T1L A2", "T1R A1", "T1R A2"];
/** A trough of two steep sheets, and a floor beside it that reaches over the foot of the first. */
const trough = designTray({
  ...tray(
    { p: straightProfile(-100, 100, 1200, 100) },
    [
      section(1, rectangle(0, 1000, 0, 300)),
      section(2, rectangle(0, 1000, 300, 350), { tiltRad: -Math.PI / 3 }),
      section(3, rectangle(0, 1000, 355, 600)),
    ],
    { thicknessMm: 10 },
  ),
  jig: { ...plainJig, attitude: "upright", across: { kind: "typed", atMm: [300] } },
});

describe.each([
  {
    tray: "a lip that returns under the floor, its core over wood",
    design: trayOf([lip(250, 20)]),
    keys: RIBS,
  },
  { tray: "the same with its core outside: its foot", design: trayOf([lip(250, 20, "below")]), keys: RIBS },
  { tray: "a lip that leans outward", design: trayOf([lip(340, 20)]), keys: [] },
  { tray: "a lip that leans outward with its core below", design: trayOf([lip(400, 60, "below")]), keys: [] },
  { tray: "an upright wall, its core inboard", design: trayOf([lip(300, 20)]), keys: RIBS },
  { tray: "a steep sheet whose foot reaches under its neighbour", design: trough, keys: ["S2 A1"] },
])("$tray", ({ design, keys }) => {
  const { release } = design.jig;

  it(keys.length > 0 ? "locks the shell, and the parts and ribs are named" : "comes off", () => {
    expect(lockKeys(design.jig)).toEqual(keys);
    const told = design.problems.flatMap((problem) => (problem.kind === "shell-locked" ? [problem] : []));
    expect(told.map(({ name, ribName }) => `${name} ${ribName.replace("rib ", "")}`).sort()).toEqual(keys);
  });

  it("is judged as its bodies of foam are, lifted through the wood", () => {
    const held = heldBy(design, design.jig);
    expect([...held.keys()].sort()).toEqual(keys);
    for (const { partId, ribId, overMm } of release.locks) {
      expect(Math.abs(overMm - (held.get(`${partId} ${ribId}`) ?? 0))).toBeLessThan(2);
    }
  });

  it("comes off ribs that were opened as the words tell", () => {
    expect([...heldBy(design, opened(design.jig))]).toEqual([]);
  });
});

it("tells what to do in words, on screen and page and at the problem", () => {
  const { jig, problems } = trayOf([lip(250, 20)]);
  const [words] = problems.filter(({ kind }) => kind === "shell-locked").map(wordProblem);
  expect(words).toMatch(
    /^T1R reaches 76\.\d mm under rib A1 near x 300\.0, y 24\d\.\d: the shell does not lift off the jig/,
  );
  expect(words).toMatch(
    /open rib A1 from its top between y 240\.\d and y 25\d\.\d, down to 57\.0 mm over the board/,
  );
  expect(wordRelease(jig.release, "jig").join(" ")).toMatch(
    /T1R reaches 76\.\d mm under rib A1 \(from 240\.\d to 25/,
  );
});

describe("a fence that stands first", () => {
  const fenced = trayOf([
    fence(1, [planNode("a", 100, 150), planNode("b", 900, 150)], { standsFirst: true }),
  ]);
  const proofOf = (ribs: readonly Rib[]) => {
    const { sheets, jig } = fenced;
    const project = tray({}, [], { thicknessMm: 10 });
    const face = restingFace(sheets, "upright");
    if (face === undefined) throw new Error("the tray has a face");
    return releaseOf(
      ribs,
      face,
      { fences: fenceBands(sheets, project), faces: [] },
      {
        attitude: "upright",
        heightOf: (z) => z - jig.baseboard.levelZMm,
        proudLimitMm: 1,
      },
    );
  };

  it("comes out of the notches of its ribs straight up", () => {
    expect(fenced.jig.ribs.every(({ notches }) => notches.length === 2)).toBe(true);
    expect([...heldBy(fenced, fenced.jig)]).toEqual([]);
    expect(fenced.jig.release.locks).toEqual([]);
  });

  it("is named with the rib and its depth where a notch is missing", () => {
    const bare = fenced.jig.ribs.map((rib): Rib => {
      const us = rib.outlineMm.map(({ u }) => u);
      const [least, most] = [Math.min(...us), Math.max(...us)];
      const topMm = Math.max(...rib.outlineMm.map(({ v }) => v));
      const outlineMm = [
        { u: least, v: 0 },
        { u: most, v: 0 },
        { u: most, v: topMm },
        { u: least, v: topMm },
      ];
      return { ...rib, outlineMm };
    });
    const { locks } = proofOf(bare);
    expect(locks.map(({ by, partId, ribId }) => [by, partId, ribId])).toEqual(
      ["A1", "A2"].flatMap((rib) => ["F1R", "F1L"].map((part) => ["fence", part, rib])),
    );
    // The finished fence hangs 40 mm under the air face, and the wood stands 0.8 over that face.
    for (const { overMm } of locks) expect(overMm).toBeCloseTo(40.8, 6);
  });
});

describe.each(["upright", "inverted"] as const)("the demo on its %s jig and cradle", (attitude) => {
  it("comes off, and so do its bodies lifted through the wood", () => {
    const demo = readExample("hill-climb-floor");
    const design = designTray({
      ...demo,
      jig: {
        ...demo.jig,
        attitude,
        along: { kind: "typed", atMm: [120, 250] },
        making: { cradle: { paddingMm: 4 } },
      },
    });
    const { jig } = design;
    expect(jig.release.locks).toEqual([]);
    expect(jig.cradle?.release.locks).toEqual([]);
    // Its fences come after turning: they are not there yet.
    expect([...heldBy(design, jig)].filter(([key]) => !key.startsWith("F"))).toEqual([]);
  });
});
