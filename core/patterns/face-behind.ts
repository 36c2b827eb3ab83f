import type { BendFace } from "../bending/index.ts";
import type { Part } from "./types.ts";

const FACES_BEHIND: Readonly<Record<Part["faceShown"], BendFace>> = {
  "upper face": "lower face",
  "inboard face": "outboard face",
};

/** The face of a part that lies behind the one that its pattern shows. */
export const faceBehind = ({ faceShown }: Pick<Part, "faceShown">): BendFace => FACES_BEHIND[faceShown];
