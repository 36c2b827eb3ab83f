import type { PlanPoint } from "../foundation/index.ts";
import type { MappedPatch, MappedPly, PatchMap } from "../skins/index.ts";
import { type Box, boxOf, growBox } from "./boxes.ts";
import { clipLine } from "./clip.ts";
import { findFreeSpot } from "./free-spot.ts";
import { hatchMarks } from "./hatch-marks.ts";
import { LABEL_LINE_MM, type Label, type LabelsAround, type Loops, labelBeside } from "./label-beside.ts";
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
  const around = { lines, labels, lettering };
  const beside = own.filter((patch) => {
    const label = labelInside(patch, onPaper(patch.loopsMm), around);
    if (label !== undefined) labels.push(label);
    return label === undefined;
  });
  for (const patch of beside) labels.push(labelBeside(wordsOf(patch), onPaper(patch.loopsMm), around));
  const arrows = own.flatMap((patch) => warpArrow(patch, onPaper(patch.loopsMm), around));
  return [...grounds, ...hatches, ...outlines, ...labels.flatMap(({ marks }) => marks), ...arrows];
}

const ARROW_MM = 7;

/** Code and session. */
const wordsOf = ({ patchId, session }: MappedPatch): string =>
  session > 0 ? `${patchId} (${session})` : patchId;

/** Code and session inside the patch, clear of laps and lines; undefined where there is no room. */
function labelInside(patch: MappedPatch, loops: Loops, around: LabelsAround): Label | undefined {
  const words = wordsOf(patch);
  const wordsMm = around.lettering.widthMm(words, "mono", 2.5);
  const taken = [...around.labels.map(({ box }) => box), ...boxesAlong(around.lines, boxOf(loops.flat()))];
  const box = findFreeSpot({ widthMm: wordsMm + 1.2, heightMm: LABEL_LINE_MM }, loops, taken);
  if (box === undefined) return undefined;
  const at = paper(box.left + 0.6, box.bottom + 0.7);
  return { box, marks: [textMark(at, words, { face: "mono", layer: "words" })] };
}

/** Along the warp, both ends alike, where there is room in the patch: cloth has no front. */
function warpArrow(patch: MappedPatch, loops: Loops, { lines, labels }: LabelsAround): readonly Mark[] {
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
