import { at, type FlatPoint } from "../foundation/index.ts";
import { makingOf, ribBoardOf } from "../project/index.ts";
import { endsOf, type Stretch } from "./crossing-rib.ts";
import { farFace } from "./far-face.ts";
import { notchesInRib } from "./fence-notches.ts";
import { halfLaps } from "./half-laps.ts";
import { heightOn, type JigPiece, type JigSettings, planPoint } from "./jig-piece.ts";
import { jointsAlong } from "./joints-along.ts";
import type { BodySide } from "./rib-body.ts";
import { ribFoot } from "./rib-foot.ts";
import { ribHeights } from "./rib-heights.ts";
import { ribHoles } from "./rib-holes.ts";
import { type RibCut, ribOutline } from "./rib-outline.ts";
import { ribReliefs } from "./rib-reliefs.ts";
import { crossingsMm } from "./seam-lines.ts";
import { worstBetween } from "./simplify-top.ts";
import { splicePlaces } from "./splice-places.ts";
import { spliceReachMm, spliceRib, TAIL_MM } from "./splice-rib.ts";
import type { Rib, RibLap, RibNotch } from "./types.ts";

/** A notch goes deeper than the fence by this, mm. */
const NOTCH_CLEARANCE_MM = 3;
/** A top this straight needs no template, mm. */
const STRAIGHT_TOP_MM = 0.05;

/** A rib ready to be cut: its outline with notches, laps, feet and holes, its pieces, and its heights at both faces. */
export function finishRib(piece: JigPiece, pieces: readonly JigPiece[], settings: JigSettings): Rib {
  const { project, stand, attitude, thicknessMm } = settings;
  const { id, runs, atMm, isOutboard, top, choice } = piece;
  const making = makingOf(project);
  const laps = halfLaps(piece, pieces, making.slotClearanceMm).filter((lap) => isOn(lap, top));
  const notches = notchesOf(piece, settings);
  // In a cradle lies a cured skin, and no glue is pressed out.
  const reliefMm = stand === "jig" ? making.reliefMm : 0;
  const reliefs = ribReliefs(
    piece,
    reliefMm,
    seamsOver(piece, settings),
    jointsAlong(piece, settings.seams),
  ).filter(({ atMm: mm, widthMm }) =>
    [...notches, ...laps.filter(({ from }) => from === "top")].every(
      (cut) => mm + widthMm / 2 < cut.fromMm || mm - widthMm / 2 > cut.toMm,
    ),
  );
  const cuts: readonly RibCut[] = [
    ...notches.map((notch) => ({ from: "top" as const, ...notch })),
    ...laps,
    ...reliefs.map(({ atMm: mm, widthMm, levelMm }) => ({
      from: "top" as const,
      fromMm: mm,
      toMm: mm,
      levelMm,
      mouthMm: widthMm / 2,
    })),
  ];
  const foot = ribFoot(endsOf(piece), {
    foot: making.foot,
    baseThicknessMm: making.baseThicknessMm,
    slots: laps.filter(({ from }) => from === "below").map(stretchOf),
    boardAt: (alongMm) => settings.boardAt(planPoint(runs, atMm, alongMm)),
  });
  const edges = { top, foot: foot.line };
  const busy = cuts.map(stretchOf);
  const places = splicePlaces(endsOf(piece), roomOf(settings, [...busy, ...foot.tabs])) ?? [];
  const reachMm = spliceReachMm(making.spliceBy);
  const spliced = places.map((mm): Stretch => [mm - reachMm, mm + reachMm]);
  const holesMm = ribHoles(edges, making.holeMm, [...busy, ...spliced]);
  return {
    id,
    name: stand === "jig" ? `${isOutboard ? "Outboard rib" : "Rib"} ${id}` : `Cradle rib ${id}`,
    stand,
    attitude,
    runs,
    atMm,
    thicknessMm,
    isOutboard,
    stationFace: stationFaceOf(runs, choice.side),
    heights: heightsOf(piece, settings),
    outlineMm: ribOutline(edges, cuts),
    holesMm,
    laps,
    notches,
    reliefs,
    standsOn: foot.standsOn,
    tabs: foot.tabs,
    ...spliceRib(edges, cuts, places, {
      id,
      way: making.spliceBy,
      clearanceMm: making.slotClearanceMm,
      holes: holesMm,
    }),
    cut: choice.cut,
    mostProudMm: choice.mostProudMm,
    straightTop:
      [laps, notches, foot.tabs, holesMm, places].every((list) => list.length === 0) && isStraight(top),
    sameAs: id,
  };
}

