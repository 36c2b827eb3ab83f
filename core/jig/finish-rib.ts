import { at, type FlatPoint } from "../foundation/index.ts";
import { farFace } from "./far-face.ts";
import { notchesInRib } from "./fence-notches.ts";
import { halfLaps } from "./half-laps.ts";
import { heightOn, type JigPiece, type JigSettings } from "./jig-piece.ts";
import type { BodySide } from "./rib-body.ts";
import { ribHeights } from "./rib-heights.ts";
import { type RibCut, ribOutline } from "./rib-outline.ts";
import { worstBetween } from "./simplify-top.ts";
import type { Rib } from "./types.ts";

/** A notch goes deeper than the fence by this, mm. */
const NOTCH_CLEARANCE_MM = 3;
/** A top this straight needs no template, mm. */
const STRAIGHT_TOP_MM = 0.05;

/** A rib ready to be cut: its outline with notches and laps, and its heights at both faces. */
export function finishRib(piece: JigPiece, pieces: readonly JigPiece[], settings: JigSettings): Rib {
  const { project, bands, thicknessMm } = settings;
  const { id, runs, atMm, top, choice } = piece;
  const heightOf = (zMm: number) => heightOn(settings, zMm);
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
