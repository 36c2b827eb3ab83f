import { type Memory, NO_MEMORY, type Problem } from "../foundation/index.ts";
import { ribBoardOf } from "../project/index.ts";
import type { Sheet } from "../surfaces/index.ts";
import { baseOfRibs, levelOf } from "./base-of-ribs.ts";
import { fenceBands } from "./fence-notches.ts";
import { finishRib } from "./finish-rib.ts";
import { JIG_GROUND, type JigGround } from "./jig-ground.ts";
import { endedPieces, jigPiece, pieceId, topsOf } from "./jig-piece.ts";
import { restingFace } from "./resting-face.ts";
import { ribPlaces } from "./rib-places.ts";
import { bevelProblem, nothingProblem, overlapProblem } from "./rib-problems.ts";
import { markSameOutlines } from "./same-outlines.ts";
import type { Jig } from "./types.ts";

/**
 * The jig: every rib with its true-size outline, the heights at both faces, and the baseboard. A rib's top is the
 * foam face that rests on it, in the jig's own attitude: upright it is the lower core face, inverted the upper
 * one with the tray upside down. A rib that runs over an interval without foam is several pieces. Problems:
 * rib-under-nothing for a typed place without a sheet, rib-needs-bevel, ribs-overlap.
 */
export function buildJig(sheets: readonly Sheet[], project: JigGround, memory: Memory = NO_MEMORY): Jigging {
  // Fences hang free of an inverted jig.
  const held = project.jig.attitude === "upright" ? sheets : sheets.filter(({ kind }) => kind !== "fence");
  const from = [...JIG_GROUND.map((field) => project[field]), ...held];
  return memory.recall("jig", from, () => jigUnder(held, project));
}

interface Jigging {
  readonly jig: Jig;
  readonly problems: readonly Problem[];
}

function jigUnder(sheets: readonly Sheet[], project: JigGround): Jigging {
  const { attitude, leastHeightMm } = project.jig;
  const face = restingFace(sheets, attitude);
  const places = face === undefined ? [] : ribPlaces(project, face);
  const bands = attitude === "upright" ? fenceBands(sheets, project) : [];
  const found = face === undefined ? [] : places.map((place) => ({ place, tops: topsOf(place, face) }));
  const allTops = found.flatMap(({ tops }) => tops.flat());
  const levelZMm = levelOf(allTops, bands, { attitude, leastHeightMm });
  const thicknessMm = ribBoardOf(project)?.thicknessMm ?? 0;
  const settings = { project, attitude, bands, levelZMm, thicknessMm };
  const whole =
    face === undefined
      ? []
      : found.flatMap(({ place, tops }) =>
          tops.map((top, i) => jigPiece({ ...place, id: pieceId(place, tops, i) }, top, face, settings)),
        );
  const pieces = endedPieces(whole, settings);
  const ribs = markSameOutlines(pieces.map((piece) => finishRib(piece, pieces, settings)));
  const empty = found.filter(({ tops }) => tops.length === 0);
  return {
    jig: { ribs, baseboard: baseOfRibs(ribs, { attitude, levelZMm }) },
    problems: [
      ...empty.flatMap(({ place }) => nothingProblem(place, project)),
      ...pieces.flatMap((piece) => bevelProblem(piece, project)),
      ...pieces.flatMap((piece, i) => overlapProblem(piece, pieces.slice(0, i))),
    ],
  };
}
