import type { Problem } from "../foundation/index.ts";
import { makingOf, ribBoardOf } from "../project/index.ts";
import type { Sheet } from "../surfaces/index.ts";
import { orderOfAssembly } from "./assembly.ts";
import { baseOfRibs } from "./base-of-ribs.ts";
import { boardHeight } from "./board-height.ts";
import { boardLevel } from "./board-level.ts";
import { type FenceBand, notchesInRib } from "./fence-notches.ts";
import { fenceStands } from "./fence-stands.ts";
import { finishRib } from "./finish-rib.ts";
import type { JigGround } from "./jig-ground.ts";
import { endedPieces, heightOn, type JigPiece, jigPiece, pieceId, topsOf } from "./jig-piece.ts";
import type { Laid } from "./laid/laid-face.ts";
import { outboardPlaces } from "./outboard-places.ts";
import { postsOf } from "./posts.ts";
import { type Hanging, releaseOf } from "./release.ts";
import type { DepthOf } from "./resting-depth.ts";
import { restingFace } from "./resting-face.ts";
import { ribPlaces } from "./rib-places.ts";
import {
  bevelProblem,
  fenceProblem,
  holeProblem,
  lockedProblem,
  makingProblems,
  nothingProblem,
  overlapProblem,
  releaseProblem,
} from "./rib-problems.ts";
import { markSameOutlines } from "./same-outlines.ts";
import type { SeamLine } from "./seam-lines.ts";
import type { Rib, RibSet } from "./types.ts";

/** Which face of the tray some ribs carry, and what they make room for. */
export interface Stand {
  readonly stand: Rib["stand"];
  readonly attitude: Rib["attitude"];
  readonly depthOf: DepthOf;
  readonly bands: readonly FenceBand[];
  readonly seams: readonly SeamLine[];
  /** How the foam lies where that is not as drawn. */
  readonly laid: Laid;
  /** What is on the shell when it is lifted, besides what lies on the ribs. */
  readonly hanging: Hanging["faces"];
}

/** A set of ribs, and what is wrong with them. */
export interface RibSetting {
  readonly set: RibSet;
  readonly problems: readonly Problem[];
}

/**
 * The ribs under one face of the tray and the board under them. Problems: rib-under-nothing for a typed place without a
 * sheet, rib-in-fence, rib-needs-bevel, ribs-overlap, rib-hole-does-not-fit, rib-not-spliced, rib-higher-than-board,
 * rib-locked-out, shell-locked, baseboard-in-tray.
 */
export function ribSet(sheets: readonly Sheet[], project: JigGround, stand: Stand): RibSetting {
  const { attitude, bands, seams } = stand;
  const face = restingFace(sheets, attitude, stand.depthOf, stand.laid);
  const { boardHeights } = makingOf(project);
  // What was measured is the board under the jig.
  const boardAt = boardHeight(stand.stand === "jig" ? boardHeights : []);
  if (face === undefined) return { set: emptySet(attitude, project), problems: [] };
  const thicknessMm = ribBoardOf(project)?.thicknessMm ?? 0;
  const found = [...ribPlaces(project, face), ...outboardPlaces(stand.laid)]
    .map((place) => (stand.stand === "jig" ? place : { ...place, id: `C${place.id}` }))
    .map((place) => ({ place, tops: topsOf(place, face) }));
  const { levelZMm, problems } = boardLevel(
    found.flatMap(({ tops }) => tops.flat()),
    bands,
    { attitude, stand: stand.stand, project },
  );
  const settings = { project, ...stand, levelZMm, thicknessMm, boardAt, seams };
  const whole = found.flatMap(({ place, tops }) =>
    tops.map((top, i) => jigPiece({ ...place, id: pieceId(place, tops, i) }, top, face, settings)),
  );
  const inFence = whole.flatMap((piece) => {
    const fencePartId = fenceAlong(piece, bands);
    return fencePartId === undefined ? [] : [{ ribId: piece.id, piece, fencePartId }];
  });
  const pieces = endedPieces(
    whole.filter((piece) => inFence.every((other) => other.piece !== piece)),
    settings,
  );
  const ribs = markSameOutlines(pieces.map((piece) => finishRib(piece, pieces, settings)));
  const assembly = orderOfAssembly(ribs);
  const release = releaseOf(
    ribs,
    face,
    { fences: bands, faces: stand.hanging },
    {
      attitude,
      heightOf: (zMm) => heightOn(settings, zMm),
      proudLimitMm: project.jig.proudLimitMm,
    },
  );
  const empty = found.filter(({ tops }) => tops.length === 0);
  return {
    set: {
      ribs,
      baseboard: baseOfRibs(ribs, settings),
      assembly,
      posts: postsOf(pieces, settings),
      fenceStands:
        stand.stand === "jig" && attitude === "upright" ? fenceStands(sheets, levelZMm, inFence) : [],
      release,
    },
    problems: [
      ...problems,
      ...(stand.stand === "jig" ? empty.flatMap(({ place }) => nothingProblem(place, project)) : []),
      ...inFence.flatMap(({ piece, fencePartId }) => fenceProblem(piece, fencePartId, project)),
      ...pieces.flatMap((piece) => bevelProblem(piece, project)),
      ...pieces.flatMap((piece, i) => overlapProblem(piece, pieces.slice(0, i))),
      ...ribs.flatMap((rib) => makingProblems(rib, project)),
      ...holeProblem(ribs, project),
      ...assembly.flatMap(lockedProblem),
      ...ribs.flatMap((rib) =>
        release.locks.filter(({ ribId }) => ribId === rib.id).flatMap((lock) => releaseProblem(lock, rib)),
      ),
    ],
  };
}

const emptySet = (attitude: Rib["attitude"], project: JigGround): RibSet => ({
  ribs: [],
  baseboard: baseOfRibs([], { attitude, levelZMm: 0, project, boardAt: () => 0 }),
  assembly: [],
  posts: [],
  fenceStands: [],
  release: { direction: "straight up from the board", steepestRad: 0, locks: [] },
});

/** A rib of which a fence takes more than half stands in the fence's way. */
const MOST_OF_RIB = 0.5;

/** The fence that runs along in a rib, where there is one: it carries the sheet there itself. */
function fenceAlong(piece: JigPiece, bands: readonly FenceBand[]): string | undefined {
  const first = piece.points[0]?.atMm ?? 0;
  const last = piece.points[piece.points.length - 1]?.atMm ?? 0;
  return notchesInRib(bands, piece.runs, piece.body).find(({ fromMm, toMm }) => {
    const takenMm = Math.min(last, toMm) - Math.max(first, fromMm);
    return takenMm > MOST_OF_RIB * (last - first);
  })?.fencePartId;
}
