import { describe, expect, it } from "vitest";
import { toDegrees } from "../../core/foundation/index.ts";
import {
  areaOfRuled,
  developRuled,
  lengthOnRuled,
  pairEdges,
  type RuledSurface,
  rulingAt,
  type SpaceEdge,
} from "../../core/rulings/index.ts";
import { edgeOf, type Triple } from "../core/rulings/edges-of.ts";
import { distance, flatArea, flatLength, shapeDifference } from "../core/rulings/flat-figures.ts";

/** Lengths, areas and angles of sheets that develop exactly. */
const DEVELOPED_RELATIVE = 1e-9;
/** Pairing of rulings, as a share of an edge's parameter. */
const PAIRED = 1e-6;

/** Foam that bends as far as each of these needs; twist alone sets the rulings. */
const FOAM = { thicknessMm: 10, leastRadiusMm: 0 };

const sheetOf = (first: SpaceEdge, second: SpaceEdge, nodes = 96): RuledSurface =>
  pairEdges(first, second, { ...FOAM, nodes });

function expectRelative(value: number, expected: number, relative = DEVELOPED_RELATIVE): void {
  expect(Math.abs(value / expected - 1)).toBeLessThan(relative);
}

/** The angle that the rulings sweep in the flat. */
function flatAngle(sheet: RuledSurface): number {
  const flat = developRuled(sheet, 0);
  return Math.abs(flat.rulingAngleAt(sheet.lengthSMm) - flat.rulingAngleAt(0));
}

/** A ring around the axis; two rings of one cone bound a frustum. */
const ring = (radius: number, height: number, turn = 2 * Math.PI): SpaceEdge =>
  edgeOf((t) => [radius * Math.cos(turn * t), radius * Math.sin(turn * t), height]);

describe("cones of revolution lie flat as sectors", () => {
  // D1. PUBLISHED: Math Forum FAQ "Building a Cone" (formulas and ten cases); worked 216° for r = 3, h = 4. Of a cone
  // of slant 5 the ring half-way up leaves a frustum of three quarters of its area, 15π.
  it("a cone of radius 3 and height 4 takes 216°", () => {
    const sheet = sheetOf(ring(300, 0), ring(150, 200));
    expectRelative(toDegrees(flatAngle(sheet)), 216);
    expectRelative(rulingAt(sheet, 0).lengthMm, 250);
    expectRelative(areaOfRuled(sheet, 0), 0.75 * 47.1238898038469e4);
  });

  // D2. PUBLISHED: "The Net of a Frustum" (geometry course text, duct problem): 7.12, 11.39, 126.4°; exact digits computed.
  it("a frustum between diameters 5 and 8, 4 high, takes 126.4°", () => {
    const sheet = sheetOf(ring(250, 0), ring(400, 400));
    const angle = flatAngle(sheet);
    expect(Math.abs(toDegrees(angle) - 126.4)).toBeLessThan(0.05);
    expectRelative(toDegrees(angle), 126.404438971821);
    expectRelative(lengthOnRuled(sheet, 0, 0) / angle, 712.000312109794);
    expectRelative(lengthOnRuled(sheet, 0, 1) / angle, 1139.20049937567);
    expectRelative(areaOfRuled(sheet, 0), 87.235783045233e4);
    expectRelative(Math.abs(flatArea(sheet, developRuled(sheet, 0))), 87.235783045233e4, 1e-8);
  });

  // D3. PUBLISHED: "Cones" in a blacksmith's online handbook, printed 254.6°; exact 360 sin 45°.
  it("a cone of 90° at its point takes 254.6°", () => {
    const angle = toDegrees(flatAngle(sheetOf(ring(300, 0), ring(120, 180))));
    expect(Math.abs(angle - 254.6)).toBeLessThan(0.05);
    expectRelative(angle, 254.558441227157);
  });

  // D4. PUBLISHED: I. R. Butt, The Tinman's Manual, "Rule for striking out a cone or frustum".
  it("a cone whose slant is six times its radius takes 60°", () => {
    const height = Math.sqrt(35);
    expectRelative(toDegrees(flatAngle(sheetOf(ring(100, 0), ring(40, 60 * height)))), 60);
  });

  // D9. CLOSED FORM: as D2, a quarter, the size of a flared corner.
  it("a quarter frustum between radii 300 and 200, 150 high", () => {
    const sheet = sheetOf(ring(300, 0, Math.PI / 2), ring(200, 150, Math.PI / 2));
    const angle = flatAngle(sheet);
    expectRelative(toDegrees(angle), 49.9230176602706);
    expectRelative(rulingAt(sheet, 100).lengthMm, 180.277563773199);
    expectRelative(lengthOnRuled(sheet, 0, 0) / angle, 540.832691319598);
    expectRelative(lengthOnRuled(sheet, 0, 1) / angle, 360.555127546399);
    expectRelative(areaOfRuled(sheet, 0), 70794.8337446186);
  });
});

