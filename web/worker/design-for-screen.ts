import type { Strip } from "../../core/cutting/index.ts";
import type { Design, Shapes, Work } from "../../core/design.ts";
import type { FlatPoint, PlanPoint } from "../../core/foundation/index.ts";
import type { FlatLoop, Part, PartOutline } from "../../core/patterns/index.ts";
import type { LaidGroup } from "../../core/stock/index.ts";
import type { RegionLoop, SeatStation, SectionSheet, Sheet } from "../../core/surfaces/index.ts";
import { thinnedIndices } from "./thinned-indices.ts";

/** A picture shows a twentieth of a mm at no scale of the screen; what is printed is drawn from the full design. */
const SCREEN_CHORD_MM = 0.05;

/**
 * The sheets and parts as the screen needs them: every line with as few points as a picture of it takes, each end and
 * each outermost point kept, so that sizes read from it are those of the full one. All figures stay as they are; what
 * was thinned before is that very object.
 */
export const shapesForScreen = (shapes: Shapes): Shapes => ({
  ...shapes,
  sheets: shapes.sheets.map((sheet) => once(sheet, thinnedSheet)),
  parts: shapes.parts.map((part) => once(part, thinnedPart)),
});

/** A flat outline as the screen needs it. */
export const outlineForScreen = ({ id, loops }: PartOutline): PartOutline => ({
  id,
  loops: loops.map(thinnedFlatLoop),
});

/** The work on the bench as the screen needs it. */
export const workForScreen = (work: Work): Work => ({
  ...work,
  strips: work.strips.map((strip) => once(strip, thinnedStrip)),
  stock: work.stock.map((group) => once(group, thinnedGroup)),
});

/** The whole design as the screen needs it. */
export const designForScreen = (design: Design): Design => ({
  ...shapesForScreen(design),
  ...workForScreen(design),
});

const thinned = new WeakMap<object, object>();

function once<T extends object>(full: T, thin: (full: T) => T): T {
  const known = thinned.get(full);
  // What stands beside an object was made of it.
  if (known) return known as T;
  const made = thin(full);
  thinned.set(full, made);
  return made;
}

const thinnedGroup = (group: LaidGroup): LaidGroup => ({
  ...group,
  sheets: group.sheets.map((sheet) => ({
    ...sheet,
    pieces: sheet.pieces.map((piece) => ({ ...piece, linesMm: piece.linesMm.map(thinnedPlan) })),
  })),
});

const thinnedStrip = (strip: Strip): Strip => ({
  ...strip,
  loops: strip.loops.map(thinnedFlatLoop),
  outlineMm: thinnedFlat(strip.outlineMm),
  holesMm: strip.holesMm.map(thinnedFlat),
  cutLinesMm: strip.cutLinesMm.map(thinnedFlat),
});

const thinnedPart = (part: Part): Part => ({
  ...part,
  loops: part.loops.map(thinnedFlatLoop),
  ...(part.finished && { finished: part.finished.map(thinnedFlatLoop) }),
  seat: thinnedSeat(part.seat),
});

function thinnedSheet(sheet: Sheet): Sheet {
  const loops = sheet.loops.map(thinnedRegionLoop);
  if (sheet.kind === "fence") return { ...sheet, loops, seat: thinnedSeat(sheet.seat) };
  const planLoops = sheet.planLoops.map(thinnedPlan);
  if (sheet.kind === "transition") return { ...sheet, loops, planLoops };
  return { ...sheet, loops, planLoops, ...(sheet.cover ? { cover: thinnedCover(sheet.cover) } : {}) };
}

const thinnedCover = (cover: NonNullable<SectionSheet["cover"]>): typeof cover => ({
  square: cover.square.map(thinnedPlan),
  upright: cover.upright.map(thinnedPlan),
  own: cover.own.map(thinnedPlan),
  others: cover.others.map(thinnedPlan),
});

const thinnedFlatLoop = (loop: FlatLoop): FlatLoop => ({
  edges: loop.edges.map((edge) => ({ ...edge, points: thinnedFlat(edge.points) })),
});

const thinnedRegionLoop = (loop: RegionLoop): RegionLoop => ({
  edges: loop.edges.map((edge) => {
    const kept = thinnedIndices(edge.points, across, SCREEN_CHORD_MM);
    return {
      ...edge,
      points: only(edge.points, kept),
      flat: only(edge.flat, kept),
      shares: only(edge.shares, kept),
    };
  }),
});

const across = ({ u, v }: FlatPoint): readonly [number, number] => [u, v];

const thinnedFlat = (points: readonly FlatPoint[]): readonly FlatPoint[] =>
  only(points, thinnedIndices(points, across, SCREEN_CHORD_MM));

const thinnedPlan = (points: readonly PlanPoint[]): readonly PlanPoint[] =>
  only(
    points,
    thinnedIndices(points, ({ x, y }) => [x, y], SCREEN_CHORD_MM),
  );

/** By the height of the seat; the bevel changes more slowly. */
const thinnedSeat = (seat: readonly SeatStation[]): readonly SeatStation[] =>
  only(
    seat,
    thinnedIndices(seat, ({ alongMm, midZMm }) => [alongMm, midZMm], SCREEN_CHORD_MM),
  );

const only = <T>(list: readonly T[], kept: readonly number[]): readonly T[] =>
  kept.flatMap((index) => list.slice(index, index + 1));
