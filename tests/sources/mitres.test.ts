import { describe, expect, it } from "vitest";
import { cutOfFold, type Joint } from "../../core/joints/index.ts";
import { faceDepths } from "../../core/laminate/index.ts";
import type { Section } from "../../core/project/index.ts";
import {
  edgeOf,
  followEdge,
  partOf,
  planNode,
  rectangle,
  section,
  sideNode,
  soundTray,
  straightProfile,
  tray,
} from "../core/trays.ts";

/** Closed forms, relative. */
const EXACT_DIGITS = 9;
const RADIANS_PER_DEGREE = Math.PI / 180;
const degrees = (rad: number): number => rad / RADIANS_PER_DEGREE;

const NO_GAP = { gapMm: 0, gapLimitMm: 0 };
const BARE = { lowerMm: 0, upperMm: 0 };

// M13. CLOSED FORM: mitre set-back t tan(fold / 2) for t = 20 at 7, 30, 45, 90 degrees.
const SET_BACKS = [
  { foldDegrees: 7, throughMm: 1.22325240300969 },
  { foldDegrees: 30, throughMm: 5.35898384862245 },
  { foldDegrees: 45, throughMm: 8.2842712474619 },
  { foldDegrees: 90, throughMm: 20 },
];

describe("the set-back of a mitre through 20 mm, M13", () => {
  it.each(SET_BACKS)(
    "at $foldDegrees° is $throughMm at the inner face and half at mid-thickness",
    ({ foldDegrees, throughMm }) => {
      const depths = faceDepths("air", BARE, 20);
      const cut = cutOfFold(foldDegrees * RADIANS_PER_DEGREE, depths, depths, NO_GAP);
      expect(cut.cut).toBe("mitre");
      expect(cut.bevelRad.map(degrees)[0]).toBeCloseTo(foldDegrees / 2, EXACT_DIGITS);
      expect(cut.setBackMm[0]).toBeCloseTo(throughMm / 2, EXACT_DIGITS);
      expect(cut.setBackMm[1]).toBeCloseTo(throughMm / 2, EXACT_DIGITS);
      // Folded the other way both run on by as much.
      expect(cutOfFold(-foldDegrees * RADIANS_PER_DEGREE, depths, depths, NO_GAP).setBackMm[0]).toBeCloseTo(
        -throughMm / 2,
        EXACT_DIGITS,
      );
    },
  );

  it.each(SET_BACKS)(
    "at a profile corner of $foldDegrees° shortens both sheets by half of $throughMm",
    ({ foldDegrees, throughMm }) => {
      for (const turns of [1, -1]) {
        // Half of the fold falls before the corner, half rises behind it (or the other way about).
        const slope = Math.tan((foldDegrees / 2) * RADIANS_PER_DEGREE) * turns;
        const profile = [
          sideNode("a", 0, 600),
          sideNode("b", 300, 600 - 300 * slope),
          sideNode("c", 700, 600 + 100 * slope),
        ];
        const project = tray({ p: profile }, [section(1, rectangle(0, 700, 0, 250))], {
          skinMm: 0,
          gapLimitMm: 0,
        });
        const design = soundTray(project);
        const stretch = Math.hypot(1, slope);
        for (const [id, lengthMm] of [
          ["S1.1", 300 * stretch],
          ["S1.2", 400 * stretch],
        ] as const) {
          for (const edgeId of ["inner", "outer"]) {
            const edge = edgeOf(partOf(design, id), edgeId);
            expect(edge.drawnLengthMm).toBeCloseTo(lengthMm, EXACT_DIGITS);
            expect(edge.flatLengthMm).toBeCloseTo(lengthMm - (turns * throughMm) / 2, 8);
            expect(edge.spaceLengthMm).toBeCloseTo(edge.flatLengthMm, 8);
          }
          expect(edgeOf(partOf(design, id), "fold-b").flatLengthMm).toBeCloseTo(250, 8);
        }
        const [joint] = design.joints;
        expect(joint?.kind).toBe("corner");
        expect(joint?.cut).toBe("mitre");
        expect(degrees(joint?.foldRad[0] ?? 0)).toBeCloseTo(foldDegrees * turns, EXACT_DIGITS);
        expect(degrees(joint?.bevelRad[0] ?? 0)).toBeCloseTo((foldDegrees * turns) / 2, EXACT_DIGITS);
        expect(joint?.lengthMm).toBeCloseTo(250, EXACT_DIGITS);
      }
    },
  );

  it("cut square, both end where their inner faces touch: by all of it", () => {
    const depths = faceDepths("air", BARE, 20);
    const cut = cutOfFold(7 * RADIANS_PER_DEGREE, depths, depths, { gapMm: 0, gapLimitMm: 3 });
    expect(cut.cut).toBe("square");
    expect(cut.setBackMm[0]).toBeCloseTo(1.22325240300969, EXACT_DIGITS);
  });

  it("is cut square only while the wedge, 2 t tan(fold / 2) = 2.4465 mm, is within the gap limit", () => {
    const depths = faceDepths("air", BARE, 20);
    const at = (gapLimitMm: number) =>
      cutOfFold(7 * RADIANS_PER_DEGREE, depths, depths, { gapMm: 0, gapLimitMm }).cut;
    expect(at(2.446)).toBe("mitre");
    expect(at(2.447)).toBe("square");
  });
});

