import { type Box, boxOf, growBox, heightOf, widthOf } from "./boxes.ts";
import { isInsideLoops } from "./chords.ts";
import { clipLine } from "./clip.ts";
import type { Lettering } from "./lettering.ts";
import { type LineMark, lineMark, loopMark, paper, textMark } from "./marks.ts";
import type { SpaceShape } from "./plan-shapes.ts";
import type { LineStyle, Mark, PaperPoint } from "./types.ts";

/** Where a view lies on paper: the view's box in the car, the scale, and its lower left corner on paper. */
export interface View {
  readonly box: Box;
  readonly scale: number;
  readonly corner: PaperPoint;
}

/** A point of the view (x rearward to the right; y or z up) on paper. */
export const onView = (view: View, p: PaperPoint): PaperPoint =>
  paper(
    view.corner.x + (p.x - view.box.left) / view.scale,
    view.corner.y + (p.y - view.box.bottom) / view.scale,
  );

/** The plan of shapes: x to the right, y up. */
export const planLoops = (shape: SpaceShape): readonly (readonly PaperPoint[])[] =>
  shape.loops.map((loop) => loop.map((p) => paper(p.x, p.y)));

/** The side view of shapes: x to the right, z up. */
export const sideLoops = (shape: SpaceShape): readonly (readonly PaperPoint[])[] =>
  shape.loops.map((loop) => loop.map((p) => paper(p.x, p.z)));

/** The box of all shapes in plan. */
export const planBox = (shapes: readonly SpaceShape[]): Box =>
  boxOf(shapes.flatMap((shape) => planLoops(shape).flat()));

/** A shape's outline in plan; a fence, which is upright, as its line. */
export function planMarks(shape: SpaceShape, view: View, style: LineStyle): readonly Mark[] {
  if (shape.kind === "fence") {
    const line = fenceLine(shape).map((p) => onView(view, p));
    return line.length < 2 ? [] : [lineMark(line, style, "plan")];
  }
  return planLoops(shape).map((loop) =>
    loopMark(
      loop.map((p) => onView(view, p)),
      style,
      "plan",
    ),
  );
}

/** The lines of shapes in plan, which words keep clear of. */
export const linesOfPlan = (shapes: readonly SpaceShape[], view: View): readonly LineMark[] =>
  shapes.flatMap((shape) => planMarks(shape, view, "outline")).filter((mark) => mark.kind === "line");

/** The plan of a fence from its front to its rear. */
const fenceLine = (shape: SpaceShape): readonly PaperPoint[] =>
  [...(planLoops(shape)[0] ?? [])].sort((a, b) => a.x - b.x || a.y - b.y);

/**
 * Each shape's code inside it where there is room, else beside it with a line to it; codes never lie on each other, nor on
 * the lines given.
 */
export function codeMarks(
  shapes: readonly SpaceShape[],
  view: View,
  lettering: Lettering,
  lines: readonly LineMark[] = [],
): readonly Mark[] {
  const taken: Box[] = [];
  const leaders: LineMark[] = [];
  const isClear = (box: Box) =>
    !taken.some((other) => overlap(other, box)) &&
    [...lines, ...leaders].every((line) => clipLine(line, growBox(box, CLEAR_MM)).length === 0);
  return shapes.flatMap((shape): readonly Mark[] => {
    const width = lettering.widthMm(shape.id, "mono", 2.5);
    const spots = codeSpots(shape, view, width);
    const own = spots.find((p) => isClear(codeBox(p, width)));
    const foot = own === undefined ? spots[0] : undefined;
    const isReached = (p: PaperPoint) =>
      foot !== undefined && taken.every((box) => clipLine(leader(p, foot, width), box).length === 0);
    const spot = own ?? (foot && spotsAround(foot).find((p) => isClear(codeBox(p, width)) && isReached(p)));
    if (spot === undefined) return [];
    if (foot !== undefined) leaders.push(leader(spot, foot, width));
    taken.push(growBox(codeBox(spot, width), 0.3));
    return [
      textMark(paper(spot.x - width / 2, spot.y - 1.25), shape.id, { face: "mono", layer: "words" }),
      ...(foot === undefined ? [] : [leader(spot, foot, width)]),
    ];
  });
}

