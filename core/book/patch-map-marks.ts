import type { PlanPoint } from "../foundation/index.ts";
import type { MappedPatch, MappedPly, PatchMap } from "../skins/index.ts";
import { type Box, boxesOverlap, boxOf, growBox } from "./boxes.ts";
import { clipLine } from "./clip.ts";
import { findFreeSpot } from "./free-spot.ts";
import { hatchMarks } from "./hatch-marks.ts";
import type { Lettering } from "./lettering.ts";
import { type LineMark, lineMark, loopMark, paper, textMark } from "./marks.ts";
import type { Mark, PaperPoint } from "./types.ts";

/** A ply of a map on paper: how the map is put there, and the letters. */
export interface MapOnPaper {
  readonly map: PatchMap;
  readonly ply: MappedPly;
  readonly seen: (p: PlanPoint) => PaperPoint;
  /** Other lines that words keep clear of. */
  readonly others: readonly LineMark[];
  readonly lettering: Lettering;
}

/** Between the lines of a lap's hatching, mm. */
const HATCH_MM = 1.4;

/**
 * One ply of a map: the parts by thin chain lines at their joints and edges, patches in full lines with their code, session
 * and an arrow along the warp, laps hatched, those on cured cloth both ways.
 */
export function patchMapMarks({ map, ply, seen, others, lettering }: MapOnPaper): readonly Mark[] {
  const onPaper = (loops: readonly (readonly PlanPoint[])[]) => loops.map((loop) => loop.map(seen));
  const grounds = map.grounds.flatMap(({ loopsMm }) =>
    onPaper(loopsMm).map((loop) => loopMark(loop, "fold")),
  );
  const hatches = ply.laps.flatMap(({ loopsMm, isOnCured }) => {
    const loops = onPaper(loopsMm);
    return [
      ...hatchMarks(loops, HATCH_MM, Math.PI / 4),
      ...(isOnCured ? hatchMarks(loops, HATCH_MM, -Math.PI / 4) : []),
    ];
  });
  const outlines = ply.patches.flatMap((patch) =>
    onPaper(patch.loopsMm).map((loop) => loopMark(loop, patch.isOfNeighbour ? "hidden" : "outline")),
  );
  const labels: Label[] = [];
  const lines = [...others, ...outlines, ...grounds, ...hatches];
  const own = ply.patches.filter(({ isOfNeighbour }) => !isOfNeighbour);
  for (const patch of own) labels.push(labelOf(patch, onPaper(patch.loopsMm), { lines, labels, lettering }));
  const arrows = own.flatMap((patch) =>
    warpArrow(patch, onPaper(patch.loopsMm), { lines, labels, lettering }),
  );
  return [...grounds, ...hatches, ...outlines, ...labels.flatMap(({ marks }) => marks), ...arrows];
}

interface Label {
  readonly box: Box;
  readonly marks: readonly Mark[];
}

interface Around {
  readonly lines: readonly LineMark[];
  readonly labels: readonly Label[];
  readonly lettering: Lettering;
}

type Loops = readonly (readonly PaperPoint[])[];

const LINE_MM = 4;
const ARROW_MM = 7;

/** Code and session inside the patch, clear of laps and lines; else beside, with a line to it. */
function labelOf(patch: MappedPatch, loops: Loops, around: Around): Label {
  const { lettering, labels } = around;
  const words = patch.session > 0 ? `${patch.patchId} (${patch.session})` : patch.patchId;
  const wordsMm = lettering.widthMm(words, "mono", 2.5);
  const taken = [...labels.map(({ box }) => box), ...boxesAlong(around.lines, boxOf(loops.flat()))];
  const box = findFreeSpot({ widthMm: wordsMm + 1.2, heightMm: LINE_MM }, loops, taken);
  if (box)
    return {
      box,
      marks: [textMark(paper(box.left + 0.6, box.bottom + 0.7), words, { face: "mono", layer: "words" })],
    };
  return labelBeside(words, loops, wordsMm, around);
}