describe("an oblique cone", () => {
  // D13. METHOD: triangular development of a scalene cone (NAVEDTRA 14251; an old pattern-draughting text, Problem 168);
  // digits by quadrature of |P × P'| / |P|². Base radius 1, apex over its rim 2 up; angles from the short side.
  const SIZE = 500;
  const apex: Triple = [SIZE, 0, 2 * SIZE];
  const base = (theta: number): Triple => [SIZE * Math.cos(theta), SIZE * Math.sin(theta), 0];
  const toward = (theta: number, part: number): Triple => {
    const [x, y, z] = base(theta);
    return [x + part * (apex[0] - x), y + part * (apex[1] - y), z + part * (apex[2] - z)];
  };
  const LENGTHS = [
    2, 2.06590154470902, 2.23606797749979, 2.44948974278318, 2.64575131106459, 2.78065654253971,
    2.82842712474619,
  ];
  const ANGLES = [
    0, 14.6814959068423, 27.9074432106898, 39.6138000722672, 50.5145562015683, 61.1621253440725,
  ];
  const half = (nodes?: number) =>
    sheetOf(
      edgeOf((t) => base(Math.PI * t)),
      // The other edge runs over the cone at a height that changes, by a parameter of its own.
      edgeOf((t) => toward(Math.PI * (t + 0.3 * t * (1 - t)), 0.4 + 0.2 * Math.sin(2 * t))),
      nodes,
    );
  const sAtBase = (sheet: RuledSurface, theta: number): number => {
    let [low, high] = [0, sheet.lengthSMm];
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (rulingAt(sheet, middle).firstMm < theta * SIZE) low = middle;
      else high = middle;
    }
    return low;
  };

  it("has rulings through its apex, of the lengths and at the flat angles of the table", () => {
    const sheet = half();
    const flat = developRuled(sheet, 0);
    ANGLES.forEach((degrees, k) => {
      const sMm = sAtBase(sheet, (k * Math.PI) / 6);
      const { from, direction } = rulingAt(sheet, sMm);
      const slant = (LENGTHS[k] ?? 0) * SIZE;
      const reached = [
        from.x + slant * direction.x,
        from.y + slant * direction.y,
        from.z + slant * direction.z,
      ];
      reached.forEach((value, axis) => {
        expect(Math.abs(value - (apex[axis] ?? 0))).toBeLessThan(1e-5);
      });
      const swept = toDegrees(Math.abs(flat.rulingAngleAt(sMm) - flat.rulingAngleAt(0)));
      expect(Math.abs(swept - degrees)).toBeLessThan(1e-6);
    });
    expect(Math.abs(toDegrees(flatAngle(sheet)) - 71.7699926379951)).toBeLessThan(1e-7);
  });

  it("comes nearer by more than 3.5 times for each halving of the step between rulings", () => {
    const errors = [6, 12, 24].map((nodes) => Math.abs(toDegrees(flatAngle(half(nodes))) - 71.7699926379951));
    errors.slice(1).forEach((error, k) => {
      const before = errors[k] ?? 0;
      expect(error < before / 3.5 || error < 1e-10).toBe(true);
    });
  });
});

