import type { SkinPlan } from "./types.ts";

/** What decides how much resin stays: the share of fibre by mass, and what bare foam drinks. */
export interface ResinTaken {
  readonly fibreMassShare: number;
  readonly preWetKgPerM2: number;
}

/** What the skins of a part weigh on both faces with so much resin, without fillets, kg. */
export function skinMassKg(
  plan: SkinPlan,
  partId: string,
  { fibreMassShare, preWetKgPerM2 }: ResinTaken,
): number {
  let massKg = 0;
  for (const { plies, fields } of plan.faces)
    for (const field of fields) {
      if (field.partId !== partId) continue;
      massKg += (field.areaMm2 / 1e6) * preWetKgPerM2;
      for (const { ply, areaMm2 } of field.patches)
        massKg += ((areaMm2 / 1e6) * (plies[ply - 1]?.clothKgPerM2 ?? 0)) / fibreMassShare;
    }
  return massKg;
}
