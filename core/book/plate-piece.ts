import type { BendLine, FoldedPlate, PlatePart } from "../plates/index.ts";
import { polygonOfPlateLoop } from "../plates/index.ts";
import { boxOf } from "./boxes.ts";
import { type LineMark, lineMark, loopMark, paper, toPaper } from "./marks.ts";
import type { Piece } from "./piece.ts";
import type { PaperPoint } from "./types.ts";

/**
 * What is printed true to size of a plate's flat: the line to cut by, the middle of each bend as a fold line, and
 * where each bend begins and ends. Seen from the upper face.
 */
export function platePiece(plate: FoldedPlate, part: PlatePart): Piece {
  const loops = part.loops.map((loop) => polygonOfPlateLoop(loop).map(toPaper));
  return {
    id: part.id,
    name: plate.name,
    partId: part.id,
    setOut: { origin: cornerOf(loops.flat()), along: "along", across: "across" },
    stuff: "metal",
    face: `upper face up${part.hand === "whole" ? "" : `, ${part.hand} hand`}`,
    arrow: { word: "forward", turnRad: Math.PI },
    ...(part.hand === "whole" ? {} : { centreTurnRad: part.hand === "right" ? -Math.PI / 2 : Math.PI / 2 }),
    lines: [...loops.map((loop) => loopMark(loop, "cut", "cut")), ...part.bends.flatMap(bendLines)],
    loops,
  };
}

function cornerOf(points: readonly PaperPoint[]): PaperPoint {
  const box = boxOf(points);
  return paper(box.left, box.bottom);
}

const bendLines = ({ baseTangent, middle, wingTangent }: BendLine): readonly LineMark[] => [
  lineMark(middle.map(toPaper), "fold", "bend"),
  lineMark(baseTangent.map(toPaper), "station", "bend"),
  lineMark(wingTangent.map(toPaper), "station", "bend"),
];