describe("a cone over a parabola between two planes that are not parallel", () => {
  // D16. CLOSED FORM: cone development; apex in the origin, edge A in z = 1, edge B in z = 2 + x / 2.
  const SIZE = 100;
  const onA = (t: number): Triple => [SIZE * t, SIZE * t * t, SIZE];
  /** Edge B by its own parameter, its x from 0 to 4 (D17). */
  const onB = (w: number): Triple => {
    const t = w / (2 + w / 2);
    const scale = 2 / (1 - t / 2);
    return [scale * onA(t)[0], scale * onA(t)[1], scale * onA(t)[2]];
  };
  const sheets = [
    { foam: "soft", ...FOAM },
    // The shape is tighter than these can bend; it is still the same shape.
    { foam: "5 mm", thicknessMm: 5, leastRadiusMm: 300 },
    { foam: "20 mm", thicknessMm: 20, leastRadiusMm: 1200 },
  ].map(({ foam, ...settings }) => ({
    foam,
    sheet: pairEdges(
      edgeOf(onA),
      edgeOf((t) => onB(4 * t)),
      settings,
    ),
  }));

  it.each(sheets)("has the flat angle, edges, area and diagonals of the closed form ($foam)", ({ sheet }) => {
    const flat = developRuled(sheet, 0);
    const [a0, a1, b0, b1] = [0, 1].flatMap((t) =>
      [0, sheet.lengthSMm].map((sMm) => flat.flatAt({ sMm, t })),
    );
    expectRelative(flatAngle(sheet), 1.01867993300616);
    expectRelative(flatLength(sheet, flat, 0), 1.4789428575446 * SIZE);
    expectRelative(flatLength(sheet, flat, 1), 6.14554197784136 * SIZE);
    expectRelative(areaOfRuled(sheet, 0), 6.06859022916918 * SIZE * SIZE);
    expectRelative(Math.abs(flatArea(sheet, flat)), 6.06859022916918 * SIZE * SIZE, 1e-8);
    expectRelative(rulingAt(sheet, 0).lengthMm, SIZE);
    expectRelative(rulingAt(sheet, sheet.lengthSMm).lengthMm, 5.19615242270663 * SIZE);
    if (!a0 || !a1 || !b0 || !b1) throw new Error("four corners");
    expectRelative(distance(a0, a1), 1.47753584890431 * SIZE);
    expectRelative(distance(a0, b1), 6.46006569155372 * SIZE);
    expectRelative(distance(a1, b0), 1.83472732840462 * SIZE);
  });

  // D17. METHOD: tangent planes at both ends of a ruling agree (Barry, "Working With Developable Surfaces"; Chalfant,
  // MIT thesis 1997); pairs in closed form.
  it.each(sheets)("pairs w = 1, 2, 3 of edge B with t = 2/5, 2/3, 6/7 of edge A ($foam)", ({ sheet }) => {
    for (const [w, t] of [
      [1, 2 / 5],
      [2, 2 / 3],
      [3, 6 / 7],
    ] as const) {
      let [low, high] = [0, sheet.lengthSMm];
      for (let i = 0; i < 60; i++) {
        const middle = (low + high) / 2;
        if (rulingAt(sheet, middle).to.x < w * SIZE) low = middle;
        else high = middle;
      }
      expect(Math.abs(rulingAt(sheet, low).from.x / SIZE - t)).toBeLessThan(PAIRED);
    }
  });

  it("is not the pairing of equal fractions", () => {
    const [sheet] = sheets;
    if (!sheet) throw new Error("a sheet");
    const middle = rulingAt(sheet.sheet, sheet.sheet.lengthSMm / 2);
    expect(Math.abs(middle.firstMm / 147.89428575446 - middle.secondMm / 614.554197784136)).toBeGreaterThan(
      0.05,
    );
  });
});

describe("a panel of a cylinder cut obliquely", () => {
  // D19. CLOSED FORM: u = R f, v = 300 + 200 sin(u / R).
  const R = 1000;
  const on = (f: number, y: number): Triple => [R * Math.sin(f), y, R * (1 - Math.cos(f))];
  const sheet = sheetOf(
    edgeOf((t) => on(0.5 * t, 0)),
    edgeOf((t) => on(0.5 * t, 300 + 0.2 * R * Math.sin(0.5 * t))),
  );
  const flat = developRuled(sheet, 0);

  it("keeps edges, area and diagonals", () => {
    const corner = (sMm: number, t: number) => flat.flatAt({ sMm, t });
    const end = sheet.lengthSMm;
    expectRelative(flatLength(sheet, flat, 0), 500);
    expectRelative(flatLength(sheet, flat, 1), 509.123649403456);
    expectRelative(areaOfRuled(sheet, 0), 174483.487621925);
    expectRelative(Math.abs(flatArea(sheet, flat)), 174483.487621925, 1e-8);
    expectRelative(distance(corner(0, 0), corner(end, 1)), 637.749965515594);
    expectRelative(distance(corner(end, 0), corner(0, 1)), 583.09518948453);
  });

  it("has the marking-out table of the closed form", () => {
    const expected = [300, 319.966683329, 339.733866159, 359.104041332, 377.883668462, 395.885107721];
    // A straight datum along the first edge: in a frame of its own points it is u, and the ruling's length is v.
    const points = expected.map((v, k) => {
      let [low, high] = [0, sheet.lengthSMm];
      for (let i = 0; i < 60; i++) {
        const middle = (low + high) / 2;
        if (rulingAt(sheet, middle).firstMm < 100 * k) low = middle;
        else high = middle;
      }
      return [flat.flatAt({ sMm: low, t: 1 }), { u: 100 * k, v }] as const;
    });
    const error = shapeDifference(
      points.map(([laid]) => laid),
      points.map(([, table]) => table),
    );
    expect(error).toBeLessThan(1e-6);
  });
});
