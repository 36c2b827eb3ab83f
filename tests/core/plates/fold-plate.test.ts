import { describe, expect, it } from "vitest";
import { levelOf, wordProblem } from "../../../core/foundation/index.ts";
import { apart, corner, fromOutlineMm, minus, onlyPart, polygonOf, shoelaceMm2 } from "./measure-plates.ts";
import { fold, planNode, rectangle, soundPlate, wing } from "./plates.ts";

const DIGITS = 9;
const box = rectangle(0, 300, 0, 200);
const RIGHT = Math.PI / 2;

describe("a flat base with one wing", () => {
  const plate = soundPlate(box, [wing("r")]);
  const part = onlyPart(plate);
  const bend = corner(part.bends, 0);

  it("is as long as both outside lengths less one deduction", () => {
    // K 0.5, R 3, t 2: allowance 4 · π / 2, set-back 5, deduction 10 − 2 π.
    expect(bend.figures.allowanceMm).toBeCloseTo(2 * Math.PI, DIGITS);
    expect(bend.figures.setBackMm).toBeCloseTo(5, DIGITS);
    expect(bend.figures.deductionMm).toBeCloseTo(10 - 2 * Math.PI, DIGITS);
    expect(part.lengthMm).toBeCloseTo(300 + 40 - (10 - 2 * Math.PI), DIGITS);
    expect(part.widthMm).toBeCloseTo(200, DIGITS);
  });

  it("has its three bend lines at the tangents and between them", () => {
    expect(corner(bend.baseTangent, 0).u).toBeCloseTo(295, DIGITS);
    expect(corner(bend.middle, 0).u).toBeCloseTo(295 + Math.PI, DIGITS);
    expect(corner(bend.wingTangent, 0).u).toBeCloseTo(295 + 2 * Math.PI, DIGITS);
    expect(corner(bend.middle, 0).v).toBeCloseTo(0, DIGITS);
    expect(corner(bend.middle, 1).v).toBeCloseTo(200, DIGITS);
    expect(bend.figures.direction).toBe("up");
  });

  it("folds so that the outside of the wing stands over the drawn edge, as long as typed", () => {
    const [edge] = plate.wingEdges;
    expect(edge?.startNodeId).toBe("w-r-start");
    expect(edge?.endNodeId).toBe("w-r-end");
    const air = edge?.air ?? [];
    expect(corner(air, 0)).toEqual({
      x: expect.closeTo(300, DIGITS),
      y: expect.closeTo(0, DIGITS),
      z: expect.closeTo(90, DIGITS),
    });
    expect(corner(air, 1).y).toBeCloseTo(200, DIGITS);
    expect(corner(edge?.upper ?? [], 0).x).toBeCloseTo(298, DIGITS);
  });

  it("weighs what its blank weighs", () => {
    const areaMm2 = 200 * (330 + 2 * Math.PI);
    expect(plate.flatAreaMm2).toBeCloseTo(areaMm2, 6);
    expect(plate.massKg).toBeCloseTo(areaMm2 * 2 * 2700e-9, DIGITS);
  });
});

describe("a wing that is bent down", () => {
  const plate = soundPlate(box, [wing("r", { angleRad: -Math.PI / 3 })]);
  const bend = corner(onlyPart(plate).bends, 0);

  it("begins its bend nearer to the edge, whose air faces are the hollow side", () => {
    expect(bend.figures.direction).toBe("down");
    expect(bend.figures.airSetBackMm).toBeCloseTo(3 * Math.tan(Math.PI / 6), DIGITS);
    expect(bend.figures.setBackMm).toBeCloseTo(5 * Math.tan(Math.PI / 6), DIGITS);
  });

  it("is as long as typed along its outer face, which is the upper one", () => {
    const folded = corner(plate.wings, 0);
    // The mould line of the upper faces lies t tan(A / 2) beyond the drawn edge, at the upper face of the base.
    const mould = { x: 300 + 2 * Math.tan(Math.PI / 6), y: 0, z: 52 };
    expect(apart(mould, corner(folded.upperFace, 3))).toBeCloseTo(40, DIGITS);
    expect(corner(folded.airFace, 3).z).toBeLessThan(50);
  });

  it("meets the base's air face in the drawn edge", () => {
    const folded = corner(plate.wings, 0);
    const [foot, free] = [corner(folded.airFace, 0), corner(folded.airFace, 3)];
    const along = minus(free, foot);
    const t = (50 - foot.z) / along.z;
    expect(foot.x + along.x * t).toBeCloseTo(300, DIGITS);
  });
});

