import { describe, expect, it } from "vitest";
import type { CurvePiece } from "../../../core/curves/index.ts";
import { at } from "../../../core/foundation/index.ts";
import type { Part } from "../../../core/patterns/index.ts";
import { type Project, resolveLines } from "../../../core/project/index.ts";
import { faceOver, type SectionSheet } from "../../../core/surfaces/index.ts";
import type { BruteSheet } from "../brute-force.ts";
import { bruteAreaOverCircle, brutePlumbLength } from "../brute-walls.ts";
import { boxNodes, circleNodes, opening, withOpenings } from "../openings.ts";
import {
  arcProfile,
  edgeOf,
  type LaidTray,
  layTray,
  partOf,
  rectangle,
  relativeMiss,
  section,
  sideNode,
  soundTray,
  straightProfile,
  tray,
} from "../trays.ts";

const RELATIVE = 1e-6;
/** Ends of edges that meet in a flat pattern. */
const CLOSED_MM = 1e-6;
/** Half of 20 mm of foam and a skin of 0.8 mm. */
const NEUTRAL_MM = 10.8;

const sectionOf = (laid: LaidTray, id: string): SectionSheet => {
  const sheet = laid.sheets.find((one) => one.id === id);
  if (sheet?.kind !== "section") throw new Error(`no section ${id}`);
  return sheet;
};

function expectClosed(laid: LaidTray): void {
  for (const { id, loops } of laid.parts) {
    for (const { edges } of loops) {
      edges.forEach(({ points }, i) => {
        const [a, b] = [at(at(edges, i - 1).points, -1), at(points, 0)];
        expect(Math.hypot(b.u - a.u, b.v - a.v), id).toBeLessThan(CLOSED_MM);
      });
    }
  }
}

function expectFigures(laid: LaidTray): void {
  expectClosed(laid);
  for (const part of laid.parts) {
    expect(relativeMiss(part.flatAreaMm2, part.spaceAreaMm2)).toBeLessThan(RELATIVE);
    for (const edge of part.edges) {
      expect(relativeMiss(edge.flatLengthMm, edge.spaceLengthMm), edge.edgeId).toBeLessThan(RELATIVE);
    }
  }
}

const holesOf = (part: Part) => part.loops.slice(1);

const flatProfile = straightProfile(0, 100, 1000, 100);
const plain = (settings = {}) => tray({ p: flatProfile }, [section(1, rectangle(0, 1000, 0, 400))], settings);

describe("an opening in a level section", () => {
  it("is a hole of its own size, square to the sheet whichever way it is cut", () => {
    for (const changes of [{}, { cut: "square", itemId: "s1" }] as const) {
      const laid = soundTray(withOpenings(plain(), opening(1, circleNodes(400, 200, 80), changes)));
      const part = partOf(laid, "S1");
      expectFigures(laid);
      expect(holesOf(part).length).toBe(1);
      expect(relativeMiss(part.spaceAreaMm2, 400_000 - Math.PI * 6400)).toBeLessThan(1e-9);
      const lengths = part.edges.filter(({ edgeId }) => edgeId.startsWith("oh1."));
      expect(lengths.length).toBe(4);
      const around = lengths.reduce((sum, edge) => sum + edge.spaceLengthMm, 0);
      expect(relativeMiss(around, 2 * Math.PI * 80)).toBeLessThan(1e-9);
      for (const { bevelRad, name } of lengths) {
        expect(name).toBe("Hatch 1");
        for (const angle of bevelRad) expect(Math.abs(angle)).toBeLessThan(1e-12);
      }
    }
  });

  it("across its edge is a bite; the edge stays one with its name on both sides", () => {
    const laid = soundTray(withOpenings(plain(), opening(1, boxNodes(300, 500, 300, 500))));
    const part = partOf(laid, "S1");
    expectFigures(laid);
    expect(part.loops.length).toBe(1);
    expect(relativeMiss(part.flatAreaMm2, 400_000 - 200 * 100)).toBeLessThan(1e-9);
    expect(edgeOf(part, "outer").spaceLengthMm).toBeCloseTo(800, 9);
    expect(edgeOf(part, "oh1.a").spaceLengthMm).toBeCloseTo(200, 9);
  });

  it("that names another sheet cuts none, and says so", () => {
    const two = tray({ p: flatProfile }, [
      section(1, rectangle(0, 1000, 0, 400)),
      section(2, rectangle(0, 1000, 500, 700)),
    ]);
    const hatch = opening(1, circleNodes(400, 200, 80), { cut: "square", itemId: "s2" });
    const laid = layTray(withOpenings(two, hatch));
    expect(laid.problems.map(({ kind }) => kind)).toEqual(["opening-cuts-nothing"]);
    expect(laid.problems[0]?.place).toEqual({ openingId: "h1" });
    expect(holesOf(partOf(laid, "S1")).length).toBe(0);
  });

  it("that takes the whole sheet leaves none, and names it", () => {
    const laid = layTray(withOpenings(plain(), opening(1, boxNodes(-10, 1010, -10, 410))));
    expect(laid.parts).toEqual([]);
    expect(laid.problems.map(({ kind }) => kind)).toContain("opening-leaves-nothing");
  });
});

