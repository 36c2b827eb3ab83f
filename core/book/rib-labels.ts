import { at, formatMm, formatNumber } from "../foundation/index.ts";
import type { Rib, RibSplice } from "../jig/index.ts";
import { boxOf, heightOf, textCorners } from "./boxes.ts";
import type { Lettering } from "./lettering.ts";
import { mainLabel } from "./main-label.ts";
import { paper, type TextMark, textMark, toPaper } from "./marks.ts";
import { boxesOf, type LabelRoom, placeWords } from "./place-words.ts";
import { type RibGroup, ribPlaceWords, stationFaceWords } from "./rib-piece.ts";
import type { Mark } from "./types.ts";
import { uprightText } from "./upright-text.ts";

/** The words on a rib's template: every rib that is cut from it, the faces, the base line and the heights. */
export function ribLabels(group: RibGroup, room: LabelRoom): readonly Mark[] {
  const { piece, lettering, avoid } = room;
  const { rib, alike } = group;
  const box = boxOf(piece.loops.flat());
  const axis = rib.runs === "across" ? "y" : "x";
  const baseMm = rib.tabs.length > 0 ? 0 : box.bottom;
  const inside = rib.heights.filter((h) => h.atMm > box.left && h.atMm < box.right);
  const figures = inside.map((height) => ({
    atMm: height.atMm,
    text: `${axis} ${formatNumber(height.atMm, 0)}  h ${formatMm(height.stationFaceMm)}`,
  }));
  const words = [
    ...placeWords(
      figures
        .filter(({ atMm, text }, i) => !figures.slice(0, i).some(isSame(atMm, text)))
        .map(({ atMm, text }) => heightWords(atMm, baseMm, text)),
      [],
      { ...room, avoid: [] },
    ),
    baseWords(
      [box.left, ...inside.map(({ atMm }) => atMm).toSorted((a, b) => a - b), box.right],
      baseMm,
      lettering,
    ),
    ...rib.splices.flatMap((splice) => spliceWords(rib, splice)),
  ];
  const notes = [
    alike.map((one) => `${one.id} at ${ribPlaceWords(one)}`).join("; "),
    piece.face,
    ...alike.map((one) => stationFaceWords(one)),
  ];
  return [
    ...words,
    ...mainLabel(piece, notes, { taken: [...avoid, ...boxesOf(words, lettering)], lettering }),
  ];
}

/** Along the base line, between the first two lines of heights that leave room for the words. */
function baseWords(linesMm: readonly number[], baseMm: number, lettering: Lettering): TextMark {
  const words = textMark(paper(0, baseMm + 1.5), "base line, stands on the baseboard", { layer: "words" });
  const { left, right } = boxOf(textCorners(words, lettering));
  const roomMm = right - left + 2 * CLEAR_OF_LINES_MM;
  const free = linesMm.find((atMm, i) => (linesMm[i + 1] ?? atMm) - atMm >= roomMm);
  return { ...words, at: paper((free ?? at(linesMm, 0)) + CLEAR_OF_LINES_MM, baseMm + 1.5) };
}

const CLEAR_OF_LINES_MM = 3;

/** Two heights that would be told in the same words beside each other. */
const isSame =
  (atMm: number, text: string) =>
  (other: { readonly atMm: number; readonly text: string }): boolean =>
    other.text === text && Math.abs(other.atMm - atMm) < 5;

/** Above the words of the base line: places for a height beside its line, to its left, to its right, and higher up. */
const OVER_BASE_MM = 6;

const heightWords = (atMm: number, baseMm: number, text: string): readonly TextMark[] =>
  [OVER_BASE_MM, OVER_BASE_MM + 40, OVER_BASE_MM + 80].flatMap((upMm) =>
    [-1, 3.5].map((asideMm) =>
      uprightText(
        textMark(paper(atMm + asideMm, baseMm + upMm), text, {
          face: "mono",
          turnRad: Math.PI / 2,
          layer: "words",
        }),
      ),
    ),
  );

/** Beside a splice: what is sawn apart here, and how it is joined. */
function spliceWords(rib: Rib, { atMm, way, plate }: RibSplice): readonly TextMark[] {
  const words =
    way === "plate" && plate !== undefined
      ? `saw here; plate ${plate.id} on the face away from the station face, glued and screwed`
      : "saw along the dovetail; tail and socket are glued, flat on the bench";
  const box = boxOf(rib.outlineMm.map(toPaper));
  return [textMark(paper(atMm + 3, box.bottom + heightOf(box) / 2), words, { layer: "words" })];
}
