import { formatMm } from "../foundation/index.ts";
import type { PanelPlan } from "../panels/index.ts";
import type { FinishedEdges, SkinPlan } from "../skins/index.ts";

/** Something that is used up: how much, in which packs it is sold, how many of them, and what is left of the last. */
export interface Consumable {
  readonly name: string;
  readonly needed: number;
  readonly packOf: number;
  readonly packs: number;
  readonly left: number;
}

/** Pairs of gloves that one pair of hands wears out in a session, and at each step of the glue-up (common practice). */
const [GLOVES_A_SESSION, GLOVES_A_GLUING] = [3, 1];
/** A brush or roller for each pair of hands in a session: it does not come clean (common practice). */
const BRUSHES_A_SESSION = 1;
/** Packs as they are sold in shops; cups and sticks hold one pot each (common practice). */
const PACKS = { gloves: 50, cups: 25, brushes: 10, pins: 200 } as const;
/** Pins are used again: no more than one step holds at once, and a tenth is bent (common practice). */
const PINS_BENT = 1.1;

/** What is used up besides materials that stay on the tray: gloves, mixing cups and sticks, brushes, pins. */
export function consumablesOf(
  skins: SkinPlan,
  { panels, bonds, bondCards }: PanelPlan,
  gluing: readonly { readonly pins: number }[],
  hands: number,
): readonly Consumable[] {
  const sessions = [
    ...skins.faces.flatMap((face) => face.sessions),
    ...panels.flatMap(({ faces }) => faces),
    ...(bonds.length > 0 ? [{ cards: bondCards }] : []),
  ];
  const pots = sessions.flatMap(({ cards }) => cards).reduce((sum, { count }) => sum + count, 0);
  const pins = Math.ceil(PINS_BENT * gluing.reduce((most, step) => Math.max(most, step.pins), 0));
  return [
    packed(
      "Gloves, pairs",
      hands * (GLOVES_A_SESSION * sessions.length + GLOVES_A_GLUING * gluing.length),
      PACKS.gloves,
    ),
    packed("Mixing cups and sticks", pots, PACKS.cups),
    packed("Brushes or rollers", BRUSHES_A_SESSION * hands * sessions.length, PACKS.brushes),
    packed("Pins", pins, PACKS.pins),
    ...skins.edges.flatMap(insertStrips),
  ].filter(({ needed }) => needed > 0);
}

/** Strips for hard inserts, in metres, with the offcuts of their ends; of each thickness its own where there are several. */
const insertStrips = ({ finish, lengthMm, widthMm, thicknessesMm }: FinishedEdges): readonly Consumable[] =>
  finish === "insert"
    ? [
        packed(
          `Strip for hard inserts, ${thicknessesMm.map(formatMm).join(" and ")} × ${formatMm(widthMm)} mm, m`,
          Math.ceil((STRIP_OFFCUTS * lengthMm) / 1000),
          STRIP_M,
        ),
      ]
    : [];

/** Strips are sold by this length, m; a tenth is lost in ends and mitres (common practice). */
const [STRIP_M, STRIP_OFFCUTS] = [2, 1.1];

function packed(name: string, needed: number, packOf: number): Consumable {
  const packs = Math.ceil(needed / packOf);
  return { name, needed, packOf, packs, left: packs * packOf - needed };
}