describe("an opening that cuts a section apart", () => {
  const slot = opening(1, boxNodes(400, 600, -50, 450));

  it("makes two sheets, front before rear, whichever way they are drawn", () => {
    const laid = soundTray(withOpenings(plain(), slot));
    expect(laid.parts.map(({ id, name }) => [id, name])).toEqual([
      ["S1.1", "Section 1 1"],
      ["S1.2", "Section 1 2"],
    ]);
    expectFigures(laid);
    expect(sectionOf(laid, "S1.1").planBox[1].x).toBeCloseTo(400, 9);
    expect(sectionOf(laid, "S1.2").planBox[0].x).toBeCloseTo(600, 9);
  });

  it("along its length makes two sheets, inboard before outboard", () => {
    const laid = soundTray(withOpenings(plain(), opening(1, boxNodes(-50, 1050, 150, 220))));
    expect(laid.parts.map(({ id }) => id)).toEqual(["S1.1", "S1.2"]);
    expect(sectionOf(laid, "S1.1").planBox[1].y).toBeCloseTo(150, 9);
    expect(relativeMiss(partOf(laid, "S1.1").flatAreaMm2, 150_000)).toBeLessThan(1e-9);
    expect(relativeMiss(partOf(laid, "S1.2").flatAreaMm2, 180_000)).toBeLessThan(1e-9);
  });

  it("keeps its numbers when it moves a little", () => {
    const four = [
      opening(1, boxNodes(400, 600, -50, 450)),
      opening(2, boxNodes(-50, 1050, 190, 210)),
    ] as const;
    const centres = (laid: LaidTray) =>
      ["S1.1", "S1.2", "S1.3", "S1.4"].map((id) => {
        const [least, most] = sectionOf(laid, id).planBox;
        return [Math.round((least.x + most.x) / 400), Math.round((least.y + most.y) / 400)];
      });
    const still = centres(soundTray(withOpenings(plain(), ...four)));
    expect(still).toEqual([
      [1, 0],
      [1, 2],
      [4, 0],
      [4, 2],
    ]);
    const skewed = {
      ...four[0],
      outline: {
        closed: true,
        elements: four[0].outline.elements.map((node) =>
          node.kind === "node" && node.id === "a" ? { ...node, x: 430, y: -40 } : node,
        ),
      },
    };
    expect(centres(soundTray(withOpenings(plain(), skewed, four[1])))).toEqual(still);
  });

  it("leaves each sheet's faces over its own side alone", () => {
    const rising = tray({ p: straightProfile(0, 100, 1000, 300) }, [section(1, rectangle(0, 1000, 0, 400))]);
    const laid = soundTray(withOpenings(rising, slot));
    const [front, rear] = [sectionOf(laid, "S1.1"), sectionOf(laid, "S1.2")];
    for (const depthMm of [0, NEUTRAL_MM, 20.8]) {
      const [overFront, overRear] = [faceOver(front, depthMm), faceOver(rear, depthMm)];
      for (const y of [10, 200, 390]) {
        expect(overFront({ x: 399.9, y })).toBeDefined();
        expect(overRear({ x: 399.9, y })).toBeUndefined();
        expect(overFront({ x: 400.1, y })).toBeUndefined();
        expect(overRear({ x: 599.9, y })).toBeUndefined();
        expect(overRear({ x: 600.1, y })).toBeDefined();
      }
    }
  });
});

