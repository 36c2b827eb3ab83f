import { describe, expect, it } from "vitest";
import { designTray } from "../../../core/design.ts";
import type { FlatPoint } from "../../../core/foundation/index.ts";
import { laminateOf, type Project } from "../../../core/project/index.ts";
import { faceRegions } from "../../../core/skins/face-regions.ts";
import { areaMm2 } from "../../../core/skins/polygons.ts";
import { readExample } from "../../read-example.ts";
import { faceAreas } from "./face-areas.ts";
import { isCovered } from "./point-in-cloth.ts";

const demo = readExample("hill-climb-floor");
const plies = (...degrees: readonly number[]) =>
  degrees.map((angle) => ({ clothId: "glass-160", warpRad: (angle * Math.PI) / 180 }));
const narrowRoll = (project: Project, rollWidthMm: number): Project => ({
  ...project,
  materials: {
    ...project.materials,
    cloths: project.materials.cloths.map((one) => ({ ...one, rollWidthMm })),
  },
});

const TRAYS: Readonly<Record<string, Project>> = {
  "the demo": { ...demo, laminate: { edgeFinish: "insert" } },
  "three plies, the middle one on the bias": {
    ...demo,
    laminate: { edgeFinish: "insert", lower: plies(0, 45, 0), upper: plies(0, 45) },
  },
  "a roll of 400 mm and a warm shop": {
    ...narrowRoll(demo, 400),
    laminate: { shopCelsius: 30, edgeFinish: "insert" },
  },
};

const SIDES = { "lower face": "L", "upper face": "U", "inboard face": "I", "outboard face": "O" };

describe("faces laid flat", () => {
  const { sheets, parts, joints } = designTray(demo);
  const regions = faceRegions(sheets, parts, joints);

  it("have the area that quadrature on the face in space gives, less the ground of fences on the core", () => {
    for (const { part, side, area } of regions) {
      const sheet = sheets.find(({ id }) => id === part.sheetId);
      if (sheet === undefined) throw new Error("no sheet");
      const { lowerMm2, upperMm2 } = faceAreas(part, sheet);
      // F1 stands 1210 mm long and 10 mm thick on the lower face of S2.
      const underFence = side === "lower face" && part.sheetId === "S2" ? 1212 * 10 : 0;
      const byQuadrature = (side === "upper face" ? upperMm2 : lowerMm2) - underFence;
      expect(Math.abs(areaMm2(area) / byQuadrature - 1)).toBeLessThan(0.0015);
    }
  });
});

for (const [name, project] of Object.entries(TRAYS)) {
  describe(`cloth on ${name}`, () => {
    const { sheets, parts, joints, skins, problems } = designTray(project);
    const regions = faceRegions(sheets, parts, joints);
    const laminate = laminateOf(project);

    it("comes off the roll with its selvedges cut off, and no piece is longer than can be handled", () => {
      // Inserts on both sides of the web behind the wheel arch leave no foam there.
      const expected = ["laminate-off-allowance", "web-too-narrow"];
      expect(problems.filter(({ kind }) => !expected.includes(kind) && !kind.startsWith("glue"))).toEqual([]);
      for (const { warpRad, outlineMm, clothId } of patchesOf(skins)) {
        const width = project.materials.cloths.find(({ id }) => id === clothId)?.rollWidthMm ?? 0;
        const across = outlineMm.map(({ u, v }) => v * Math.cos(warpRad) - u * Math.sin(warpRad));
        const along = outlineMm.map(({ u, v }) => u * Math.cos(warpRad) + v * Math.sin(warpRad));
        expect(Math.max(...across) - Math.min(...across)).toBeLessThanOrEqual(
          width - 2 * laminate.selvedgeMm + 0.01,
        );
        expect(Math.max(...along) - Math.min(...along)).toBeLessThanOrEqual(laminate.longestPatchMm + 0.01);
      }
    });

    it("covers every place of every face in every ply: by its own cloth, or within a lap of a joint by the neighbour's", () => {
      for (const { part, side, area, edges } of regions) {
        const own = patchesOf(skins).filter(({ fieldId }) => fieldId.startsWith(`${part.id}-${SIDES[side]}`));
        const plyCount = Math.max(...own.map(({ ply }) => ply));
        const joined = edges.filter(({ role }) => role === "joint").map(({ line }) => line);
        for (const place of placesIn(area)) {
          for (let ply = 1; ply <= plyCount; ply++) {
            const isOwn = own.some((patch) => patch.ply === ply && isCovered(place, patch));
            if (!isOwn)
              expect(Math.min(...joined.map((line) => awayFrom(line, place)))).toBeLessThan(25 + 100 * ply);
          }
        }
      }
    });

    it("is as much as the face and its laps: the joints' length by their laps, and what lies twice at seams", () => {
      // Cloth goes round no edge of these trays; from fences it goes onto the sheets, which is counted elsewhere.
      for (const { face, fields, laps: beside, areaMm2: faceMm2, plies: laid } of skins.faces) {
        if (face === "fence sides") continue;
        const patches = fields.flatMap((field) => field.patches);
        const onFace = regions.filter((one) => one.face === face);
        for (let ply = 1; ply <= laid.length; ply++) {
          const cloth = patches.filter((one) => one.ply === ply);
          const total = cloth.reduce((sum, one) => sum + one.areaMm2, 0);
          let twiceMm2 = 0;
          for (const { area, part, side } of onFace) {
            const own = cloth.filter(({ fieldId }) => fieldId.startsWith(`${part.id}-${SIDES[side]}`));
            for (const place of placesIn(area))
              twiceMm2 += STEP_MM ** 2 * Math.max(0, own.filter((one) => isCovered(place, one)).length - 1);
          }
          const laps = total - faceMm2;
          const expected = beside
            .filter((lap) => lap.ply === ply)
            .reduce((sum, { jointId, overlapMm, isTight }) => {
              expect(isTight || overlapMm === laminate.overlapMm).toBe(true);
              return sum + overlapMm * (joints.find(({ id }) => id === jointId)?.lengthMm ?? 0);
            }, twiceMm2);
          // Where two joints end beside each other on one part, the cloths that run over them may cross.
          const crossed = cornersOf(joints) * (25 + 100 * (ply - 1) + laminate.overlapMm) ** 2;
          expect(laps - expected).toBeGreaterThan(-0.01 * faceMm2);
          expect(laps - expected).toBeLessThan(0.01 * faceMm2 + crossed);
        }
      }
    });

    it("has no seam over a seam of the ply below it", () => {
      for (const { part, side, area } of regions) {
        const own = patchesOf(skins).filter(({ fieldId }) => fieldId.startsWith(`${part.id}-${SIDES[side]}`));
        for (const place of placesIn(area)) {
          const layers = (ply: number) =>
            own.filter((one) => one.ply === ply && isCovered(place, one)).length;
          // Where pieces meet crosswise their laps may cross; along one another they never lie.
          if (part.kind !== "transition") expect(layers(1) > 1 && layers(2) > 1 && layers(3) > 1).toBe(false);
        }
      }
    });

    it("is laid field by field in sessions that end within the resin's working time, each field once", () => {
      const film = (laminate.resin?.filmMinutes ?? 0) * 2 ** ((22 - laminate.shopCelsius) / 10);
      for (const { fields, sessions, mixedKg } of skins.faces) {
        const laid = sessions.flatMap(({ fieldIds }) => fieldIds);
        expect([...laid].sort()).toEqual(fields.map(({ id }) => id).sort());
        for (const { workMinutes, cards, mixedKg: own } of sessions) {
          expect(workMinutes).toBeLessThanOrEqual(0.6 * film + 1e-9);
          for (const card of cards) expect(card.mixedKg).toBeLessThanOrEqual(laminate.potKg + 1e-12);
          expect(cards.reduce((sum, card) => sum + card.count * card.mixedKg, 0)).toBeCloseTo(own, 9);
        }
        expect(sessions.reduce((sum, one) => sum + one.mixedKg, 0)).toBeCloseTo(mixedKg, 6);
      }
    });
  });
}

