import {
  at,
  type FlatPoint,
  type Memory,
  NO_MEMORY,
  type PlanPoint,
  type Problem,
} from "../foundation/index.ts";
import { ribBoardOf } from "../project/index.ts";
import type { Sheet } from "../surfaces/index.ts";
import { type CrossingRib, endsOf, sharedMm } from "./crossing-rib.ts";
import { endsAtFaces } from "./ends-at-faces.ts";
import { farFace } from "./far-face.ts";
import { type FenceBand, fenceBands, notchesInRib } from "./fence-notches.ts";
import { halfLaps } from "./half-laps.ts";
import { JIG_GROUND, type JigGround } from "./jig-ground.ts";
import { type Rest, type RestingFace, restingFace } from "./resting-face.ts";
import { type BodyChoice, type BodySide, chooseBody } from "./rib-body.ts";
import { ribHeights } from "./rib-heights.ts";
import { type RibCut, ribOutline } from "./rib-outline.ts";
import { type RibPlace, ribPlaces } from "./rib-places.ts";
import { markSameOutlines } from "./same-outlines.ts";
import { simplifyTop, worstBetween } from "./simplify-top.ts";
import { type TopPoint, topBetween, topStretches } from "./top-stretches.ts";
import type { Baseboard, Jig, Rib } from "./types.ts";

/** Fences hang clear of the baseboard by this, mm. */
const FENCE_CLEARANCE_MM = 10;
/** A notch goes deeper than the fence by this, mm. */
const NOTCH_CLEARANCE_MM = 3;
/** What simplifying may move a rib's top by; with the sampling it stays under 0.01, mm. */
const SIMPLIFY_MM = 0.003;
/** A top this straight needs no template, mm. */
const STRAIGHT_TOP_MM = 0.05;
/** The baseboard reaches beyond the ribs by this, mm. */
const BASE_MARGIN_MM = 50;

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
  const { attitude } = project.jig;
  const face = restingFace(sheets, attitude);
  const places = face === undefined ? [] : ribPlaces(project, face);
  const bands = attitude === "upright" ? fenceBands(sheets, project) : [];
  const found = face === undefined ? [] : places.map((place) => ({ place, tops: topsOf(place, face) }));
  const levelZMm = levelOf(
    found.flatMap(({ tops }) => tops.flat()),
    bands,
    project,
  );
  const jigSettings = { project, bands, levelZMm, thicknessMm: ribBoardOf(project)?.thicknessMm ?? 0 };
  const whole =
    face === undefined
      ? []
      : found.flatMap(({ place, tops }) =>
          tops.map((top, i) => pieceOf({ ...place, id: pieceId(place, tops, i) }, top, face, jigSettings)),
        );
  const pieces = endedPieces(whole, jigSettings);
  const ribs = markSameOutlines(pieces.map((piece) => finishRib(piece, pieces, jigSettings)));
  const empty = found.filter(({ tops }) => tops.length === 0);
  return {
    jig: { ribs, baseboard: baseboardOf(ribs, attitude, levelZMm) },
    problems: [
      ...empty.flatMap(({ place }) => nothingProblem(place, project)),
      ...pieces.flatMap((piece) => bevelProblem(piece, project)),
      ...pieces.flatMap((piece, i) => overlapProblem(piece, pieces.slice(0, i))),
    ],
  };
}

/** A rib, or a piece of one, while it is made. */
interface Piece extends CrossingRib {
  readonly atMm: number;
  readonly points: readonly TopPoint[];
  readonly choice: BodyChoice;
  readonly restAt: (offsetMm: number, alongMm: number) => Rest | undefined;
}

interface JigSettings {
  readonly project: JigGround;
  readonly bands: readonly FenceBand[];
  readonly levelZMm: number;
  readonly thicknessMm: number;
}

const planPoint = (runs: "across" | "along", atMm: number, alongMm: number): PlanPoint =>
  runs === "across" ? { x: atMm, y: alongMm } : { x: alongMm, y: atMm };