const leaning = (riseMm: number, changes = {}, settings = {}) =>
  tray(
    { p: straightProfile(0, 100, 1000, 100 + riseMm) },
    [section(1, rectangle(0, 1000, 0, 400), changes)],
    settings,
  );

describe("an upright opening in a leaning section", () => {
  it("has bevels of the slope where its edge runs across it, of opposite sign on both sides, none along it", () => {
    const laid = soundTray(withOpenings(leaning(200), opening(1, boxNodes(300, 500, 100, 300))));
    const part = partOf(laid, "S1");
    const slopeRad = Math.atan(0.2);
    expectFigures(laid);
    const bevel = (id: string) => edgeOf(part, `oh1.${id}`).bevelRad;
    // The wall behind the front body stands plumb on a sheet that rises rearward: its normal leans forward, so that
    // the air face in front of the hole ends farther back than the upper one, and the one behind it likewise.
    for (const angle of bevel("d")) expect(angle).toBeCloseTo(-slopeRad, 9);
    for (const angle of bevel("b")) expect(angle).toBeCloseTo(slopeRad, 9);
    for (const id of ["a", "c"]) for (const angle of bevel(id)) expect(Math.abs(angle)).toBeLessThan(1e-12);
  });

  it("stands over its plan curve at every face, a square one over its foot", () => {
    const slopeRad = Math.atan(0.2);
    for (const cut of ["upright", "square"] as const) {
      const hatch = opening(1, boxNodes(300, 500, 100, 300), cut === "square" ? { cut, itemId: "s1" } : {});
      const laid = soundTray(withOpenings(leaning(200), hatch));
      const sheet = sectionOf(laid, "S1");
      for (const depthMm of [0, NEUTRAL_MM, 20.8]) {
        const over = faceOver(sheet, depthMm);
        const shift = cut === "square" ? depthMm * Math.sin(slopeRad) : 0;
        for (const [x, isThere] of [
          [299.9, true],
          [300.1, false],
          [499.9, false],
          [500.1, true],
        ] as const) {
          expect(over({ x: x - shift, y: 200 }) !== undefined).toBe(isThere);
        }
      }
    }
  });

  it("meets a square edge where both are at the neutral fibre", () => {
    // Tilted by τ about a line along the car: the square outer edge lies depth × sin τ farther in at the neutral fibre.
    const tiltRad = 0.3;
    const laid = soundTray(
      withOpenings(leaning(0, { tiltRad, pivotYMm: 0 }), opening(1, boxNodes(300, 500, 250, 500))),
    );
    const part = partOf(laid, "S1");
    expectFigures(laid);
    const lost = NEUTRAL_MM * Math.sin(tiltRad);
    const side = (150 - lost) / Math.cos(tiltRad);
    expect(relativeMiss(edgeOf(part, "oh1.b").spaceLengthMm, side)).toBeLessThan(1e-9);
    expect(relativeMiss(edgeOf(part, "oh1.d").flatLengthMm, side)).toBeLessThan(1e-9);
    expect(relativeMiss(part.flatAreaMm2, (1000 * 400) / Math.cos(tiltRad) - 200 * side)).toBeLessThan(1e-9);
  });

  it("with an edge along the sheet's own edge opens that edge and leaves no sliver", () => {
    for (const riseMm of [200, -90]) {
      const laid = soundTray(withOpenings(leaning(riseMm), opening(1, boxNodes(800, 1000, 100, 300))));
      expectClosed(laid);
      const part = partOf(laid, "S1");
      expect(part.loops.length).toBe(1);
      expect(edgeOf(part, "rear").spaceLengthMm).toBeCloseTo(200, 6);
    }
  });

  it("that grazes the edge on the air side alone keeps its pattern closed, cut as it is in the middle of the foam", () => {
    // The circle reaches 1 mm over the rear edge; where the sheet falls rearward the foam's middle ends 1 mm farther back.
    for (const [riseMm, loops] of [
      [200, 1],
      [-90, 1],
      [-200, 2],
    ] as const) {
      const tall = tray({ p: straightProfile(0, 400, 1000, 400 + riseMm) }, [
        section(1, rectangle(0, 1000, 0, 400)),
      ]);
      const laid = soundTray(withOpenings(tall, opening(1, circleNodes(921, 200, 80))), ["web-too-narrow"]);
      expectFigures(laid);
      expect(partOf(laid, "S1").loops.length).toBe(loops);
    }
  });

  it("that grazes a corner on the air side keeps its pattern closed", () => {
    for (const riseMm of [-200, 200]) {
      const tall = tray({ p: straightProfile(0, 400, 1000, 400 + riseMm) }, [
        section(1, rectangle(0, 1000, 0, 400)),
      ]);
      for (let by = -4; by <= 4; by++) {
        const hatch = opening(1, boxNodes(800, 1000 + by, 300, 450));
        const laid = soundTray(withOpenings(tall, hatch), ["web-too-narrow"]);
        expectFigures(laid);
      }
    }
  });
});

