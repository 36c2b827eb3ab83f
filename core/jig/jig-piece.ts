import { at, type FlatPoint, type PlanPoint } from "../foundation/index.ts";
import type { BoardHeight } from "./board-height.ts";
import { type CrossingRib, endsOf } from "./crossing-rib.ts";
import { endsAtFaces } from "./ends-at-faces.ts";
import type { FenceBand } from "./fence-notches.ts";
import type { JigGround } from "./jig-ground.ts";
import type { Rest, RestingFace } from "./resting-face.ts";
import { type BodyChoice, type BodySide, chooseBody } from "./rib-body.ts";
import type { RibPlace } from "./rib-places.ts";
import type { SeamLine } from "./seam-lines.ts";
import { simplifyTop } from "./simplify-top.ts";
import { type TopPoint, topBetween, topStretches } from "./top-stretches.ts";
import type { Baseboard, Rib } from "./types.ts";

/** What simplifying may move a rib's top by; with the sampling it stays under 0.01, mm. */
const SIMPLIFY_MM = 0.003;

/** A rib, or a piece of one, while it is made. */
export interface JigPiece extends CrossingRib {
  readonly atMm: number;
  readonly isOutboard: boolean;
  readonly points: readonly TopPoint[];
  readonly choice: BodyChoice;
  readonly restAt: (offsetMm: number, alongMm: number) => Rest | undefined;
}

/** What all ribs of one set have in common. */
export interface JigSettings {
  readonly project: JigGround;
  readonly stand: Rib["stand"];
  readonly attitude: Baseboard["attitude"];
  /** The fences that the ribs are notched for. */
  readonly bands: readonly FenceBand[];
  readonly levelZMm: number;
  readonly thicknessMm: number;
  readonly boardAt: BoardHeight;
  /** Seams between strips of one part, as lines in plan. */
  readonly seams: readonly SeamLine[];
}

/** The point of the plan that lies so far along a line across or along. */
export const planPoint = (runs: "across" | "along", atMm: number, alongMm: number): PlanPoint =>
  runs === "across" ? { x: atMm, y: alongMm } : { x: alongMm, y: atMm };

/** Height above the baseboard of a height above ground: turned over, what is low stands high. */
export const heightOn = ({ attitude, levelZMm }: JigSettings, zMm: number): number =>
  attitude === "upright" ? zMm - levelZMm : levelZMm - zMm;

/** The stretches of a rib's line on which foam rests. */
export function topsOf({ runs, atMm }: RibPlace, face: RestingFace): TopPoint[][] {
  const axis = runs === "across" ? "y" : "x";
  const restAt = (alongMm: number) => face.at(planPoint(runs, atMm, alongMm));
  return topStretches(restAt, face.least[axis] - face.reachMm - 1, face.most[axis] + face.reachMm + 1);
}

/** `A2` when in one piece; `A2R` and `A2L` when two pieces lie on both sides of the centre line; else `A2-1` … */
export function pieceId(
  { id, runs }: RibPlace,
  tops: readonly (readonly TopPoint[])[],
  index: number,
): string {
  if (tops.length === 1) return id;
  const [left, right] = tops;
  const isPair =
    runs === "across" && tops.length === 2 && at(left ?? [], -1).atMm <= 0 && at(right ?? [], 0).atMm >= 0;
  return isPair ? `${id}${index === 0 ? "L" : "R"}` : `${id}-${index + 1}`;
}

/** The rib under one stretch of foam: where its body lies, and its top. */
export function jigPiece(
  place: RibPlace,
  points: readonly TopPoint[],
  face: RestingFace,
  settings: JigSettings,
): JigPiece {
  const { runs, atMm } = place;
  const { project, attitude, thicknessMm } = settings;
  const restAt = (offsetMm: number, alongMm: number) => face.at(planPoint(runs, atMm + offsetMm, alongMm));
  const upSign = attitude === "upright" ? 1 : -1;
  // Mirrored ribs along have mirrored bodies, so a level top puts both outward.
  const levelSide: BodySide = runs === "along" && atMm < 0 ? -1 : 1;
  const choice = chooseBody(points, restAt, {
    thicknessMm,
    proudLimitMm: project.jig.proudLimitMm,
    upSign,
    levelSide,
  });
  const farMm = atMm + choice.side * thicknessMm;
  return {
    id: place.id,
    runs,
    atMm,
    isOutboard: place.isOutboard,
    points,
    choice,
    restAt,
    body: [Math.min(atMm, farMm), Math.max(atMm, farMm)],
    top: lineOfTop(points, settings),
  };
}

function lineOfTop(points: readonly TopPoint[], settings: JigSettings): FlatPoint[] {
  const line = points.map(({ atMm: u, zMm }) => ({ u, v: heightOn(settings, zMm) }));
  return simplifyTop(line, SIMPLIFY_MM);
}

/** The pieces with those ends taken off that would reach a little way into the board of another rib. */
export function endedPieces(pieces: readonly JigPiece[], settings: JigSettings): JigPiece[] {
  const stretches = endsAtFaces(pieces);
  return pieces.flatMap((piece, i) => {
    const stretch = stretches[i];
    if (stretch === undefined) return [];
    const [fromMm, toMm] = endsOf(piece);
    if (stretch[0] === fromMm && stretch[1] === toMm) return [piece];
    const points = topBetween(piece.points, stretch);
    return [{ ...piece, points, top: lineOfTop(points, settings) }];
  });
}