function topsOf({ runs, atMm }: RibPlace, face: RestingFace): TopPoint[][] {
  const axis = runs === "across" ? "y" : "x";
  const restAt = (alongMm: number) => face.at(planPoint(runs, atMm, alongMm));
  return topStretches(restAt, face.least[axis] - face.reachMm - 1, face.most[axis] + face.reachMm + 1);
}

/** Height of the baseboard, above ground (upright) or as the level that the tray is turned over to (inverted). */
function levelOf(tops: readonly TopPoint[], bands: readonly FenceBand[], { jig }: JigGround): number {
  if (tops.length === 0) return 0;
  if (jig.attitude === "inverted") {
    return tops.reduce((most, { zMm }) => Math.max(most, zMm), Number.NEGATIVE_INFINITY) + jig.leastHeightMm;
  }
  const leastTopMm = tops.reduce((least, { zMm }) => Math.min(least, zMm), Number.POSITIVE_INFINITY);
  const leastFenceMm = Math.min(...bands.map(({ leastZMm }) => leastZMm));
  return Math.min(leastTopMm - jig.leastHeightMm, leastFenceMm - FENCE_CLEARANCE_MM);
}

/** `A2` when in one piece; `A2R` and `A2L` when two pieces lie on both sides of the centre line; else `A2-1` … */
function pieceId({ id, runs }: RibPlace, tops: readonly (readonly TopPoint[])[], index: number): string {
  if (tops.length === 1) return id;
  const [left, right] = tops;
  const isPair =
    runs === "across" && tops.length === 2 && at(left ?? [], -1).atMm <= 0 && at(right ?? [], 0).atMm >= 0;
  return isPair ? `${id}${index === 0 ? "L" : "R"}` : `${id}-${index + 1}`;
}

function pieceOf(
  place: RibPlace,
  points: readonly TopPoint[],
  face: RestingFace,
  settings: JigSettings,
): Piece {
  const { runs, atMm } = place;
  const { project, thicknessMm } = settings;
  const restAt = (offsetMm: number, alongMm: number) => face.at(planPoint(runs, atMm + offsetMm, alongMm));
  const upSign = project.jig.attitude === "upright" ? 1 : -1;
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
    points,
    choice,
    restAt,
    body: [Math.min(atMm, farMm), Math.max(atMm, farMm)],
    top: lineOfTop(points, settings),
  };
}

function lineOfTop(points: readonly TopPoint[], { project, levelZMm }: JigSettings): FlatPoint[] {
  const line = points.map(({ atMm: u, zMm }) => ({ u, v: heightOn(project, levelZMm, zMm) }));
  return simplifyTop(line, SIMPLIFY_MM);
}

