import { mixOf, plyFigures } from "../laminate/index.ts";
import type { LaminateSettings } from "../project/index.ts";
import type { CutFace } from "./lay-face.ts";
import { areaMm2, overlapOf, unite } from "./polygons.ts";
import type { LaidZone } from "./types.ts";
import type { ZoneCloth } from "./zone-cloth.ts";

/** What a zone adds: its cloth, and the resin in it; the foam drinks and the peel ply takes under it as anywhere. */
export function zoneFigures(
  { id, zone, cloth, region, plies }: ZoneCloth,
  laminate: LaminateSettings,
): Omit<LaidZone, "fieldId" | "totalThicknessMm" | "onCured" | "overLapsOf"> {
  const { thicknessMm, resinKgPerM2 } = plyFigures(cloth.arealKgPerM2, mixOf(laminate));
  const plyMm2 = plies.map((pieces) => pieces.reduce((sum, piece) => sum + areaMm2(piece), 0));
  const allM2 = plyMm2.reduce((sum, mm2) => sum + mm2, 0) / 1e6;
  return {
    id,
    name: zone.name,
    partId: region.part.id,
    clothId: cloth.id,
    clothName: cloth.name,
    stepMm: zone.stepMm,
    plyMm2,
    thicknessMm: plies.length * thicknessMm,
    mixedKg: (allM2 * resinKgPerM2) / (1 - laminate.wasteShare),
    massKg: allM2 * (cloth.arealKgPerM2 + resinKgPerM2),
    clothKgPerM2: cloth.arealKgPerM2,
  };
}

/** A lap that reaches less under a zone is none, mm². */
const LEAST_MM2 = 100;

/** The plies of the face, from 1, of which two pieces lap under a zone. */
export function lapsUnder(zone: ZoneCloth, cut: readonly CutFace[], plyCount: number): readonly number[] {
  const face = cut.find(({ region }) => region === zone.region);
  return Array.from({ length: plyCount }, (_, ply) => ply + 1).filter((ply) => {
    const pieces = face?.fields.flatMap(({ plies }) => plies[ply - 1] ?? []) ?? [];
    const under = pieces.map((piece) => overlapOf(piece, zone.area));
    const allMm2 = under.reduce((sum, piece) => sum + areaMm2(piece), 0);
    return allMm2 > areaMm2(unite(...under)) + LEAST_MM2;
  });
}