/** Along the warp, both ends alike, where there is room in the patch: cloth has no front. */
function warpArrow(patch: MappedPatch, loops: Loops, { lines, labels }: Around): readonly Mark[] {
  const [c, s] = [Math.cos(patch.warpRad), Math.sin(patch.warpRad)];
  const taken = [...labels.map(({ box }) => box), ...boxesAlong(lines, boxOf(loops.flat()))];
  const box = findFreeSpot(
    { widthMm: ARROW_MM * Math.abs(c) + 1.6, heightMm: ARROW_MM * Math.abs(s) + 1.6 },
    loops,
    taken,
  );
  if (box === undefined) return [];
  const middle = paper((box.left + box.right) / 2, (box.bottom + box.top) / 2);
  const half = ARROW_MM / 2;
  const place = (along: number, beside: number) =>
    paper(middle.x + along * c - beside * s, middle.y + along * s + beside * c);
  const head = (sign: 1 | -1) =>
    lineMark(
      [place(sign * (half - 1.2), 0.6), place(sign * half, 0), place(sign * (half - 1.2), -0.6)],
      "thin",
    );
  return [lineMark([place(-half, 0), place(half, 0)], "thin"), head(1), head(-1)];
}

/** Off the patch, where nothing is yet, with a thin line that ends in it. */
function labelBeside(words: string, loops: Loops, codeMm: number, { lines, labels }: Around): Label {
  const foot = footIn(loops);
  const size = { widthMm: codeMm + 1, heightMm: LINE_MM };
  const isClear = (box: Box) =>
    !labels.some((other) => boxesOverlap(other.box, box)) &&
    lines.every((line) => clipLine(line, box).length === 0);
  const spots = AWAY_MM.flatMap((away) =>
    Array.from({ length: 24 }, (_, k): Box => {
      const angle = Math.PI / 2 + ((k % 2 === 0 ? k : -k - 1) * Math.PI) / 24;
      const at = paper(foot.x + away * Math.cos(angle), foot.y + away * Math.sin(angle));
      return boxAbout(at, size);
    }),
  );
  const box = spots.find(isClear) ?? boxAbout(foot, size);
  const start = paper(
    Math.min(box.right, Math.max(box.left, foot.x)),
    Math.min(box.top, Math.max(box.bottom, foot.y)),
  );
  return {
    box,
    marks: [
      textMark(paper(box.left + 0.5, box.bottom + 0.7), words, { face: "mono", layer: "words" }),
      lineMark([start, foot], "thin"),
    ],
  };
}

const AWAY_MM = Array.from({ length: 28 }, (_, i) => 5 + 2 * i);

const boxAbout = (
  { x, y }: PaperPoint,
  size: { readonly widthMm: number; readonly heightMm: number },
): Box => ({
  left: x - size.widthMm / 2,
  right: x + size.widthMm / 2,
  bottom: y - size.heightMm / 2,
  top: y + size.heightMm / 2,
});

/** A place inside the loops, near their middle. */
function footIn(loops: Loops): PaperPoint {
  const spot = findFreeSpot({ widthMm: 0.6, heightMm: 0.6 }, loops, []);
  if (spot) return paper((spot.left + spot.right) / 2, (spot.bottom + spot.top) / 2);
  const box = boxOf(loops.flat());
  return paper((box.left + box.right) / 2, (box.bottom + box.top) / 2);
}

/** Small boxes along lines, as far as they come near an area: what words keep clear of. */
function boxesAlong(lines: readonly LineMark[], near: Box): readonly Box[] {
  return lines.flatMap((line) =>
    clipLine(line, near).flatMap(({ points }) =>
      points.slice(1).flatMap((b, i): readonly Box[] => {
        const a = points[i];
        if (!a) return [];
        const count = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / EVERY_MM));
        return Array.from({ length: count }, (_, k) =>
          growBox(
            boxOf([paper(a.x + ((b.x - a.x) * (k + 0.5)) / count, a.y + ((b.y - a.y) * (k + 0.5)) / count)]),
            EVERY_MM / 2,
          ),
        );
      }),
    ),
  );
}

const EVERY_MM = 1.2;
