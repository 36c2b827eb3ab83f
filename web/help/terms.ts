import { pictures, type Stroke } from "./pictures.ts";

/** A word of the trade: one sentence, and one small picture. */
export interface Term {
  readonly word: string;
  readonly sentence: string;
  readonly picture: readonly Stroke[];
}

export type TermName = keyof typeof pictures;

/** What each word says, in one sentence a builder can act on. */
const SENTENCES: Readonly<Record<TermName, readonly [word: string, sentence: string]>> = {
  section: [
    "Section",
    "One piece of the floor that bends one way: you draw its outline in plan and its profile in the side view.",
  ],
  transition: [
    "Transition",
    "A sheet between two edges in space, bent so that it stretches as little as two such edges allow.",
  ],
  fence: [
    "Fence",
    "An upright sheet along a line in plan, from the floor above down to the lower edge that you draw.",
  ],
  plate: ["Plate", "Folded sheet metal: a flat base, and wings bent up or down along its straight edges."],
  opening: [
    "Opening",
    "A closed loop in plan that is cut out of everything it crosses: a wheel arch, an access hole.",
  ],
  profile: [
    "Profile",
    "The line that a section follows in the side view: how high the floor is at every station. Several sections may share one.",
  ],
  follow: [
    "Follow",
    "An edge that is another thing's edge, stored once: move the one, and the other goes with it.",
  ],
  hand: [
    "Hand",
    "Which side of the car a part belongs to: R is right, L is left; a part on the centre line has none.",
  ],
  ruling: [
    "Ruling",
    "A straight line that stays straight while the sheet bends around it; lay a batten along it and no light shows.",
  ],
  twist: [
    "Twist",
    "How far a sheet turns along one ruling. Flat stock bends without stretching only where there is none.",
  ],
  fan: ["Fan", "A stretch of a transition where all rulings start from one point, as in a cone."],
  neutralFibre: [
    "Neutral fibre",
    "The layer inside the foam that keeps its length in bending; patterns are measured along it.",
  ],
  verdict: [
    "Verdict",
    "How your foam is brought to this radius: flat, bent cold, with relief slots, in planks, or not with this foam; by the strain of its outer face.",
  ],
  skinAllowance: [
    "Skin allowance",
    "The room left for the laminate on a face, so that the finished floor lies where you drew it.",
  ],
  joint: ["Joint", "Where two parts meet and are glued; their air faces meet on the edge that you drew."],
  fold: ["Fold", "The angle by which one sheet turns away from the other at a joint; flat on is none."],
  bevel: [
    "Bevel",
    "How far an edge is cut off square, so that two sheets meet face to face: half the fold on each.",
  ],
  setBack: [
    "Set-back",
    "How far the foam ends before the edge that you drew, because of its thickness and the fold there.",
  ],
  web: [
    "Web",
    "The foam left between an opening and the nearest edge. Too narrow a web breaks while you carry it.",
  ],
  kerf: [
    "Kerf",
    "The width that the blade takes away. Cut on the waste side of the line, or the piece comes out short.",
  ],
  strip: ["Strip", "A piece that is cut from one sheet of stock: a whole part, or one of its divisions."],
  rib: [
    "Rib",
    "A board on edge that holds the foam at its height while the glue sets; its top is cut to the shape.",
  ],
  station: [
    "Station",
    "A place along the car, counted rearward in mm from the front: where you measure, and where ribs stand.",
  ],
  datum: [
    "Datum",
    "The one straight line that you draw first; every mark is measured square off it, so errors do not add up.",
  ],
  "frozen-error": [
    "Frozen error",
    "How far the foam lies off the drawn shape while the skin sets on it: it sags between ribs, and would rather be straight than bent.",
  ],
  baseboard: [
    "Baseboard",
    "The flat board that all ribs stand on. All heights are counted from its upper face, so make it true.",
  ],
  attitude: [
    "Upright or inverted",
    "How the tray lies in the jig: upright with the air face down, or inverted with its upper face down.",
  ],
  closer: [
    "Closer",
    "A part that comes between two that are fixed already: leave spare, and mark it from the gap you measure.",
  ],
  seat: [
    "Seat",
    "What the top of a fence stands on: the bare foam, or the finished skin after it has cured.",
  ],
  bendAllowance: [
    "Bend allowance",
    "The length of flat metal that a bend uses up. Bend a trial strip and measure it: metals differ.",
  ],
  seam: [
    "Seam",
    "A cut that divides a part which is larger than the stock; its strips are glued together there again.",
  ],
};

/** A word of the trade with its sentence and picture. */
export function termOf(name: TermName): Term {
  const [word, sentence] = SENTENCES[name];
  return { word, sentence, picture: pictures[name] };
}

/** Whether there is help for a word of this name. */
export const isTermName = (name: string): name is TermName => name in SENTENCES;

/** Every word that there is help for. */
export const termNames: readonly TermName[] = Object.keys(SENTENCES).filter(isTermName);