/** Two plane sections, z = a x where y < b x and z = c y beyond: two roof faces that meet in a valley. */
function valley(
  risePerX: number,
  risePerY: number,
  thicknesses: readonly [number, number] = [20, 20],
): Joint {
  const slope = risePerX / risePerY;
  const corner = planNode("far", 400, 400 * slope);
  const first: Section = section(1, [planNode("near", 0, 0), planNode("base", 400, 0), corner], {
    core: { foamId: "xps", thicknessMm: thicknesses[0] },
  });
  const second: Section = section(
    2,
    [
      followEdge("shared", { itemId: "s1", fromNodeId: "far", toNodeId: "near" }, "against"),
      planNode("back", 0, 400 * slope),
    ],
    {
      profileId: "level",
      pivotYMm: 0,
      tiltRad: Math.atan(risePerY),
      core: { foamId: "xps", thicknessMm: thicknesses[1] },
    },
  );
  const project = tray(
    { p: straightProfile(0, 0, 400, 400 * risePerX), level: straightProfile(0, 0, 400, 0) },
    [first, second],
    { skinMm: 0, gapLimitMm: 0 },
  );
  const design = soundTray(project);
  const [joint, ...others] = design.joints;
  if (!joint || others.length > 0) throw new Error(`${design.joints.length} joints`);
  return joint;
}

describe("the fold between two roof faces", () => {
  // M6. PUBLISHED: a timber-framing worked example prints backing angles 20.27 and 29.99; their sum is the angle
  // between the normals, 50.267902. M9. PUBLISHED (JLC forum 39385): 26.92 twice; 53.831358. M10. CLOSED FORM (cube
  // corner): 60.
  it.each([
    { name: "8/12 and 10/12", rises: [8 / 12, 10 / 12], normalsDegrees: 50.267902 },
    { name: "10/12 twice", rises: [10 / 12, 10 / 12], normalsDegrees: 53.831358 },
    { name: "12/12 twice", rises: [1, 1], normalsDegrees: 60 },
  ] as const)(
    "of pitch $name is the angle between their normals, half of it on each edge",
    ({ rises, normalsDegrees }) => {
      const joint = valley(rises[0], rises[1]);
      expect(joint.kind).toBe("shared edge");
      expect(joint.cut).toBe("mitre");
      for (const foldRad of joint.foldRad) expect(degrees(foldRad)).toBeCloseTo(normalsDegrees, 5);
      for (const bevelRad of joint.bevelRad) expect(degrees(bevelRad)).toBeCloseTo(normalsDegrees / 2, 5);
    },
  );

  // M11. CLOSED FORM: floor z = 0, ramp rising 7°; a side that leans out 45° instead of 20° (a sheet leans 60° at
  // most): normals (−sin 7, 0, cos 7) and (0, −sin 45, cos 45).
  it("of a ramp and a leaning side is the angle between their normals", () => {
    const ramp = Math.tan(7 * RADIANS_PER_DEGREE);
    const joint = valley(ramp, 1);
    const expected = degrees(Math.acos(Math.cos(7 * RADIANS_PER_DEGREE) * Math.cos(45 * RADIANS_PER_DEGREE)));
    expect(degrees(joint.foldRad[0])).toBeCloseTo(expected, EXACT_DIGITS);
  });
});