describe("a measured bend deduction", () => {
  it("takes the place of the K factor", () => {
    const plate = soundPlate(box, [wing("r", { deductionMm: 4.1 })]);
    const { figures } = corner(onlyPart(plate).bends, 0);
    expect(figures.kFactorFrom).toBe("typed deduction");
    expect(figures.allowanceMm).toBeCloseTo(5.9, DIGITS);
    expect(figures.kFactor).toBeCloseTo((5.9 / RIGHT - 3) / 2, DIGITS);
    expect(onlyPart(plate).lengthMm).toBeCloseTo(340 - 4.1, DIGITS);
  });

  it("is named, and the K factor used, where no metal can have it", () => {
    for (const deductionMm of [-3, 9.9, 40, Number.NaN]) {
      const { plate, problems } = fold(box, [wing("r", { deductionMm })]);
      expect(problems.map(({ kind }) => kind)).toEqual(["number-out-of-range"]);
      expect(plate && onlyPart(plate).lengthMm).toBeCloseTo(330 + 2 * Math.PI, DIGITS);
    }
  });
});

describe("the ends of bends", () => {
  it("lie on the outline without a cut where the base ends square there", () => {
    const part = onlyPart(soundPlate(box, [wing("r")]));
    expect(part.loops.flatMap(({ edges }) => edges).filter(({ role }) => role === "relief")).toEqual([]);
  });

  it("inside the sheet are freed by a cut a thickness wide that goes R + t past the bend's middle and past the bend", () => {
    for (const angleRad of [0.4, RIGHT, 2.6]) {
      const part = onlyPart(
        soundPlate(box, [wing("r", { angleRad, startInsetMm: 20, endInsetMm: 30, lengthMm: 90 })]),
      );
      const reliefs = part.loops.flatMap(({ edges }) => edges).filter(({ role }) => role === "relief");
      expect(reliefs.map(({ edgeId }) => edgeId)).toEqual(["w-r-start-relief", "w-r-end-relief"]);
      const bend = corner(part.bends, 0);
      for (const { points } of reliefs) {
        const us = points.map(({ u }) => u);
        const vs = points.map(({ v }) => v);
        expect(Math.max(...vs) - Math.min(...vs)).toBeCloseTo(2, DIGITS);
        expect(corner(bend.middle, 0).u - Math.min(...us)).toBeGreaterThanOrEqual(5 - 1e-9);
        expect(corner(bend.baseTangent, 0).u - Math.min(...us)).toBeGreaterThanOrEqual(2 - 1e-9);
      }
      expect(corner(bend.middle, 0).v).toBeCloseTo(20, DIGITS);
      expect(corner(bend.middle, 1).v).toBeCloseTo(170, DIGITS);
    }
  });

  it("share one cut where two wings meet at a corner, a thickness or more between them", () => {
    const part = onlyPart(
      soundPlate(
        box,
        ["i", "r", "o", "f"].map((id) => wing(id)),
      ),
    );
    for (const [i, bend] of part.bends.entries()) {
      const next = corner(part.bends, (i + 1) % 4);
      const gap = apart(
        { ...inPlan(corner(bend.baseTangent, 1)), z: 0 },
        { ...inPlan(corner(next.baseTangent, 0)), z: 0 },
      );
      expect(gap).toBeGreaterThanOrEqual(2);
    }
    expect(part.loops.flatMap(({ edges }) => edges).filter(({ role }) => role === "base")).toEqual([]);
  });

  it("stop where a base that narrows ends at the tangent", () => {
    const trapezium = [
      planNode("a", 0, 0),
      planNode("b", 300, 0),
      planNode("c", 200, 200),
      planNode("d", 100, 200),
    ];
    const part = onlyPart(soundPlate(trapezium, [wing("a")]));
    const bend = corner(part.bends, 0);
    // The sides come in by a half of a mm for each mm up; the bend begins 5 mm up.
    expect(corner(bend.baseTangent, 0).u).toBeCloseTo(2.5, DIGITS);
    expect(corner(bend.baseTangent, 1).u).toBeCloseTo(297.5, DIGITS);
    for (const end of bend.baseTangent) expect(fromOutlineMm(end, corner(part.loops, 0))).toBeLessThan(1e-9);
  });

  it("keep clear of the base beside an inner corner", () => {
    const corners = [
      [0, 0],
      [300, 0],
      [300, 100],
      [100, 100],
      [100, 300],
      [0, 300],
    ] as const;
    const elements = corners.map(([x, y], i) => planNode(`n${i}`, x, y));
    const part = onlyPart(soundPlate(elements, [wing("n2")]));
    const bend = corner(part.bends, 0);
    expect(corner(bend.middle, 1).u).toBeCloseTo(102, DIGITS);
  });

  it("of two wings on one edge are parted by one slot where they are near", () => {
    const part = onlyPart(
      soundPlate(box, [wing("r", { endInsetMm: 100 }), wing("r", { id: "second", startInsetMm: 100 })]),
    );
    const [first, second] = part.bends;
    expect(corner(first?.middle ?? [], 1).v).toBeCloseTo(99, DIGITS);
    expect(corner(second?.middle ?? [], 0).v).toBeCloseTo(101, DIGITS);
    expect(shoelaceMm2(polygonOf(corner(part.loops, 0)))).toBeCloseTo(
      200 * (330 + 2 * Math.PI) - 2 * (42 + 2 * Math.PI - 5),
      6,
    );
  });
});