const ARC = { radiusMm: 600, sweepRad: 0.9 };
const bent = (changes = {}, settings = {}): Project =>
  tray(
    { p: arcProfile([-10, 100], ARC.radiusMm, ARC.sweepRad, 1) },
    [section(1, rectangle(120, 340, 0, 400), changes)],
    // Bent whole, for checking.
    { leastBendRatio: 1, ...settings },
  );

function bruteOf(project: Project): { readonly sheet: BruteSheet; readonly pieces: readonly CurvePiece[] } {
  const lines = resolveLines(project);
  const [item] = project.items;
  if (item?.kind !== "section") throw new Error("a section");
  return {
    sheet: {
      profile: lines.profiles.p?.pieces ?? [],
      pivotYMm: item.pivotYMm ?? 0,
      headingRad: item.headingRad,
      tiltRad: item.tiltRad,
    },
    pieces: lines.openings.h1?.pieces ?? [],
  };
}

describe("an upright opening in a bent section", () => {
  const poses = [
    {},
    { headingRad: 0.25, pivotYMm: 0 },
    { tiltRad: -0.2, pivotYMm: 0 },
    { headingRad: -0.2, tiltRad: 0.15, pivotYMm: 100 },
  ];

  it("has edges and area as on the neutral surface over its plan curve, by brute force", {
    timeout: 60_000,
  }, () => {
    for (const pose of poses) {
      const project = withOpenings(bent(pose), opening(1, circleNodes(230, 200, 70)));
      const laid = soundTray(project, ["bend-too-tight"]);
      expectFigures(laid);
      const { sheet, pieces } = bruteOf(project);
      const part = partOf(laid, "S1");
      for (const id of ["c0", "c1", "c2", "c3"]) {
        const own = pieces.filter(({ edgeId }) => edgeId === id);
        const expected = own.reduce((sum, piece) => sum + brutePlumbLength(sheet, piece, NEUTRAL_MM), 0);
        const onAir = own.reduce((sum, piece) => sum + brutePlumbLength(sheet, piece, 0), 0);
        expect(relativeMiss(edgeOf(part, `oh1.${id}`).spaceLengthMm, expected)).toBeLessThan(RELATIVE);
        expect(relativeMiss(edgeOf(part, `oh1.${id}`).drawnLengthMm, onAir)).toBeLessThan(RELATIVE);
      }
      const wholeMm2 = partOf(soundTray(bent(pose), ["bend-too-tight"]), "S1").spaceAreaMm2;
      const holeMm2 = bruteAreaOverCircle(sheet, { x: 230, y: 200 }, 70, NEUTRAL_MM);
      expect(Math.abs(wholeMm2 - holeMm2 - part.spaceAreaMm2) / wholeMm2).toBeLessThan(RELATIVE);
    }
  });

  it("over an edge keeps flat and space figures the same", () => {
    for (const pose of poses) {
      const laid = soundTray(withOpenings(bent(pose), opening(1, circleNodes(230, 380, 70))), [
        "bend-too-tight",
      ]);
      expectFigures(laid);
      expect(partOf(laid, "S1").loops.length).toBe(1);
    }
  });
});