describe("sessions", () => {
  const longest = (laminate: Project["laminate"]) =>
    designTray({ ...demo, laminate }).skins.faces.map(({ sessions }) =>
      Math.max(...sessions.map(({ areaMm2: own }) => own)),
    );

  it("are no larger in a warmer shop, and with twice the hands no more", () => {
    const [cool, warm] = [longest({ shopCelsius: 18 }), longest({ shopCelsius: 28 })];
    for (const [i, own] of warm.entries()) expect(own).toBeLessThanOrEqual((cool[i] ?? 0) + 1);
    const count = (hands: number) =>
      designTray({ ...demo, laminate: { hands } }).skins.faces.map(({ sessions }) => sessions.length);
    const [one, two] = [count(1), count(2)];
    for (const [i, own] of two.entries()) expect(own).toBeLessThanOrEqual(one[i] ?? 0);
  });
});

/** Pairs of joints of one part that end within 60 mm of each other. */
function cornersOf(joints: ReturnType<typeof designTray>["joints"]): number {
  const lying = joints.filter(({ kind }) => kind !== "fence seat");
  let count = 0;
  for (const [i, a] of lying.entries())
    for (const b of lying.slice(i + 1)) {
      if (!a.partIds.some((id) => b.partIds.includes(id))) continue;
      const ends = (joint: typeof a) => [joint.from, joint.to];
      if (ends(a).some((p) => ends(b).some((q) => Math.hypot(p.x - q.x, p.y - q.y) < 60))) count += 1;
    }
  return count;
}

const STEP_MM = 9;

/** Places inside an area on a grid that lies on no seam. */
function placesIn(area: readonly (readonly FlatPoint[])[]): readonly FlatPoint[] {
  const points = area.flat();
  const [us, vs] = [points.map(({ u }) => u), points.map(({ v }) => v)];
  const places: FlatPoint[] = [];
  for (let u = Math.min(...us) + 0.37; u < Math.max(...us); u += STEP_MM)
    for (let v = Math.min(...vs) + 0.41; v < Math.max(...vs); v += STEP_MM) {
      const [outlineMm = [], ...holesMm] = area;
      if (isCovered({ u, v }, { outlineMm, holesMm })) places.push({ u, v });
    }
  return places;
}

const patchesOf = ({ faces }: ReturnType<typeof designTray>["skins"]) =>
  faces.flatMap(({ fields }) => fields.flatMap(({ patches }) => patches));

function awayFrom(line: readonly FlatPoint[], { u, v }: FlatPoint): number {
  let least = Number.POSITIVE_INFINITY;
  for (const [i, b] of line.entries()) {
    const a = line[i - 1];
    if (!a) continue;
    const [du, dv] = [b.u - a.u, b.v - a.v];
    const share = Math.min(1, Math.max(0, ((u - a.u) * du + (v - a.v) * dv) / (du * du + dv * dv || 1)));
    least = Math.min(least, Math.hypot(u - a.u - share * du, v - a.v - share * dv));
  }
  return least;
}
