import type { Strip } from "../cutting/index.ts";
import { fittedEdges, hasBevels, type MarkingTable, type ShownFace, shownFace } from "../marking/index.ts";
import type { Part } from "../patterns/index.ts";
import { boxOf } from "./boxes.ts";
import { chordsAt, levelChordsAt } from "./chords.ts";
import type { Design } from "./design.ts";
import { flatDirections } from "./flat-directions.ts";
import { layLines } from "./lay-lines.ts";
import { type LineMark, lineMark, loopMark, paper, toPaper } from "./marks.ts";
import type { Piece } from "./piece.ts";
import { printedTable } from "./printed-table.ts";
import { ribTicks } from "./rib-ticks.ts";
import { rulingLines } from "./ruling-lines.ts";
import type { PaperPoint } from "./types.ts";

/**
 * What is printed true to size of a strip: the line to cut by on the face shown, the outline at mid-thickness where it
 * differs, bend limits, relief slots or rulings, stations and datum of its marking-out table, ribs and fences that touch it. Seen from
 * the face that the part names.
 */
export function stripPiece(design: Design, strip: Strip, part: Part): Piece {
  const loops = stripLoops(strip);
  const face = shownFace(strip, part.thicknessMm, design.project);
  const table = printedTable(design, strip, face);
  const lays = layLines(design, part, loops);
  const directions = flatDirections(part);
  return {
    id: strip.id,
    name: part.name,
    partId: part.id,
    setOut: stripSetOut(table, loops),
    stuff: "foam",
    face: `${part.faceShown} up${handWords(part)}`,
    arrow: { word: "forward", turnRad: directions.forwardRad },
    ...(directions.centreRad === undefined ? {} : { centreTurnRad: directions.centreRad }),
    lines: [
      ...cutLines(face, loops),
      ...netLines(design, strip, part),
      ...bendLimits(strip, part).map((limit) => limit.line),
      ...slotLines(strip, part),
      ...taperLines(strip, part),
      ...rulingLines(part, loops).map((ruling) => ruling.line),
      ...(table === undefined ? [] : stationLines(table, loops)),
      ...lays.map((lay) => lay.line),
      ...ribTicks(design, part, loops),
    ],
    loops,
    ofStrip: { face, lays, ...(table === undefined ? {} : { table }) },
  };
}

/** Places on a strip are told as in its marking-out table; without one, from the lower left corner of its outline. */
function stripSetOut(
  table: MarkingTable | undefined,
  loops: readonly (readonly PaperPoint[])[],
): Piece["setOut"] {
  const box = boxOf(loops.flat());
  const origin = table === undefined ? paper(box.left, box.bottom) : toPaper(table.origin);
  return { origin, along: "along", across: "mark" };
}

/** The finished outline and the holes of a strip. */
export const stripLoops = (strip: Strip): readonly (readonly PaperPoint[])[] =>
  [strip.outlineMm, ...strip.holesMm].map((loop) => loop.map(toPaper));

/**
 * Both walls of every relief slot, true to size: drawn through where they are cut into the face shown, dashed where they
 * are cut into the face behind it.
 */
export function slotLines(strip: Strip, part: Part): readonly LineMark[] {
  return (strip.slots ?? []).flatMap(({ uMm, kerfMm, stretchesMm, face }) =>
    stretchesMm.flatMap(([from, to]) =>
      [-kerfMm / 2, kerfMm / 2].map((side) =>
        lineMark(
          [paper(uMm + side, from), paper(uMm + side, to)],
          face === part.faceShown ? "thin" : "hidden",
          "slots",
        ),
      ),
    ),
  );
}

/** Where the tapers of scarfs begin: drawn through in the face shown, dashed in the face behind it. */
export const taperLines = (strip: Strip, part: Part): readonly LineMark[] =>
  (strip.tapers ?? []).map(({ lineMm, face }) =>
    lineMark(lineMm.map(toPaper), face === part.faceShown ? "thin" : "hidden", "tapers"),
  );

/** Where the drawing ends edges with foam left standing outside them; without bevels the finished outline shows it. */
const netLines = ({ project }: Design, strip: Strip, part: Part): readonly LineMark[] =>
  hasBevels(strip)
    ? (["gap", "hold"] as const).flatMap((reason) =>
        fittedEdges(strip, part.thicknessMm, project, reason).map(({ netLineMm }) =>
          lineMark(netLineMm.map(toPaper), "thin", "net"),
        ),
      )
    : [];