const inPlan = ({ u, v }: { readonly u: number; readonly v: number }) => ({ x: u, y: v });

describe("a plate of a mirrored tray", () => {
  it("is whole where it touches the centre line, with one wing over it", () => {
    const plate = soundPlate(box, [wing("r"), wing("o")], { symmetry: "mirrored" });
    expect(plate.parts.map(({ id, hand }) => [id, hand])).toEqual([["P1", "whole"]]);
    const part = onlyPart(plate);
    expect(part.bends.map(({ id }) => id)).toEqual(["w-r", "w-o", "w-o.left"]);
    expect(corner(part.bends, 0).lengthMm).toBeCloseTo(2 * 193, DIGITS);
    const rear = plate.wingEdges.find(({ wingId }) => wingId === "w-r");
    expect(rear?.air.map(({ y }) => y)).toEqual([0, expect.closeTo(193, DIGITS)]);
    expect(plate.wingEdges.map(({ wingId }) => wingId)).toEqual(["w-r", "w-o"]);
  });

  it("has two wings on an edge over the centre line where each stops short of it", () => {
    const plate = soundPlate(box, [wing("r", { startInsetMm: 15 })], { symmetry: "mirrored" });
    const part = onlyPart(plate);
    expect(part.bends.map(({ id, name }) => [id, name])).toEqual([
      ["w-r.left", "wing 1, left"],
      ["w-r", "wing 1, right"],
    ]);
    expect(part.bends.flatMap(({ middle }) => middle.map(({ v }) => v))).toEqual(
      [-200, -15, 15, 200].map((v) => expect.closeTo(v, DIGITS)),
    );
  });

  it("is made on both hands where it lies off the centre line, the left one the image", () => {
    const plate = soundPlate(rectangle(0, 300, 40, 200), [wing("r", { startTaperRad: 0.3 }), wing("f")], {
      symmetry: "mirrored",
    });
    const [right, left] = plate.parts;
    expect([right?.id, left?.id]).toEqual(["P1R", "P1L"]);
    const rightPoints = polygonOf(corner(right?.loops ?? [], 0));
    const leftPoints = polygonOf(corner(left?.loops ?? [], 0));
    const key = ({ u, v }: { readonly u: number; readonly v: number }) => `${u.toFixed(6)} ${v.toFixed(6)}`;
    expect(leftPoints.map(key).toSorted()).toEqual(
      rightPoints.map(({ u, v }) => key({ u, v: -v })).toSorted(),
    );
    expect(shoelaceMm2(leftPoints)).toBeCloseTo(shoelaceMm2(rightPoints), 6);
    expect(left?.bends.map(({ figures }) => figures.direction)).toEqual(["up", "up"]);
  });
});

describe("the direction in which a base was drawn", () => {
  it("does not change its flat", () => {
    const ids = ["i", "r", "o", "f"];
    const forward = onlyPart(soundPlate(box, [wing("r", { startInsetMm: 10, startTaperRad: 0.2 })]));
    // Drawn the other way round, the rear edge leaves its other node.
    const backward = onlyPart(
      soundPlate(box.toReversed(), [wing("o", { id: "w-r", startInsetMm: 10, startTaperRad: 0.2 })]),
    );
    expect(ids).toHaveLength(4);
    const key = ({ u, v }: { readonly u: number; readonly v: number }) => `${u.toFixed(6)} ${v.toFixed(6)}`;
    expect(polygonOf(corner(backward.loops, 0)).map(key).toSorted()).toEqual(
      polygonOf(corner(forward.loops, 0)).map(key).toSorted(),
    );
  });
});

