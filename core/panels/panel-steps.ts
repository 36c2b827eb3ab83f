import { formatMass, formatMm, formatNumber, toDegrees } from "../foundation/index.ts";
import type { Panel, PanelStep } from "./types.ts";

/** What stands before a cured panel is sawn. Published guidance on fibrous glass dust; the mask is common practice. */
export const CURED_GLASS_CAUTION =
  "Sawing and sanding cured glass throws fine, sharp dust: goggles, gloves, long sleeves and a P2, N95 or better mask, with extraction or outdoors. Cut edges are knives until they are sanded. The data sheets of cloth and resin come before this page.";

/** The words of a panel follow from this much of it. */
export type SteppedPanel = Omit<Panel, "steps">;

/** How a panel is made, in order, each step with its reason. */
export function panelSteps(panel: SteppedPanel): readonly PanelStep[] {
  const { lengthMm, widthMm, foamMm, edgeMm, faces, plies, peelPlyMm2, curedHours, thicknessMm, pieces } =
    panel;
  const hours = formatNumber(curedHours, 0);
  const peel = peelPlyMm2 > 0 ? ", then peel ply over all of it" : "";
  const cloth = plies.map(
    ({ clothName, warpRad }, i) =>
      `ply ${i + 1} ${clothName}, warp ${formatNumber(toDegrees(warpRad), 0)}° to its length`,
  );
  const [first, second] = faces;
  return [
    {
      part: "lay-up",
      title: `Cut the foam ${formatMm(lengthMm)} by ${formatMm(widthMm)} mm, ${formatMm(foamMm)} mm thick; sand off its skin, vacuum it, and lay it on film on a flat bench`,
      why: "A panel cures as flat as what it lies on, and cannot be bent true later: under a straightedge the bench shows no more than a millimetre.",
    },
    {
      part: "lay-up",
      title: `First face: wet the foam, ${cloth.join("; ")}${peel}. ${formatNumber(first.workMinutes, 0)} min of work, ${formatMass(first.mixedKg)} mixed`,
      why: "Flat on the bench cloth is laid quicker and leaner than on a standing fence.",
    },
    {
      part: "lay-up",
      title: `Lay film, a flat board and weights over it, and leave it for ${hours} h`,
      why: "With a skin on one face only it bows as the resin sets.",
    },
    {
      part: "lay-up",
      title: `Turn it over, knock off drips, vacuum; second face as the first, ${formatMass(second.mixedKg)} mixed. Under the board again for ${hours} h`,
      why: "The same plies on both faces hold each other, so that it stays flat.",
    },
    {
      part: "lay-up",
      title: `Measure its thickness in several places: ${formatMm(thicknessMm)} mm is reckoned. Type what you find at its fences before you print their templates`,
      why: "The bevel of the upper edge, and the notches in ribs, follow the real thickness.",
    },
    {
      part: "cut",
      title: `Trim ${formatMm(edgeMm)} mm off all round. Mark ${pieces.map(({ stripId }) => stripId).join(", ")} by their templates, saw outside the line with a fine blade, sand to it; tilt the blade or sand for the bevel of the upper edge. The peel ply stays on`,
      why: "Cut before it has cured through, skins tear off the foam; the edges of the panel are dry or rich in resin.",
    },
    {
      part: "cut",
      title:
        "Seal every edge that stays open: brush resin on until the foam drinks no more. Where an edge may be knocked, dig the foam out 5 mm deep and fill it with thickened resin",
      why: "Open foam takes up water and lets go of its skins from there. No cloth goes round these edges.",
    },
  ];
}
