import { formatAngle, formatMm } from "../foundation/index.ts";
import type { BendFigures, FoldedPlate, PlatePart } from "../plates/index.ts";
import { toPaper } from "./marks.ts";
import { besideLine, boxesOf, freest, type LabelRoom, mainLabel, SHARES } from "./piece-labels.ts";
import type { Mark } from "./types.ts";

/** The words on a plate's template: its code, face, hand and arrow, and each bend along its line. */
export function plateLabels(plate: FoldedPlate, part: PlatePart, room: LabelRoom): readonly Mark[] {
  const { piece, lettering, avoid } = room;
  const words = part.bends.map(({ middle, name, figures }) =>
    freest(
      SHARES.map((share) => besideLine(middle.map(toPaper), `${name}: ${bendWords(figures)}`, share)),
      room,
    ),
  );
  const notes = [
    piece.face,
    `${plate.name}, ${formatMm(plate.thicknessMm)} mm ${plate.metalName}`,
    "bend lines in pencil, never scribed",
  ];
  const taken = [...avoid, ...boxesOf(words, lettering)];
  return [...words, ...mainLabel(piece, notes, { taken, lettering })];
}

/** `bend up 90.0°, R 3.0`: toward the reader of the flat is up. */
export const bendWords = ({ direction, angleRad, insideRadiusMm }: BendFigures): string =>
  `bend ${direction} ${formatAngle(angleRad)}, R ${formatMm(insideRadiusMm)}`;
