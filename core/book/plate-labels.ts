import { formatAngle, formatMm } from "../foundation/index.ts";
import type { BendFigures, BendLine, FoldedPlate, PlatePart } from "../plates/index.ts";
import { type Box, boxOf } from "./boxes.ts";
import { mainLabel } from "./main-label.ts";
import { paper, toPaper } from "./marks.ts";
import { boxesOf, freest, type LabelRoom, SHARES } from "./place-words.ts";
import { insideEdge } from "./strip-labels.ts";
import type { Mark } from "./types.ts";

/** The words on a plate's template: its code, face, hand and arrow, and each bend beside its line, on the base. */
export function plateLabels(plate: FoldedPlate, part: PlatePart, room: LabelRoom): readonly Mark[] {
  const { piece, lettering, avoid } = room;
  const words = part.bends.map(({ baseTangent, name, figures }) =>
    freest(
      SHARES.map((share) => insideEdge(baseTangent.map(toPaper), `${name}: ${bendWords(figures)}`, share)),
      room,
    ),
  );
  const notes = [
    piece.face,
    `${plate.name}, ${formatMm(plate.thicknessMm)} mm ${plate.metalName}`,
    "bend lines in pencil, never scribed",
  ];
  const taken = [...avoid, ...boxesOf(words, lettering), ...part.bends.flatMap(bendBoxes)];
  return [...words, ...mainLabel(piece, notes, { taken, lettering })];
}

/** Boxes along a bend, from its beginning to its end, so that no words stand on its lines. */
const bendBoxes = ({ baseTangent, wingTangent }: BendLine): readonly Box[] =>
  Array.from({ length: BOXES_ALONG }, (_, i) =>
    boxOf(
      [baseTangent, wingTangent].flatMap(([from, to]) =>
        [i, i + 1].map((k) => {
          const t = k / BOXES_ALONG;
          return paper(from.u + (to.u - from.u) * t, from.v + (to.v - from.v) * t);
        }),
      ),
    ),
  );

/** Boxes are upright: along a slanting bend many small ones cover less than one. */
const BOXES_ALONG = 12;

/** `bend up 90.0°, R 3.0`: toward the reader of the flat is up. */
export const bendWords = ({ direction, angleRad, insideRadiusMm }: BendFigures): string =>
  `bend ${direction} ${formatAngle(angleRad)}, R ${formatMm(insideRadiusMm)}`;