/** Which hand a part is of, for a label; nothing for a part that lies across the centre line. */
export const handWords = (part: Part): string => (part.hand === "whole" ? "" : `, ${part.hand} hand`);

/** Two lines nearer than this print as one. */
const ONE_LINE_MM = 0.05;

function cutLines({ cutLinesMm }: ShownFace, loops: readonly (readonly PaperPoint[])[]): readonly LineMark[] {
  const cuts = cutLinesMm.map((loop) => loop.map(toPaper));
  if (cuts.length === 0) return loops.map((loop) => loopMark(loop, "cut", "cut"));
  const marks = cuts.map((loop) => loopMark(loop, "cut", "cut"));
  if (isSame(cuts, loops)) return marks;
  return [...marks, ...loops.map((loop) => loopMark(loop, "thin", "finished"))];
}

/** Whether two sets of loops print as one: the corners of each lie on the other. */
function isSame(
  first: readonly (readonly PaperPoint[])[],
  second: readonly (readonly PaperPoint[])[],
): boolean {
  if (first.length !== second.length) return false;
  return first.every((loop, i) => {
    const other = second[i] ?? [];
    const isNear = (p: PaperPoint) => other.some((q) => Math.hypot(p.x - q.x, p.y - q.y) < ONE_LINE_MM);
    return loop.length === other.length && loop.every((p, k) => isSamePoint(p, other[k]) || isNear(p));
  });
}

const isSamePoint = (p: PaperPoint, q: PaperPoint | undefined): boolean =>
  q !== undefined && Math.hypot(p.x - q.x, p.y - q.y) < ONE_LINE_MM;

/** A line where a bend starts or ends, the longest stretch of it inside the strip, and the bend on its right. */
export interface BendLimit {
  readonly line: LineMark;
  readonly words: string;
}

/** The limits of the bends of a part that lie on one of its strips. */
export function bendLimits(strip: Strip, part: Part): readonly BendLimit[] {
  // A transition bends along its rulings, which run as they run.
  if (part.kind === "transition") return [];
  const loops = stripLoops(strip);
  const limits: BendLimit[] = [];
  part.zones.forEach((zone, i) => {
    const before = part.zones[i - 1];
    if (before === undefined) return;
    const words = `${zoneWords(before)} | ${zoneWords(zone)}`;
    for (const [low, high] of chordsAt(loops, zone.fromUMm)) {
      const points = [paper(zone.fromUMm, low), paper(zone.fromUMm, high)];
      limits.push({ line: lineMark(points, "fold", "bend"), words });
    }
  });
  return limits;
}

/** A bend zone in a few words: `flat`, or its least radius and the face inside. */
export function zoneWords(zone: Part["zones"][number]): string {
  if (zone.leastRadiusMm === undefined) return "flat";
  const inside = zone.inside === undefined ? "" : `, ${zone.inside} inside`;
  const warning = zone.verdict === "not with this foam" ? " TOO TIGHT" : "";
  return `bend R ${zone.leastRadiusMm.toFixed(0)}${inside}${warning}`;
}

/** Length of the tick at a mark that is not on a station, mm. */
const TICK_MM = 5;

/** The datum, the stations across the strip, and a tick at every further mark of the marking-out table. */
export function stationLines(
  table: MarkingTable,
  loops: readonly (readonly PaperPoint[])[],
): readonly LineMark[] {
  const { origin } = table;
  const datum = levelChordsAt(loops, origin.v).map(([from, to]) =>
    lineMark([paper(from, origin.v), paper(to, origin.v)], "centre", "station"),
  );
  const rows = table.rows.flatMap((row) => {
    const u = origin.u + row.alongMm;
    if (row.reason === "slot") return [];
    if (row.reason !== "station") {
      return row.offsetsMm.map((offset) =>
        lineMark(
          [paper(u, origin.v + offset - TICK_MM / 2), paper(u, origin.v + offset + TICK_MM / 2)],
          "station",
          "station",
        ),
      );
    }
    return chordsAt(loops, u).map(([low, high]) =>
      lineMark([paper(u, low), paper(u, high)], "station", "station"),
    );
  });
  return [...datum, ...rows];
}