/** The pieces with those ends taken off that would reach a little way into the board of another rib. */
function endedPieces(pieces: readonly Piece[], settings: JigSettings): Piece[] {
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

const heightOn = ({ jig }: JigGround, levelZMm: number, zMm: number): number =>
  jig.attitude === "upright" ? zMm - levelZMm : levelZMm - zMm;

function finishRib(piece: Piece, pieces: readonly Piece[], settings: JigSettings): Rib {
  const { project, bands, levelZMm, thicknessMm } = settings;
  const { id, runs, atMm, top, choice } = piece;
  const heightOf = (zMm: number) => heightOn(project, levelZMm, zMm);
  const notches = notchesInRib(bands, runs, piece.body).map(
    ({ fromMm, toMm, lowZMm }): RibCut => ({
      from: "top",
      fromMm,
      toMm,
      levelMm: heightOf(lowZMm) - NOTCH_CLEARANCE_MM,
    }),
  );
  const cuts = [...notches, ...halfLaps(piece, pieces)].filter(
    ({ fromMm, toMm }) => toMm > at(top, 0).u && fromMm < at(top, -1).u,
  );
  return {
    id,
    name: `Rib ${id}`,
    runs,
    atMm,
    thicknessMm,
    stationFace: stationFaceOf(runs, choice.side),
    heights: ribHeights(piece.points, {
      intervalMm: project.marking.intervalMm,
      toleranceMm: project.marking.toleranceMm,
      thicknessMm,
      heightOf,
      farZMm: farFace(
        piece.points,
        (offsetMm, alongMm) => piece.restAt(choice.side * offsetMm, alongMm),
        thicknessMm,
      ),
    }),
    outlineMm: ribOutline(top, cuts),
    cut: choice.cut,
    mostProudMm: choice.mostProudMm,
    straightTop: cuts.length === 0 && isStraight(top),
    sameAs: id,
  };
}

/** The body goes away from the face that lies on the station plane. */
function stationFaceOf(runs: "across" | "along", side: BodySide): Rib["stationFace"] {
  if (runs === "across") return side === 1 ? "front" : "rear";
  return side === 1 ? "left" : "right";
}

const isStraight = (top: readonly FlatPoint[]): boolean =>
  worstBetween(top, 0, top.length - 1).missMm <= STRAIGHT_TOP_MM;

function baseboardOf(ribs: readonly Rib[], attitude: Baseboard["attitude"], levelZMm: number): Baseboard {
  const lines = ribs.map(({ id, runs, atMm, outlineMm }) => {
    const along = outlineMm.map(({ u }) => u);
    return {
      ribId: id,
      from: planPoint(runs, atMm, Math.min(...along)),
      to: planPoint(runs, atMm, Math.max(...along)),
    };
  });
  const ends = lines.flatMap(({ from, to }) => [from, to]);
  const edge = (pick: (...values: number[]) => number, axis: "x" | "y", marginMm: number) =>
    ends.length === 0 ? 0 : pick(...ends.map((p) => p[axis])) + marginMm;
  const corners: Baseboard["corners"] = [
    { x: edge(Math.min, "x", -BASE_MARGIN_MM), y: edge(Math.min, "y", -BASE_MARGIN_MM) },
    { x: edge(Math.max, "x", BASE_MARGIN_MM), y: edge(Math.max, "y", BASE_MARGIN_MM) },
  ];
  return { attitude, levelZMm, corners, lines };
}

function nothingProblem({ id, runs, atMm }: RibPlace, { jig }: JigGround): Problem[] {
  if (jig[runs].kind !== "typed") return [];
  const place = { ribId: id, setting: `jig.${runs}.atMm` };
  return [{ kind: "rib-under-nothing", place, name: `Rib ${id}`, atMm }];
}

function bevelProblem({ id, choice }: Piece, { jig }: JigGround): Problem[] {
  const { cut, mostProudMm, bevelProudMm } = choice;
  if (cut === "square") return [];
  const limitMm = jig.proudLimitMm;
  const fold = bevelProudMm > limitMm ? { foldProudMm: bevelProudMm } : {};
  const place = { ribId: id };
  return [{ kind: "rib-needs-bevel", place, name: `Rib ${id}`, proudMm: mostProudMm, limitMm, ...fold }];
}

/** A rib that stands in the board of one before it in the same direction; the nearest one is named. */
function overlapProblem(piece: Piece, before: readonly Piece[]): Problem[] {
  const others = before
    .filter(({ runs, top }) => runs === piece.runs && sharedMm(endsOf({ top }), endsOf(piece)) > 0)
    .map((other) => ({ other, overlapMm: sharedMm(other.body, piece.body) }))
    .sort((a, b) => b.overlapMm - a.overlapMm);
  const [most] = others;
  if (most === undefined || most.overlapMm === 0) return [];
  const { other, overlapMm } = most;
  const place = { ribId: piece.id };
  return [{ kind: "ribs-overlap", place, name: `Rib ${piece.id}`, otherName: `Rib ${other.id}`, overlapMm }];
}
