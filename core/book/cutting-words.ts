import { kerfOutsideMm } from "../cutting/index.ts";
import { formatMm } from "../foundation/index.ts";
import type { Project } from "../project/index.ts";
import type { Hazard } from "./cautions.ts";

type CuttingSettings = Project["cutting"];

/** What the tool that foam is cut with is called, and what there is to mind about it. */
const TOOLS: Readonly<Record<CuttingSettings["tool"], { readonly name: string; readonly hazard: Hazard }>> = {
  knife: { name: "knife", hazard: "knife" },
  saw: { name: "saw", hazard: "saw" },
  "hot-wire": { name: "hot wire", hazard: "hot wire" },
  router: { name: "router", hazard: "router" },
};

/** The hazard of the tool that foam is cut with. */
export const toolHazard = ({ tool }: CuttingSettings): Hazard => TOOLS[tool].hazard;

/**
 * Where the blade runs when foam is cut by the printed line. The line lies outside the finished one by 0, half the
 * kerf or the whole of it (see `Strip.cutLinesMm`), so that the part comes out at its size each time.
 */
export function bladeWords({ kerfMm, bladeSide }: CuttingSettings): string {
  if (!(kerfMm > 0)) return "cut to the centre of the line";
  switch (bladeSide) {
    case "waste":
      return "the blade takes the waste side of the line";
    case "middle":
      return "the middle of the blade runs on the line";
    case "part":
      return "the blade takes the part side of the line";
  }
}

/** Tool, kerf, blade side and trim of the foam in one line, for pages that show the lines to cut by. */
export const cuttingWords = (cutting: CuttingSettings): string =>
  `Foam: ${toolWords(cutting)}, ${bladeWords(cutting)}; ${trimWords(cutting)}.`;

/** The same for pages that show the finished lines: where the lines to cut by lie beside them. */
export function cuttingBesideWords(cutting: CuttingSettings): string {
  const outsideMm = kerfOutsideMm(cutting);
  const line =
    outsideMm > 0
      ? `the line to cut by lies ${formatMm(outsideMm)} mm outside the finished line`
      : "the line to cut by is the finished line";
  return `Foam: ${toolWords(cutting)}; ${line}: ${bladeWords(cutting)}; ${trimWords(cutting)}.`;
}

const toolWords = ({ tool, kerfMm }: CuttingSettings): string =>
  `${TOOLS[tool].name}, ${kerfMm > 0 ? `kerf ${formatMm(kerfMm)} mm` : "no kerf"}`;

const trimWords = ({ trimMm }: CuttingSettings): string =>
  trimMm > 0 ? `${formatMm(trimMm)} mm of trim outside free edges` : "no trim";
