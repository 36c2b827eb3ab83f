import type { SkinFace, SkinPlan } from "./types.ts";

/** What decides how much resin stays: the share of fibre by mass, and what bare foam drinks. */
export interface ResinTaken {
  readonly fibreMassShare: number;
  readonly preWetKgPerM2: number;
}

/**
 * What the skins of a part weigh on both faces with so much resin, without fillets, kg. Cloth that runs over a joint lies on
 * the neighbour: every part has its share of all cloth on its face by the area of its own face.
 */
export function skinMassKg(
  plan: SkinPlan,
  partId: string,
  { fibreMassShare, preWetKgPerM2 }: ResinTaken,
): number {
  return plan.faces.reduce((sum, face) => {
    const ownMm2 = areaOf(face, partId);
    if (ownMm2 === 0 || face.areaMm2 === 0) return sum;
    const clothKg = face.plies.reduce(
      (kg, { clothKgPerM2 }, i) => kg + clothMm2(face, i + 1) * 1e-6 * clothKgPerM2,
      0,
    );
    const zonesKg = face.zones.reduce(
      (kg, zone) =>
        zone.partId === partId
          ? kg + (zone.plyMm2.reduce((mm2, own) => mm2 + own, 0) / 1e6) * zone.clothKgPerM2
          : kg,
      0,
    );
    const fibreKg = (ownMm2 / face.areaMm2) * clothKg + zonesKg;
    return sum + (ownMm2 / 1e6) * preWetKgPerM2 + fibreKg / fibreMassShare;
  }, 0);
}

const areaOf = ({ fields }: SkinFace, partId: string): number =>
  fields.reduce((sum, field) => (field.partId === partId ? sum + field.areaMm2 : sum), 0);

const clothMm2 = ({ fields }: SkinFace, ply: number): number =>
  fields
    .flatMap(({ patches }) => patches)
    .reduce((sum, patch) => (patch.ply === ply ? sum + patch.areaMm2 : sum), 0);