describe("a node that is put into a straight edge with a wing", () => {
  const whole = onlyPart(soundPlate(box, [wing("r", { startInsetMm: 10, endInsetMm: 25 })]));
  const key = ({ u, v }: { readonly u: number; readonly v: number }) => `${u.toFixed(6)} ${v.toFixed(6)}`;
  const flatOf = (ids: readonly string[], edgeId: string) => {
    const nodes = [planNode("i", 0, 0), planNode("r", 300, 0)];
    const inside = ids.map((id, i) => planNode(id, 300, 60 * (i + 1)));
    const elements = [...nodes, ...inside, planNode("o", 300, 200), planNode("f", 0, 200)];
    return onlyPart(soundPlate(elements, [wing(edgeId, { startInsetMm: 10, endInsetMm: 25 })]));
  };

  it("changes nothing of its flat, whichever of the stretches bears the wing", () => {
    for (const edgeId of ["r", "m", "n"]) {
      const points = polygonOf(corner(flatOf(["m", "n"], edgeId).loops, 0)).map(key);
      expect(points).toEqual(polygonOf(corner(whole.loops, 0)).map(key));
    }
  });

  it("keeps wings of two stretches apart", () => {
    const elements = [...box.slice(0, 2), planNode("m", 300, 120), ...box.slice(2)];
    const part = onlyPart(soundPlate(elements, [wing("r"), wing("m")]));
    expect(part.bends.map(({ middle }) => middle.map(({ v }) => v))).toEqual([
      [0, 119].map((v) => expect.closeTo(v, DIGITS)),
      [121, 200].map((v) => expect.closeTo(v, DIGITS)),
    ]);
  });
});

