import { type Block, headingBlock, paragraphBlock } from "./blocks.ts";
import type { Lettering } from "./lettering.ts";
import { CONTENT_WIDTH_MM } from "./page-frame.ts";

/** The hazards of the work up to the bare shell, each at the step it belongs to. */
export type Hazard =
  | "knife"
  | "hot wire"
  | "foam dust"
  | "isocyanate"
  | "epoxy"
  | "fire"
  | "saw"
  | "router"
  | "solvent"
  | "metal dust"
  | "metal edges"
  | "judgement";

/**
 * What is said about each hazard: plain words, and who knows better. Sources: published guidance of health and
 * safety bodies for epoxy, isocyanates, dust, hot-wire fume and electrics, foam fire; common practice for knife,
 * saw, router, solvent and metal.
 */
const CAUTIONS: Readonly<Record<Hazard, string>> = {
  knife:
    "Knife: cut away from yourself, cut-resistant glove on the other hand, a fresh blade, several light passes.",
  "hot wire":
    "Hot wire: polystyrene only. Never polyurethane, polyisocyanurate or PVC: their fumes poison. Outdoors or with extraction. The bare wire is live: at most 25 V ac or 60 V dc from an isolating supply.",
  "foam dust":
    "Foam dust: it irritates eyes, skin and throat. Extraction, goggles and a P2, N95 or better mask when sawing or sanding.",
  isocyanate:
    "PU glue holds isocyanates: they sensitise skin and lungs, and once sensitised you must keep away for good. Gloves, sleeves, goggles, fresh air; no skin contact. At the first rash or wheeze stop and see a doctor. Read the maker's data sheet: it comes before this page.",
  epoxy:
    "Epoxy resin, hardener and uncured dust sensitise the skin, more with every contact. Nitrile or butyl gloves, sleeves taped; wash with soap, never with solvent. The supplier's data sheet comes before this page.",
  fire: "Every organic foam burns, whatever its label says; the smoke is black and toxic. No flame, no sparks, no hot work near it. Follow local fire and waste rules.",
  saw: "Saw: goggles, mask, hearing protection; hands behind the blade.",
  router:
    "Router: goggles, mask, hearing protection, extraction; clamp the sheet, both hands on the machine, feed against the cutter's turn, and let it stop before it is lifted.",
  solvent:
    "Solvent: flammable, and its vapour creeps along the floor. Fresh air, no flame, no spark, no pilot light; gloves that it does not dissolve; wet rags flat outdoors or in a closed metal can.",
  "metal dust":
    "Metal dust: goggles and a P2, N95 or better mask; wet abrading binds it. Sweep up aluminium dust apart from steel's and keep it from sparks and flame.",
  "metal edges":
    "Cut metal is a knife: gloves when carrying it, every edge deburred before anything else; clamp it flat when drilling, it snatches and spins. Fingers out of the brake.",
  judgement:
    "These pages do not say that a floor is safe, strong, legal or fire-proof. The technical rules of your event and its scrutineer decide what may run; suppliers' data sheets and local codes come before every figure here.",
};

/** The cautions of a step under one heading. */
export function cautionBlocks(hazards: readonly Hazard[], lettering: Lettering): readonly Block[] {
  if (hazards.length === 0) return [];
  return [
    headingBlock("Take care"),
    ...hazards.map((hazard) => paragraphBlock(CAUTIONS[hazard], CONTENT_WIDTH_MM, lettering)),
  ];
}

/** The words about one hazard. */
export const cautionWords = (hazard: Hazard): string => CAUTIONS[hazard];
