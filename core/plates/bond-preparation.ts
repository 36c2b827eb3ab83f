/** Hazards of bonding metal that a step carries its cautions for. */
export type BondHazard = "epoxy" | "solvent" | "metal dust" | "metal edges";

/** One act of bonding foam to a plate, in its order. */
export interface BondStep {
  readonly kind: "deburr" | "degrease" | "abrade" | "coat" | "bond" | "fasten";
  readonly title: string;
  readonly words: string;
  readonly hazards: readonly BondHazard[];
}

/**
 * How foam is bonded to a folded plate. The oxide on bare aluminium grows back within minutes and holds no glue, so
 * the last abrading is done under wet epoxy; and a bonded edge peels, so it is also fastened. Common practice of boat
 * and aircraft home builders; the adhesive maker's sheet comes first.
 */
export function bondPreparation(bondLineMm: number): readonly BondStep[] {
  return [
    {
      kind: "deburr",
      title: "Break the edges",
      words:
        "Fold the plate first, then file all edges, reliefs and corners round: burrs lift the bond and cut cloth and hands.",
      hazards: ["metal edges"],
    },
    {
      kind: "degrease",
      title: "Degrease",
      words:
        "Wipe with solvent on a clean cloth, one way, a fresh side for each wipe, before anything is abraded. Wipe off with a second dry cloth before it dries. No bare fingers after this. Keep solvent away from the foam: it dissolves polystyrene.",
      hazards: ["solvent"],
    },
    {
      kind: "abrade",
      title: "Abrade",
      words:
        "Abrade crosswise with 80 to 120 grit until no shiny spot is left. Wipe once more. Water must spread over it as a film; where it draws into drops, begin again.",
      hazards: ["metal dust"],
    },
    {
      kind: "coat",
      title: "Coat and abrade wet",
      words:
        "Brush on a thin coat of epoxy at once, and abrade the metal again through the wet epoxy, so that no air reaches the fresh metal. Wipe most of it off.",
      hazards: ["epoxy"],
    },
    {
      kind: "bond",
      title: "Bond at once",
      words: `While that coat is wet or still tacky, lay on thickened epoxy and set the foam down. Spacers (glass beads or bits of wire of ${round(bondLineMm)} mm) keep the bond line; weights, not clamps, or it starves. Let no time pass between coat and bond.`,
      hazards: ["epoxy"],
    },
    {
      kind: "fasten",
      title: "Fasten the edges",
      words:
        "A bond on metal fails by peeling from an edge. Bolt or rivet along every edge and at wing ends as well, through solid inserts, never through bare foam.",
      hazards: ["metal edges"],
    },
  ];
}

const round = (lengthMm: number): string => String(Math.round(lengthMm * 100) / 100);