/** Between a code and a line, mm. */
const CLEAR_MM = 0.6;
/** A code that finds no room is set this far away, and a line leads to its shape, mm. */
const AWAY_MM = [6, 8, 10, 12, 15, 18, 22];

const spotsAround = (foot: PaperPoint): readonly PaperPoint[] =>
  AWAY_MM.flatMap((away) =>
    Array.from({ length: 16 }, (_, k) => {
      const angle = ((k % 2 === 0 ? k : -k - 1) * Math.PI) / 16 + Math.PI / 2;
      return paper(foot.x + away * Math.cos(angle), foot.y + away * Math.sin(angle));
    }),
  );

/** From the edge of a code's box to a place of its shape. */
function leader(spot: PaperPoint, foot: PaperPoint, width: number): LineMark {
  const box = growBox(codeBox(spot, width), 0.2);
  const start = paper(
    Math.min(box.right, Math.max(box.left, foot.x)),
    Math.min(box.top, Math.max(box.bottom, foot.y)),
  );
  return lineMark([start, foot], "station", "words");
}

const codeBox = (p: PaperPoint, width: number): Box => ({
  left: p.x - width / 2,
  right: p.x + width / 2,
  bottom: p.y - 1.5,
  top: p.y + 1.5,
});

const overlap = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.bottom < b.top && b.bottom < a.top;

/** Places on paper where a code may stand, best first. */
function codeSpots(shape: SpaceShape, view: View, codeMm: number): readonly PaperPoint[] {
  if (shape.kind === "fence") {
    const line = fenceLine(shape);
    return [0.5, 0.3, 0.7, 0.15, 0.85].flatMap((share) => {
      const p = line[Math.floor(share * (line.length - 1))];
      if (p === undefined) return [];
      const here = onView(view, p);
      return [paper(here.x, here.y + 2.6), paper(here.x, here.y - 2.6)];
    });
  }
  const loops = planLoops(shape);
  const box = boxOf(loops.flat());
  if (widthOf(box) / view.scale < codeMm + 1) return besideSpots(box, view, codeMm);
  const isAcross = box.bottom < 0 && box.top > 0;
  const spots: PaperPoint[] = [];
  for (const fx of [0.5, 0.4, 0.6, 0.25, 0.75, 0.15, 0.85]) {
    for (const fy of isAcross ? [0.7, 0.3, 0.8, 0.2, 0.6, 0.4] : [0.5, 0.35, 0.65, 0.2, 0.8]) {
      spots.push(paper(box.left + widthOf(box) * fx, box.bottom + heightOf(box) * fy));
    }
  }
  return spots.filter((p) => isInsideLoops(p, loops)).map((p) => onView(view, p));
}

/** Before, above and below a shape too narrow for its code. */
function besideSpots(box: Box, view: View, codeMm: number): readonly PaperPoint[] {
  const [low, high] = [onView(view, paper(box.left, box.bottom)), onView(view, paper(box.right, box.top))];
  const [x, y] = [(low.x + high.x) / 2, (low.y + high.y) / 2];
  return [paper(x, high.y + 2.6), paper(x, low.y - 2.6), paper(low.x - codeMm / 2 - 1, y)];
}

/** The centre line of the car across a view, with its letters. */
export function centreLineMarks(view: View): readonly LineMark[] {
  const [from, to] = [onView(view, paper(view.box.left, 0)), onView(view, paper(view.box.right, 0))];
  return [lineMark([paper(from.x - 5, from.y), paper(to.x + 5, to.y)], "centre", "centre")];
}
