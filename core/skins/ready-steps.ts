import { formatNumber } from "../foundation/index.ts";
import { dewPointCelsius } from "../laminate/index.ts";
import { laminateOf, type Project } from "../project/index.ts";
import { filletArcMm } from "./fillets.ts";
import { ABOVE_DEW_POINT_CELSIUS } from "./shop-problems.ts";
import type { SkinFace, SkinFaceName, SkinStep } from "./types.ts";

/** A strip over the fillet of a bonded fence runs so far onto the floor, mm (common practice). */
const STRIP_ONTO_FLOOR_MM = 50;

/** What sweats out of epoxy as it cures comes off with water, not with solvent; then 80 grit until dull (published by suppliers of epoxy). */
const MADE_DULL =
  "wash with water and dry, abrade with 80 grit until it is dull, vacuum; goggles and a dust mask on";

/** Whether a face is laid when the tray has been turned over: upright, its upper face comes first. */
export const isLaidSecond = (face: SkinFaceName, attitude: Project["jig"]["attitude"]): boolean =>
  face !== "fence sides" && (face === "upper face") === (attitude === "inverted");

/**
 * What is done before any resin of a session is opened: foam or border made ready, cured skin made ready where cloth comes
 * onto it, cloth cut and tools set out. All of a face is made ready before its first session; later ones have their border.
 */
export const readySteps = (face: SkinFace, isFirst: boolean, project: Project): readonly SkinStep[] => [
  isFirst ? foamStep(face, project) : borderStep(project),
  ...(isFirst ? [...edgeStep(face, project), ...floorStep(face, project)] : []),
  {
    title: `Cut all cloth${laminateOf(project).peelPlyKgPerM2 > 0 ? " and peel ply" : ""} of this session dry, try each piece in its place, and stack the pieces in the order of laying. Set out scale, cups, brushes, rollers, squeegee and clock; gloves and sleeves on`,
    why: "Once a pot is mixed there is no time to cut or to look for anything.",
    patchIds: [],
  },
];

function airWords(project: Project): string {
  const { shopCelsius, humidityShare } = laminateOf(project);
  const least = dewPointCelsius(shopCelsius, humidityShare) + ABOVE_DEW_POINT_CELSIUS;
  return `The shop is steady or cooling, never warming; the foam is above ${formatNumber(least, 1)} °C (at ${formatNumber(shopCelsius, 0)} °C and ${formatNumber(100 * humidityShare, 0)} % humidity)`;
}

const foamStep = ({ face }: SkinFace, project: Project): SkinStep => ({
  title: `Make the ${face === "fence sides" ? "fences" : "foam"} ready: pull every pin that is left, knock down glue that stands proud, round outside corners, vacuum; joints glued with mist have dried for a day. ${airWords(project)}`,
  why: "Cloth bridges over a ridge and lifts off a sharp corner. Warming foam blows bubbles into the skin; water on it keeps the resin from curing clear.",
  patchIds: [],
});

const borderStep = (project: Project): SkinStep => ({
  title: `Make the border ready: strip the peel ply beside this session; where it was missed or waited too long, ${MADE_DULL}. ${airWords(project)}`,
  why: "Cloth bonds to cured cloth only where that is clean and rough. Warming foam blows bubbles; water on it keeps the resin from curing clear.",
  patchIds: [],
});

/** Of the face that is laid second, where its cloth closes round an edge onto the first. */
function edgeStep({ face }: SkinFace, project: Project): readonly SkinStep[] {
  const { edgeFinish, edgeFinishes } = laminateOf(project);
  const isWrapped = edgeFinish === "wrapped" || edgeFinishes.some(({ finish }) => finish === "wrapped");
  if (!isLaidSecond(face, project.jig.attitude) || !isWrapped) return [];
  return [
    {
      title: `Where this cloth closes round an edge, cut the first skin flush with the foam and round the arris. As far as the cloth will reach onto that skin, strip its peel ply, ${MADE_DULL}`,
      why: "The first skin is cured: what is to hold on it wants it clean and rough, and a proud edge lifts the cloth.",
      patchIds: [],
    },
  ];
}

/** Of fences: the floor beside them is cured skin, and their fillets and cloth come onto it. */
function floorStep({ face }: SkinFace, project: Project): readonly SkinStep[] {
  const { filletMm, overlapMm } = laminateOf(project);
  if (face !== "fence sides") return [];
  const reachMm = filletArcMm(Math.PI / 2, filletMm) + Math.max(overlapMm, STRIP_ONTO_FLOOR_MM);
  return [
    {
      title: `Make the floor beside the fences ready, ${formatNumber(10 * Math.ceil(reachMm / 10), 0)} mm wide: strip its peel ply, ${MADE_DULL}`,
      why: "The lower skin is cured there, and the fillets and the cloth of the fences hold on it.",
      patchIds: [],
    },
  ];
}
