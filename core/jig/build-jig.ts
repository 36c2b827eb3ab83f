import type { Seam } from "../cutting/index.ts";
import { type Memory, NO_MEMORY, type Problem } from "../foundation/index.ts";
import type { Part } from "../patterns/index.ts";
import type { FoldedPlate } from "../plates/index.ts";
import type { Sheet } from "../surfaces/index.ts";
import { cradleStand } from "./cradle.ts";
import { fenceBands } from "./fence-notches.ts";
import { hangingSheets } from "./hanging-sheets.ts";
import { JIG_GROUND, type JigGround } from "./jig-ground.ts";
import { isOverBent, type OverBend } from "./laid/find-over-bend.ts";
import { AS_DRAWN, type Laid } from "./laid/laid-face.ts";
import { markOverBent, overBending } from "./laid/over-bending.ts";
import type { Hanging } from "./release.ts";
import { bodyOn, restingDepth } from "./resting-depth.ts";
import { ribSet } from "./rib-set.ts";
import { seamLines } from "./seam-lines.ts";
import type { Jig } from "./types.ts";

/** What comes together over the ribs: parts, the seams between their strips, folded plates, and how the foam lies. */
export interface Glued {
  readonly parts: readonly Part[];
  readonly seams: readonly Seam[];
  readonly plates: readonly FoldedPlate[];
  readonly laid?: Laid;
  /** How its ribs are bent too far, or would be. */
  readonly overBend?: OverBend | undefined;
}

/**
 * The jig: every rib with its true-size outline, the heights at both faces, and the baseboard. A rib's top is the
 * foam face that rests on it, in the jig's own attitude: upright it is the lower core face, inverted the upper
 * one with the tray upside down. A rib that runs over an interval without foam is several pieces. Where the document asks
 * for a cradle, a second set carries the face that was skinned first. Problems: those of `ribSet`.
 */
export function buildJig(
  sheets: readonly Sheet[],
  project: JigGround,
  memory: Memory = NO_MEMORY,
  glued: Glued = { parts: [], seams: [], plates: [] },
): Jigging {
  const { attitude, making } = project.jig;
  // Fences hang free of an inverted jig, and in its cradle.
  const isFree = attitude === "inverted" && making?.cradle === undefined;
  const held = isFree ? sheets.filter(({ kind }) => kind !== "fence") : sheets;
  const from = [
    ...JIG_GROUND.map((field) => project[field]),
    ...held,
    ...glued.seams,
    ...glued.plates,
    glued.laid,
    glued.overBend,
  ];
  return memory.recall("jig", from, () => jigUnder(held, project, glued));
}

interface Jigging {
  readonly jig: Jig;
  readonly problems: readonly Problem[];
}

function jigUnder(
  sheets: readonly Sheet[],
  project: JigGround,
  { parts, seams, plates, laid = AS_DRAWN, overBend }: Glued,
): Jigging {
  const { attitude } = project.jig;
  const depthOf = restingDepth(attitude);
  const wings = plates.flatMap(wingsOf);
  const standing = sheets.filter((sheet) => sheet.kind === "fence" && sheet.standsFirst);
  const { set, problems } = ribSet(sheets, project, {
    stand: "jig",
    attitude,
    depthOf,
    bands: attitude === "upright" ? fenceBands(standing, project) : [],
    seams: seamLines(seams, parts, sheets, depthOf),
    laid,
    hanging: [...wings, ...hangingSheets(sheets, bodyOn(attitude))],
  });
  const stand = cradleStand(sheets, project, wings);
  const cradle = stand && ribSet(sheets, project, stand);
  const bending = overBend && overBending(overBend, set.ribs, isOverBent(overBend, project));
  return {
    jig: {
      ...set,
      ribs: bending?.applied ? set.ribs.map((rib) => markOverBent(rib, bending)) : set.ribs,
      ...(cradle && { cradle: cradle.set }),
      ...(bending && { overBend: bending }),
    },
    problems: [...problems, ...(cradle?.problems ?? [])],
  };
}

/** The wings of a plate on all its hands, each with both faces. */
const wingsOf = ({ parts, wings }: FoldedPlate): Hanging["faces"] =>
  parts.flatMap(({ id, hand }) =>
    wings.map(({ airFace, upperFace }) => ({
      by: "wing" as const,
      partId: id,
      faces: [airFace, upperFace].map((face) =>
        hand === "left" ? face.map(({ x, y, z }) => ({ x, y: -y, z })) : face,
      ),
    })),
  );
