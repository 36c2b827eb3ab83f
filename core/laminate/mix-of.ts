import type { LaminateSettings } from "../project/index.ts";
import type { LaminateMix } from "./ply.ts";

/** Densities of glass fibre and cured epoxy, kg/m³ (from memory; suppliers' sheets differ by a few per cent). */
const GLASS_KG_PER_M3 = 2550;
const EPOXY_KG_PER_M3 = 1150;

/** What the laminate of a face is made of. */
export const mixOf = ({ fibreMassShare }: Pick<LaminateSettings, "fibreMassShare">): LaminateMix => ({
  fibreMassShare,
  fibreKgPerM3: GLASS_KG_PER_M3,
  resinKgPerM3: EPOXY_KG_PER_M3,
});
