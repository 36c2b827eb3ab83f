import { formatMm } from "../foundation/index.ts";
import { allRibs, type Rib } from "../jig/index.ts";
import { boxOf } from "./boxes.ts";
import { chordsAt } from "./chords.ts";
import type { Design } from "./design.ts";
import { type LineMark, lineMark, loopMark, paper, toPaper } from "./marks.ts";
import type { Piece } from "./piece.ts";

/** A rib that is printed true to size, with every rib of the same outline. */
export interface RibGroup {
  readonly rib: Rib;
  readonly alike: readonly Rib[];
}

/** The ribs by outline, in the order of the jig; each group holds at least its first rib. */
export function ribGroups(design: Design): readonly RibGroup[] {
  const ribs = allRibs(design.jig);
  return ribs
    .filter((rib) => rib.sameAs === rib.id)
    .map((rib) => ({ rib, alike: ribs.filter((other) => other.sameAs === rib.id) }));
}

/**
 * What is printed true to size of a group of ribs: the outline at the station face, a line at each listed height
 * and the centre line of the car. The frame is u along the rib, v up from the baseboard.
 */
export function ribPiece(group: RibGroup): Piece {
  const { rib, alike } = group;
  const outline = rib.outlineMm.map(toPaper);
  const holes = rib.holesMm.map((hole) => hole.map(toPaper));
  return {
    id: rib.id,
    name:
      alike.length === 1
        ? `${rib.name}${rib.overBentMm === undefined ? "" : ", over-bent"}`
        : `cut ${alike.length}: ${alike.map((one) => one.id).join(", ")}`,
    partId: rib.id,
    setOut: { origin: paper(0, 0), along: rib.runs === "across" ? "y" : "x", across: "h" },
    stuff: "board",
    face: `seen from the ${ribSeenFrom(rib)}, ${rib.runs === "across" ? "car's right hand to the right" : "front to the left"}`,
    arrow: { word: "up", turnRad: Math.PI / 2 },
    lines: [
      loopMark(outline, "cut", "cut"),
      ...holes.map((hole) => loopMark(hole, "cut", "cut")),
      ...heightLines(rib),
      ...centreLine(rib),
      ...spliceLines(rib),
    ],
    loops: [outline, ...holes],
  };
}

/**
 * From where a rib is seen when u runs to the reader's right and v up: a rib across from the rear, a rib along
 * from the left; the jig turned over shows the other face.
 */
export function ribSeenFrom({ runs, attitude }: Rib): Rib["stationFace"] {
  if (runs === "across") return attitude === "upright" ? "rear" : "front";
  return attitude === "upright" ? "left" : "right";
}

/** Which face the outline is true on, and whether the reader looks at it. */
export function stationFaceWords(rib: Rib): string {
  const near = rib.stationFace === ribSeenFrom(rib);
  return `${rib.id}: station face is the ${rib.stationFace} face, ${near ? "this side" : "the far side"}`;
}

/** The same for ribs that are alike: once where it is one for all. */
export function stationFacesWords(ribs: readonly Rib[]): string {
  const each = ribs.map(stationFaceWords);
  const faces = new Set(each.map((words) => words.slice(words.indexOf(": ") + 2)));
  const [one = ""] = faces;
  return faces.size === 1 ? one.charAt(0).toUpperCase() + one.slice(1) : each.join("; ");
}

/** Where a rib stands, in words: `x 350.0` for a rib across. */
export const ribPlaceWords = (rib: Rib): string =>
  `${rib.runs === "across" ? "x" : "y"}\u2009${formatMm(rib.atMm)}`;

function heightLines(rib: Rib): readonly LineMark[] {
  const loops = [rib.outlineMm, ...rib.holesMm].map((loop) => loop.map(toPaper));
  const box = boxOf(loops.flat());
  return rib.heights
    .filter((height) => height.atMm > box.left && height.atMm < box.right)
    .flatMap((height) =>
      chordsAt(loops, height.atMm).map(([low, high]) =>
        lineMark([paper(height.atMm, low), paper(height.atMm, high)], "station", "station"),
      ),
    );
}

/** Only a rib across meets the centre line. */
function centreLine(rib: Rib): readonly LineMark[] {
  if (rib.runs === "along") return [];
  return chordsAt([rib.outlineMm.map(toPaper)], 0).map(([low, high]) =>
    lineMark([paper(0, low), paper(0, high)], "centre", "centre"),
  );
}

/** Where a rib is sawn through to fit its board: the line or the tail to cut by, and the plate over it. */
function spliceLines(rib: Rib): readonly LineMark[] {
  const loops = [rib.outlineMm.map(toPaper)];
  return rib.splices.flatMap(({ atMm, plate, tailMm }) => {
    const [span] = chordsAt(loops, atMm);
    if (span === undefined) return [];
    const [low, high] = span;
    const line = [paper(atMm, low), ...(tailMm ?? []).map(toPaper), paper(atMm, high)];
    return [
      lineMark(line, "cut", "cut"),
      ...(plate === undefined ? [] : [loopMark(plate.outlineMm.map(toPaper), "hidden", "splice")]),
    ];
  });
}