/** A cut that takes something off a top. */
const isOn = ({ fromMm, toMm }: Pick<RibCut, "fromMm" | "toMm">, top: readonly FlatPoint[]): boolean =>
  toMm > at(top, 0).u && fromMm < at(top, -1).u;

function notchesOf(piece: JigPiece, settings: JigSettings): RibNotch[] {
  const { filletMm } = makingOf(settings.project);
  return notchesInRib(settings.bands, piece.runs, piece.body)
    .map(({ fencePartId, fromMm, toMm, lowZMm }) => ({
      fencePartId,
      fromMm,
      toMm,
      levelMm: heightOn(settings, lowZMm) - NOTCH_CLEARANCE_MM,
      mouthMm: filletMm,
    }))
    .filter((notch) => isOn(notch, piece.top));
}

/** Where seams of the part on top cross a rib. */
const seamsOver = ({ runs, atMm, points }: JigPiece, { seams }: JigSettings): readonly number[] =>
  seams.flatMap((seam) => {
    const own = points.filter(({ partId }) => partId === seam.partId).map((point) => point.atMm);
    const [least, most] = [Math.min(...own), Math.max(...own)];
    return crossingsMm(seam, runs, atMm).filter((mm) => mm > least && mm < most);
  });

const stretchOf = ({ fromMm, toMm, ...cut }: RibCut | RibLap): Stretch => {
  const mouthMm = "mouthMm" in cut ? (cut.mouthMm ?? 0) : 0;
  return [fromMm - mouthMm, toMm + mouthMm];
};

/** What a splice has to keep clear of, and how long a piece the board gives. */
function roomOf({ project }: JigSettings, busy: readonly Stretch[]) {
  const { spliceBy } = makingOf(project);
  return {
    longestMm: longestRibMm(project),
    reachMm: spliceReachMm(spliceBy),
    tailMm: spliceBy === "dovetail" ? TAIL_MM : 0,
    busy,
  };
}

/** The longest rib that a board gives in one piece. */
export function longestRibMm(project: JigSettings["project"]): number {
  const board = ribBoardOf(project);
  if (board === undefined) return Number.POSITIVE_INFINITY;
  const lengthMm = Math.max(board.lengthMm, board.widthMm) - 2 * Math.max(0, project.cutting.stockEdgeMm);
  return lengthMm > 0 ? lengthMm : Number.POSITIVE_INFINITY;
}

const heightsOf = (piece: JigPiece, settings: JigSettings): Rib["heights"] => {
  const { project, thicknessMm } = settings;
  const beside = (offsetMm: number, alongMm: number) => piece.restAt(piece.choice.side * offsetMm, alongMm);
  return ribHeights(piece.points, {
    intervalMm: project.marking.intervalMm,
    toleranceMm: project.marking.toleranceMm,
    thicknessMm,
    heightOf: (zMm) => heightOn(settings, zMm),
    farZMm: farFace(piece.points, beside, thicknessMm),
  });
};

/** The body goes away from the face that lies on the station plane. */
function stationFaceOf(runs: "across" | "along", side: BodySide): Rib["stationFace"] {
  if (runs === "across") return side === 1 ? "front" : "rear";
  return side === 1 ? "left" : "right";
}

const isStraight = (top: readonly FlatPoint[]): boolean =>
  worstBetween(top, 0, top.length - 1).missMm <= STRAIGHT_TOP_MM;
