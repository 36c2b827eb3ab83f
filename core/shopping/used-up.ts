import { formatMm } from "../foundation/index.ts";
import { laminateOf } from "../project/index.ts";
import type { FinishedEdges } from "../skins/index.ts";
import type { Bench, Need } from "./types.ts";

/** Pairs of gloves that one pair of hands wears out in a session, and at each step of the glue-up (common practice). */
const [GLOVES_A_SESSION, GLOVES_A_GLUING] = [3, 1];
/** A brush or roller for each pair of hands in a session: it does not come clean (common practice). */
const BRUSHES_A_SESSION = 1;
/** Packs as they are sold in shops; cups and sticks hold one pot each (common practice). */
const PACKS = { gloves: 50, cups: 25, brushes: 10, pins: 200 } as const;
/** Pins are used again: no more than one step holds at once, and a tenth is bent (common practice). */
const PINS_BENT = 1.1;

/** What is used up besides materials that stay on the tray: gloves, mixing cups and sticks, brushes, pins, strip for inserts. */
export function usedUp({
  project,
  skins,
  panels: { panels, bonds, bondCards },
  glueUp,
}: Bench): readonly Need[] {
  const { hands } = laminateOf(project);
  const sessions = [
    ...skins.faces.flatMap((face) => face.sessions),
    ...panels.flatMap(({ faces }) => faces),
    ...(bonds.length > 0 ? [{ cards: bondCards }] : []),
  ];
  const pots = sessions.flatMap(({ cards }) => cards).reduce((sum, { count }) => sum + count, 0);
  const pins = Math.ceil(PINS_BENT * glueUp.reduce((most, step) => Math.max(most, step.pins), 0));
  const gloves = hands * (GLOVES_A_SESSION * sessions.length + GLOVES_A_GLUING * glueUp.length);
  return [
    counted("gloves", "Gloves, pairs", gloves, PACKS.gloves),
    counted("cups", "Mixing cups and sticks", pots, PACKS.cups),
    counted("brushes", "Brushes or rollers", BRUSHES_A_SESSION * hands * sessions.length, PACKS.brushes),
    counted("pins", "Pins", pins, PACKS.pins),
    ...skins.edges.flatMap(insertStrips),
  ];
}

const counted = (key: string, name: string, needed: number, packOf: number): Need => ({
  key,
  name,
  unit: "pieces",
  needed,
  packOf,
});

/** Strips are sold by this length, m; a tenth is lost in ends and mitres (common practice). */
const [STRIP_M, STRIP_OFFCUTS] = [2, 1.1];

/** Strips for hard inserts; of each thickness its own where there are several. */
function insertStrips({ finish, lengthMm, widthMm, thicknessesMm }: FinishedEdges): readonly Need[] {
  if (finish !== "insert") return [];
  const size = `${thicknessesMm.map(formatMm).join(" and ")} × ${formatMm(widthMm)}`;
  return [
    {
      key: "insert",
      name: `Strip for hard inserts, ${size} mm`,
      unit: "m",
      needed: Math.ceil((STRIP_OFFCUTS * lengthMm) / 1000),
      packOf: STRIP_M,
    },
  ];
}