describe("an upright opening across a fold", () => {
  const folded = tray({ p: [sideNode("a", 0, 100), sideNode("b", 500, 100), sideNode("c", 1000, 220)] }, [
    section(1, rectangle(0, 1000, 0, 400)),
  ]);

  it("cuts both sheets, and they still meet along what is left of the fold", () => {
    const laid = soundTray(withOpenings(folded, opening(1, circleNodes(500, 200, 80))));
    expectClosed(laid);
    expect(laid.parts.map(({ id }) => id)).toEqual(["S1.1", "S1.2"]);
    const fold = laid.joints.filter(({ kind }) => kind === "corner");
    const lengthMm = fold.reduce((sum, joint) => sum + joint.lengthMm, 0);
    expect(lengthMm).toBeGreaterThan(239);
    expect(lengthMm).toBeLessThan(241);
  });

  it("that divides the rear sheet alone makes three sheets and two folds", () => {
    const laid = soundTray(withOpenings(folded, opening(1, boxNodes(480, 1050, 150, 250))));
    expectClosed(laid);
    expect(laid.parts.map(({ id }) => id)).toEqual(["S1.1", "S1.2", "S1.3"]);
    const pairs = laid.joints.filter(({ kind }) => kind === "corner").map(({ partIds }) => partIds.join("/"));
    expect(pairs.sort()).toEqual(["S1.1/S1.2", "S1.1/S1.3"]);
  });
});

describe("openings of a mirrored tray", () => {
  const mirrored = (fromY: number, changes = {}) =>
    tray({ p: straightProfile(0, 100, 1000, 250) }, [section(1, rectangle(0, 1000, fromY, 400), changes)], {
      symmetry: "mirrored",
    });

  it("are cut into both hands", () => {
    const laid = soundTray(withOpenings(mirrored(50), opening(1, circleNodes(400, 200, 80))));
    expect(laid.parts.map(({ id }) => id)).toEqual(["S1R", "S1L"]);
    for (const part of laid.parts) expect(holesOf(part).length).toBe(1);
    const [right, left] = laid.parts.map(({ edges }) =>
      edges.map(({ edgeId, flatLengthMm }) => `${edgeId} ${flatLengthMm.toFixed(6)}`).sort(),
    );
    expect(right).toEqual(left);
  });

  it("are cut twice into a sheet that is whole, with names for both", () => {
    const laid = soundTray(withOpenings(mirrored(0), opening(1, circleNodes(400, 200, 80))));
    expectFigures(laid);
    const part = partOf(laid, "S1");
    expect(holesOf(part).length).toBe(2);
    expect(edgeOf(part, "oh1.c0").name).toBe("Hatch 1, right");
    expect(edgeOf(part, "oh1.c0.left").name).toBe("Hatch 1, left");
  });

  it("join their images along a piece on the centre line", () => {
    const laid = soundTray(withOpenings(mirrored(0), opening(1, boxNodes(300, 500, 0, 100))));
    expectFigures(laid);
    const part = partOf(laid, "S1");
    expect(holesOf(part).length).toBe(1);
    const slope = Math.hypot(1, 0.15);
    expect(relativeMiss(part.flatAreaMm2, (1000 * 800 - 200 * 200) * slope)).toBeLessThan(1e-8);
  });

  it("from edge to edge divide a whole sheet", () => {
    const laid = soundTray(withOpenings(mirrored(0), opening(1, boxNodes(300, 500, 0, 450))));
    expect(laid.parts.map(({ id }) => id)).toEqual(["S1.1", "S1.2"]);
    expectFigures(laid);
  });

  it("at the centre line take that stretch from a joint between two hands", () => {
    const laid = soundTray(
      withOpenings(mirrored(0, { tiltRad: 0.1, pivotYMm: 0 }), opening(1, boxNodes(300, 500, 0, 100))),
    );
    expectClosed(laid);
    expect(laid.parts.map(({ id }) => id)).toEqual(["S1R", "S1L"]);
    const lengthMm = laid.joints
      .filter(({ kind }) => kind === "centre")
      .reduce((sum, joint) => sum + joint.lengthMm, 0);
    expect(relativeMiss(lengthMm, 800 * Math.hypot(1, 0.15))).toBeLessThan(1e-6);
  });
});