describe("a mitre between sheets of 20 and 10 mm", () => {
  const [thick, thin] = [faceDepths("air", BARE, 20), faceDepths("air", BARE, 10)];
  const cutAt = (foldDegrees: number) => cutOfFold(foldDegrees * RADIANS_PER_DEGREE, thick, thin, NO_GAP);

  // METHOD: tan b1 = (t2 − t1 cos φ) / (t1 sin φ) and tan b2 likewise.
  it("at 60° has bevels of 0° and 60°", () => {
    const cut = cutAt(60);
    expect(cut.cut).toBe("mitre");
    expect(degrees(cut.bevelRad[0])).toBeCloseTo(0, EXACT_DIGITS);
    expect(degrees(cut.bevelRad[1])).toBeCloseTo(60, EXACT_DIGITS);
    expect(cut.setBackMm[0]).toBeCloseTo(0, EXACT_DIGITS);
    expect(cut.setBackMm[1]).toBeCloseTo(5 * Math.sqrt(3), EXACT_DIGITS);
  });

  it("of two sections at 60° has the same bevels", () => {
    const joint = valley(1, 1, [20, 10]);
    expect(joint.cut).toBe("mitre");
    // The follower, which is the thin one, is named first.
    expect(joint.partIds).toEqual(["S2", "S1"]);
    expect(joint.bevelRad.map(degrees)[0]).toBeCloseTo(60, 6);
    expect(joint.bevelRad.map(degrees)[1]).toBeCloseTo(0, 6);
  });

  it("is none at 30°: the thick one ends square and the thin one, bevelled by the fold, on its end", () => {
    for (const sign of [1, -1]) {
      const cut = cutAt(30 * sign);
      expect(cut.cut).toBe("butt");
      expect(cut.bevelRad[0]).toBe(0);
      expect(cut.setBackMm[0]).toBe(0);
      expect(degrees(cut.bevelRad[1])).toBeCloseTo(30 * sign, EXACT_DIGITS);
      expect(cut.setBackMm[1]).toBeCloseTo(5 * Math.tan(30 * sign * RADIANS_PER_DEGREE), EXACT_DIGITS);
    }
  });

  it("has bevels that add up to the fold wherever it is one", () => {
    for (let fold = 60; fold <= 64; fold++) {
      const cut = cutAt(fold);
      if (cut.cut === "mitre")
        expect(degrees(cut.bevelRad[0] + cut.bevelRad[1])).toBeCloseTo(fold, EXACT_DIGITS);
    }
  });
});

describe("a butt of 40 mm foam with 10 mm foam square to it", () => {
  const [thick, thin] = [faceDepths("air", BARE, 40), faceDepths("air", BARE, 10)];

  // CLOSED FORM: a bevel of atan(40 / 10) = 76° would be needed on the thin one.
  it("inside the fold, the thin one stands on the thick one's inner face, flush with its end", () => {
    const cut = cutOfFold(Math.PI / 2, thick, thin, NO_GAP);
    expect(cut.cut).toBe("butt");
    expect(cut.setBackMm[0]).toBeCloseTo(0, EXACT_DIGITS);
    expect(cut.setBackMm[1]).toBeCloseTo(40, EXACT_DIGITS);
    expect(cut.bevelRad[0]).toBeCloseTo(0, EXACT_DIGITS);
    expect(cut.bevelRad[1]).toBeCloseTo(0, EXACT_DIGITS);
  });

  it("outside the fold, the thick one covers the thin one's end", () => {
    const cut = cutOfFold(-Math.PI / 2, thick, thin, NO_GAP);
    expect(cut.cut).toBe("butt");
    expect(cut.setBackMm[0]).toBeCloseTo(-10, EXACT_DIGITS);
    expect(cut.setBackMm[1]).toBeCloseTo(0, EXACT_DIGITS);
  });
});