describe("what cannot be bent", () => {
  const kindsOf = (...given: Parameters<typeof fold>) => {
    const { plate, problems } = fold(...given);
    for (const problem of problems) expect(wordProblem(problem).length).toBeGreaterThan(40);
    return { kinds: problems.map(({ kind }) => kind), levels: problems.map(levelOf), plate };
  };

  it("a wing too short to hold is named; one that ends within its bend is left out", () => {
    // Set-back 5, and 2 t + R = 7 beyond the bend.
    expect(kindsOf(box, [wing("r", { lengthMm: 12 })]).kinds).toEqual([]);
    const short = kindsOf(box, [wing("r", { lengthMm: 11.9 })]);
    expect(short).toMatchObject({ kinds: ["wing-flange-too-short"], levels: ["look"] });
    expect(short.plate?.wings).toHaveLength(1);
    const gone = kindsOf(box, [wing("r", { lengthMm: 4 })]);
    expect(gone).toMatchObject({ kinds: ["wing-flange-too-short"], levels: ["stop"] });
    expect(gone.plate?.wings).toHaveLength(0);
  });

  it("a radius under the metal's least is named", () => {
    const metal = { leastRadiusRatio: 1.5 };
    expect(kindsOf(box, [wing("r")], { metal }).kinds).toEqual([]);
    const tight = kindsOf(box, [wing("r", { insideRadiusMm: 2.9 })], { metal });
    expect(tight).toMatchObject({ kinds: ["wing-radius-too-small"], levels: ["look"] });
  });

  it("a wing on a curve, on an edge that is not there or on the centre line is left out", () => {
    const curved = [
      planNode("i", 0, 0),
      planNode("r", 300, 0, { next: "curve" }),
      planNode("o", 300, 200),
      planNode("f", 0, 200),
    ];
    expect(kindsOf(curved, [wing("r")]).kinds).toEqual(["wing-edge-not-straight"]);
    expect(kindsOf(box, [wing("x")]).kinds).toEqual(["wing-edge-missing"]);
    expect(kindsOf(box, [wing("i")], { symmetry: "mirrored" }).kinds).toEqual(["wing-edge-missing"]);
  });

  it("a wing between rounded corners stands on its straight", () => {
    const round = rectangle(0, 300, 0, 200).map((node) => ({ ...node, radiusMm: 40 }));
    const part = onlyPart(soundPlate(round, [wing("r")]));
    const bend = corner(part.bends, 0);
    // The straight runs from 40 to 160; the rounded corners fall away beside it, so both ends need a cut.
    expect(bend.lengthMm).toBeCloseTo(120, DIGITS);
    const reliefs = corner(part.loops, 0).edges.filter(({ role }) => role === "relief");
    expect(reliefs).toHaveLength(2);
  });

  it("an angle of nothing, or back onto the base, is named", () => {
    for (const angleRad of [0, 3.1, -3.1, Number.NaN]) {
      expect(kindsOf(box, [wing("r", { angleRad })])).toMatchObject({ kinds: ["number-out-of-range"] });
    }
  });

  it("tapers that cross leave no free edge, insets that meet no bend", () => {
    const tapers = { startTaperRad: 1.25, endTaperRad: 1.25 };
    expect(kindsOf(box, [wing("r", tapers)]).kinds).toEqual(["wing-without-width"]);
    expect(kindsOf(box, [wing("r", { startInsetMm: 120, endInsetMm: 90 })]).kinds).toEqual([
      "wing-without-width",
    ]);
  });

  it("wings that lean into one another when folded are named, the later one left out", () => {
    const steep = { angleRad: 2.2, lengthMm: 200 };
    const both = kindsOf(box, [wing("o", steep), wing("i", steep)]);
    expect(both).toMatchObject({ kinds: ["wings-collide"], levels: ["stop"] });
    expect(both.plate?.wings.map(({ wingId }) => wingId)).toEqual(["w-o"]);
    const apartEnough = { angleRad: 2.2, lengthMm: 150 };
    expect(kindsOf(box, [wing("o", apartEnough), wing("i", apartEnough)]).kinds).toEqual([]);
  });

  it("a wing that reaches over the centre line meets its own image there", () => {
    const near = rectangle(0, 300, 50, 200);
    const flat = { angleRad: 0.2, lengthMm: 60 };
    expect(kindsOf(near, [wing("i", flat)], { symmetry: "mirrored" }).kinds).toEqual(["wings-collide"]);
    expect(kindsOf(near, [wing("i", flat)]).kinds).toEqual([]);
    expect(kindsOf(near, [wing("i")], { symmetry: "mirrored" }).kinds).toEqual([]);
  });

  it("wings that spread into one another at a corner are named", () => {
    const wide = { startTaperRad: -0.5, endTaperRad: -0.5 };
    expect(kindsOf(box, [wing("r", wide), wing("o", wide)]).kinds).toEqual(["wings-collide"]);
  });

  it("wings of an inner corner that need the same metal are named", () => {
    const corners = [
      [0, 0],
      [300, 0],
      [300, 100],
      [100, 100],
      [100, 300],
      [0, 300],
    ] as const;
    const elements = corners.map(([x, y], i) => planNode(`n${i}`, x, y));
    expect(kindsOf(elements, [wing("n2"), wing("n3")]).kinds).toEqual(["plate-overlaps-itself"]);
  });

  it("two wings on one stretch are named", () => {
    const two = [wing("r", { endInsetMm: 90 }), wing("r", { id: "second", startInsetMm: 100 })];
    expect(kindsOf(box, two).kinds).toEqual(["plate-overlaps-itself"]);
  });

  it("a relief beside an edge that is shorter than it is named", () => {
    const nicked = [
      planNode("i", 0, 0),
      planNode("r", 300, 0),
      planNode("o", 300, 200),
      planNode("n", 297, 200),
      planNode("k", 297, 260),
      planNode("f", 0, 260),
    ];
    expect(kindsOf(nicked, [wing("r")]).kinds).toEqual(["wing-relief-does-not-fit"]);
  });

  it("metal that is not in the list is named", () => {
    const { plate, problems } = fold(box, [], { plate: { metalId: "none" } });
    expect(plate).toBeUndefined();
    expect(problems.map(({ kind }) => kind)).toEqual(["unknown-reference"]);
  });
});

describe("the folding order", () => {
  it("takes shorter flanges first, then shorter bends", () => {
    const plate = soundPlate(box, [
      wing("i"),
      wing("r", { lengthMm: 60 }),
      wing("o", { lengthMm: 20 }),
      wing("f"),
    ]);
    expect(plate.folding.map(({ bendIds, reason }) => [bendIds.join(), reason])).toEqual([
      ["w-o", "shorter flange"],
      ["w-f", "shorter bend"],
      ["w-i", "shorter flange"],
      ["w-r", "last left"],
    ]);
  });

  it("makes the bend under a leaning wing before it, however long that flange", () => {
    const narrow = rectangle(0, 300, 0, 60);
    const plate = soundPlate(narrow, [
      wing("i", { angleRad: 2.4, lengthMm: 85 }),
      wing("o", { lengthMm: 95, angleRad: -1 }),
    ]);
    expect(plate.folding.map(({ bendIds }) => bendIds.join())).toEqual(["w-o", "w-i"]);
    expect(plate.folding.map(({ reason, reasonNames }) => [reason, ...reasonNames])).toEqual([
      ["before a leaning wing", "wing 1"],
      ["leans over", "wing 2"],
    ]);
    expect(plate.folding.flatMap(({ blockedByNames }) => blockedByNames)).toEqual([]);
  });
});
