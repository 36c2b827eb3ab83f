import type { Memory, Problem } from "../foundation/index.ts";
import { fibreVolumeShare, solidHours } from "../laminate/index.ts";
import type { Part } from "../patterns/index.ts";
import { type LaminateSettings, laminateOf, type Project } from "../project/index.ts";
import type { Sheet } from "../surfaces/index.ts";
import { faceAreas } from "./face-areas.ts";
import { pliesOfFace } from "./plies-of-face.ts";
import { laidPlies, mixedKgPerM2, mixOf } from "./resin-per-area.ts";
import { skinSessions } from "./skin-sessions.ts";
import { skinTasks } from "./skin-tasks.ts";
import type { LaidPly, SkinFace, SkinFaceName, SkinPlan } from "./types.ts";

/** The laminate may be so much thicker or thinner than the geometry allows for, mm (common practice). */
const OFF_ALLOWANCE_MM = 0.2;

/**
 * How the faces are skinned: areas as developed, plies, resin, sessions and pots. The sides of fences have the plies of
 * the lower face. Geometry keeps its nominal skins. Problems: laminate-off-allowance, shop-too-cold. A mixing ratio that
 * is missing is no problem: its cards say so.
 */
export function planSkins(
  { sheets, parts }: { readonly sheets: readonly Sheet[]; readonly parts: readonly Part[] },
  project: Project,
  memory: Memory,
): { readonly plan: SkinPlan; readonly problems: readonly Problem[] } {
  const laminate = laminateOf(project);
  const areas = parts.flatMap((part) => {
    const sheet = sheets.find(({ id }) => id === part.sheetId);
    if (sheet === undefined) return [];
    return [{ part, ...memory.recall(`faces of ${part.id}`, [part, sheet], () => faceAreas(part, sheet)) }];
  });
  const lying = areas.filter(({ part }) => part.kind !== "fence");
  const standing = areas.filter(({ part }) => part.kind === "fence");
  const face = faceMaker(project, laminate);
  const faces = [
    face(
      "lower face",
      lying.map(({ part, lowerMm2 }) => [part, lowerMm2]),
    ),
    face(
      "upper face",
      lying.map(({ part, upperMm2 }) => [part, upperMm2]),
    ),
    face(
      "fence sides",
      standing.map(({ part, lowerMm2, upperMm2 }) => [part, lowerMm2 + upperMm2]),
    ),
  ].filter(({ areaMm2, plies }) => areaMm2 > 0 && plies.length > 0);
  const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
  const { resin, shopCelsius, peelPlyKgPerM2, hands } = laminate;
  const curedHours = resin ? solidHours(resin, shopCelsius) : 0;
  return {
    plan: {
      faces,
      tasks: skinTasks(faces, project.jig.attitude, { hands, curedHours }),
      cloths: clothsOf(faces),
      peelPlyMm2: peelPlyKgPerM2 > 0 ? sum(faces.map(({ areaMm2 }) => areaMm2)) : 0,
      mixedKg: sum(faces.map(({ mixedKg }) => mixedKg)),
      massKg: sum(faces.map(({ massKg }) => massKg)),
      solidHours: curedHours,
    },
    problems: [...faces.flatMap((one) => offAllowance(one, laminate)), ...tooCold(faces, laminate)],
  };
}

type PartArea = readonly [part: Part, areaMm2: number];

function faceMaker(project: Project, laminate: LaminateSettings) {
  const { skins } = project;
  return (face: SkinFaceName, areas: readonly PartArea[]): SkinFace => {
    const isUpper = face === "upper face";
    const plies = laidPlies(pliesOfFace(project, isUpper ? "upper" : "lower"), laminate);
    const areaMm2 = areas.reduce((sum, [, own]) => sum + own, 0);
    const m2 = areaMm2 / 1e6;
    const takes = plies.reduce((sum, { resinKgPerM2, clothKgPerM2 }) => sum + resinKgPerM2 + clothKgPerM2, 0);
    return {
      face,
      areaMm2,
      partIds: areas.map(([{ id }]) => id),
      plies,
      thicknessMm: plies.reduce((sum, { thicknessMm }) => sum + thicknessMm, 0),
      allowedMm: isUpper ? skins.upperMm : skins.lowerMm,
      fibreVolumeShare: fibreVolumeShare(mixOf(laminate)),
      mixedKg: m2 * mixedKgPerM2(plies, laminate),
      massKg: m2 * (takes - (plies.length > 0 ? laminate.peelPlyKgPerM2 : 0)),
      sessions: skinSessions(areaMm2, plies, laminate),
    };
  };
}

function clothsOf(faces: readonly SkinFace[]): SkinPlan["cloths"] {
  const byCloth = new Map<string, { readonly ply: LaidPly; areaMm2: number }>();
  for (const { areaMm2, plies } of faces)
    for (const ply of plies) {
      const found = byCloth.get(ply.clothId) ?? { ply, areaMm2: 0 };
      found.areaMm2 += areaMm2;
      byCloth.set(ply.clothId, found);
    }
  return [...byCloth].map(([clothId, { ply, areaMm2 }]) => ({ clothId, name: ply.clothName, areaMm2 }));
}

/** Of plies that the builder chose. The fences' sides have no allowance: their foam is drawn as it stands. */
function offAllowance(
  { face, thicknessMm, allowedMm }: SkinFace,
  { lower, upper }: LaminateSettings,
): readonly Problem[] {
  const isUpper = face === "upper face";
  const isChosen = (isUpper ? upper : lower) !== undefined;
  if (face === "fence sides" || !isChosen || Math.abs(thicknessMm - allowedMm) <= OFF_ALLOWANCE_MM) return [];
  const setting = isUpper ? "skins.upperMm" : "skins.lowerMm";
  return [{ kind: "laminate-off-allowance", place: { setting }, name: face, thicknessMm, allowedMm }];
}

function tooCold(
  faces: readonly SkinFace[],
  { resin, shopCelsius, leastCelsius }: LaminateSettings,
): readonly Problem[] {
  if (faces.length === 0 || !resin || shopCelsius >= leastCelsius) return [];
  const place = { setting: "laminate.shopCelsius" };
  return [{ kind: "shop-too-cold", place, name: resin.name, celsius: shopCelsius, leastCelsius }];
}
