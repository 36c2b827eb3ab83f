import { formatMass, formatMm, formatNumber } from "../foundation/index.ts";
import type { Panel } from "./types.ts";

/** A panel in figures: what it is made of, how large, how thick, and what it takes. */
export const panelWords = (panel: Panel): string => {
  const { foamName, foamMm, lengthMm, widthMm, thicknessMm, skinMm, mixedKg, skinKg, foamKg, pieceMm2 } =
    panel;
  const share = pieceMm2 / (lengthMm * widthMm);
  return `${foamName}, ${formatMm(foamMm)} mm, ${formatMm(lengthMm)} by ${formatMm(widthMm)} mm, with a skin of ${formatNumber(skinMm, 2)} mm on each face: ${formatMm(thicknessMm)} mm thick. Mix ${formatMass(mixedKg)} for both faces; cured it weighs ${formatMass(skinKg + foamKg)}. Its pieces take ${formatNumber(100 * share, 0)} % of it.`;
};

/** What a fence is cut from, in a few words. */
export const cutFromPanelWords = (panels: readonly Panel[], stripId: string): string | undefined => {
  const panel = panels.find(({ pieces }) => pieces.some((piece) => piece.stripId === stripId));
  return (
    panel &&
    `Cut from ${panel.id} when that has cured: ${formatMm(panel.foamMm)} mm ${panel.foamName} between two skins. No more skin comes on it; its open edges are sealed.`
  );
};
