import { formatMm, formatNumber } from "../foundation/index.ts";
import type { Part } from "../patterns/index.ts";
import { foamOf, type Project } from "../project/index.ts";

/** A hand laminate of half glass and half epoxy by mass, kg/m³: 1 / (0.5/2550 + 0.5/1150). */
const SKIN_KG_PER_M3 = 1585;
/** One person for each of these, and never fewer than two (common practice). */
const KG_EACH = 10;
const LENGTH_EACH_MM = 1200;

/** What is told of turning the tray over. */
export interface Turning {
  readonly title: string;
  readonly why: string;
  readonly cautions: readonly string[];
}

/** What is turned over: its mass with one skin, and how many people carry it. */
export interface TurnedLoad {
  readonly massKg: number;
  readonly people: number;
}

/** The load of turning some parts over with their first skin on. */
export function turnedLoad(parts: readonly Part[], lengthMm: number, project: Project): TurnedLoad {
  const skinMm = project.jig.attitude === "inverted" ? project.skins.lowerMm : project.skins.upperMm;
  const massKg = parts.reduce((sum, { flatAreaMm2, thicknessMm, foamId }) => {
    const foam = foamOf(project, foamId)?.densityKgPerM3 ?? 0;
    return sum + flatAreaMm2 * 1e-9 * (thicknessMm * foam + skinMm * SKIN_KG_PER_M3);
  }, 0);
  const people = Math.max(2, Math.ceil(massKg / KG_EACH), Math.ceil(lengthMm / LENGTH_EACH_MM));
  return { massKg, people };
}

/** The step in which the tray leaves its jig with one skin on and comes to lie in its cradle. */
export function turning({ massKg, people }: TurnedLoad, project: Project): Turning {
  const isInverted = project.jig.attitude === "inverted";
  const [skinned, waiting] = isInverted ? ["air face", "upper face"] : ["upper face", "air face"];
  const paddingMm = project.jig.making?.cradle?.paddingMm ?? 0;
  return {
    title: "Turn the tray over into the cradle",
    why: `The ${waiting} lies on the jig and cannot be skinned there. With the ${skinned} skinned and cured the tray lies on that skin in the cradle, over ${formatMm(paddingMm)} mm of padding, in its drawn shape.`,
    cautions: [
      `Skin the ${skinned} first, and turn only when it has cured as its data sheet says: with one skin the foam still gives back part of its bend.`,
      `About ${formatNumber(massKg, 1)} kg with one skin: ${people} people, one at each end at least. Practise the way with nobody under it.`,
      "Tie or screw battens across it every 600 mm before it leaves the jig, take out every screw and strap, and lift straight up off the ribs; turn it about its long side.",
      "Wear gloves: cured glass edges cut, and loose fibres prick.",
    ],
  };
}
