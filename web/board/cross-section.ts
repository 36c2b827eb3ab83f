import { crossingParameters, pointOnPiece } from "../../core/curves/index.ts";
import type { Design } from "../../core/design.ts";
import type { Vec2 } from "../../core/foundation/index.ts";
import { type FenceSheet, faceOver, type Hand, type LyingSheet } from "../../core/surfaces/index.ts";
import { crossingsOfLoop } from "./crossings-of-loop.ts";
import { type CutMetal, cutPlate } from "./cut-plate.ts";

/** A sheet cut by the plane of the hairline: its faces as lines (y, z), from the left to the right of the car. */
export interface CutSheet {
  readonly thicknessMm: number;
  readonly key: string;
  readonly itemId: string;
  readonly name: string;
  readonly hand: Hand;
  readonly air: readonly Vec2[];
  readonly coreLower: readonly Vec2[];
  readonly coreUpper: readonly Vec2[];
  readonly upper: readonly Vec2[];
}

/** A fence cut by the plane of the hairline: its four corners (y, z), lower edge first. */
export interface CutFence {
  readonly key: string;
  readonly itemId: string;
  readonly name: string;
  readonly hand: Hand;
  readonly corners: readonly [Vec2, Vec2, Vec2, Vec2];
  /** Height of the finished lower edge, skin and all. */
  readonly finishedZMm: number;
  readonly yMm: number;
}

export interface CrossSection {
  readonly xMm: number;
  readonly sheets: readonly CutSheet[];
  readonly fences: readonly CutFence[];
  readonly metal: readonly CutMetal[];
}

/** Heights are taken at this many places across a sheet. */
const SAMPLES = 24;
/** So far inside its edge a sheet is sampled, that the sample lies on it, mm. */
const INSIDE_MM = 0.01;

/**
 * The tray cut square to its length at a station, seen from the rear: y to the right, z up. A sheet that was cut there
 * before is not cut again.
 */
export function crossSection(design: Design, xMm: number): CrossSection {
  const sheets = design.sheets.flatMap((sheet) =>
    sheet.kind === "fence" ? [] : sheetsCut.at(sheet, [xMm], () => cutSheets(sheet, xMm)),
  );
  // The finished lower edge is that of the foam less the skin that wraps it.
  const wrapMm = design.project.drawnFace === "air" ? design.project.skins.lowerMm : 0;
  const fences = design.sheets.flatMap((sheet) =>
    sheet.kind === "fence" ? fencesCut.at(sheet, [xMm, wrapMm], () => cutFences(sheet, xMm, wrapMm)) : [],
  );
  return { xMm, sheets, fences, metal: design.plates.flatMap((plate) => cutPlate(plate, xMm)) };
}

/** What was last made of a thing at some numbers: asked for the same, it is that again. */
function lastOf<Made>() {
  const known = new WeakMap<object, { readonly at: readonly number[]; readonly made: Made }>();
  return {
    at: (thing: object, at: readonly number[], make: () => Made): Made => {
      const before = known.get(thing);
      if (before?.at.every((number, i) => Object.is(number, at[i]))) return before.made;
      const made = make();
      known.set(thing, { at, made });
      return made;
    },
  };
}

const sheetsCut = lastOf<readonly CutSheet[]>();
const fencesCut = lastOf<readonly CutFence[]>();

/** How far a cut fence hangs below the lowest air side over it; undefined where nothing is cut there. */
export function depthOfCut({ sheets }: CrossSection, fence: CutFence): number | undefined {
  const zMm = airSideOver(sheets, fence.yMm);
  return zMm === undefined ? undefined : zMm - fence.finishedZMm;
}

/** Height of the lowest air side at y. */
function airSideOver(sheets: readonly CutSheet[], yMm: number): number | undefined {
  const heights = sheets.flatMap(({ air }) =>
    air.flatMap((to, index): readonly number[] => {
      const from = air[index - 1];
      if (!from || from[0] === to[0] || (from[0] - yMm) * (to[0] - yMm) > 0) return [];
      return [from[1] + ((yMm - from[0]) / (to[0] - from[0])) * (to[1] - from[1])];
    }),
  );
  return heights.length > 0 ? Math.min(...heights) : undefined;
}

const lastCuts = new WeakMap<LyingSheet, { readonly xMm: number; readonly cuts: readonly CutSheet[] }>();

/** A sheet that has not changed is cut again only where the hairline has moved. */
function cutSheets(sheet: LyingSheet, xMm: number): readonly CutSheet[] {
  const last = lastCuts.get(sheet);
  if (last?.xMm === xMm) return last.cuts;
  const cuts = cutsAt(sheet, xMm);
  lastCuts.set(sheet, { xMm, cuts });
  return cuts;
}

function cutsAt(sheet: LyingSheet, xMm: number): readonly CutSheet[] {
  const { depths } = sheet;
  const faces = {
    air: faceOver(sheet, depths.airMm),
    coreLower: faceOver(sheet, depths.coreLowerMm),
    coreUpper: faceOver(sheet, depths.coreUpperMm),
    upper: faceOver(sheet, depths.upperMm),
  };
  return spansAt(sheet, faces.air, xMm).flatMap((span, index) => {
    const right = {
      thicknessMm: sheet.thicknessMm,
      itemId: sheet.itemId,
      name: sheet.name,
      air: faceAcross(faces.air, xMm, span),
      coreLower: faceAcross(faces.coreLower, xMm, span),
      coreUpper: faceAcross(faces.coreUpper, xMm, span),
      upper: faceAcross(faces.upper, xMm, span),
    };
    return sheet.hands.map((hand) => {
      const cut = { ...right, key: `${sheet.id}/${hand}/${index}`, hand };
      return hand === "left" ? mirrorSheet(cut) : cut;
    });
  });
}

type Face = ReturnType<typeof faceOver>;

/** The stretches of y over which a sheet's outline covers a station. */
function spansAt(sheet: LyingSheet, air: Face, xMm: number): readonly (readonly [number, number])[] {
  const crossings = crossingsOf(sheet, xMm).toSorted((a, b) => a - b);
  return crossings.flatMap((from, index) => {
    const to = crossings[index + 1];
    if (to === undefined || to - from <= 2 * INSIDE_MM) return [];
    return air({ x: xMm, y: (from + to) / 2 }) === undefined ? [] : [[from, to] as const];
  });
}

/** Of a section where its very curves cross the station; a transition has only its outline's points. */
function crossingsOf({ planPieces, planLoops }: LyingSheet, xMm: number): readonly number[] {
  if (planPieces.length > 0)
    return planPieces.flatMap((piece) =>
      crossingParameters(piece, [1, 0], xMm).map((t) => pointOnPiece(piece, t)[1]),
    );
  return planLoops.flatMap((loop) => crossingsOfLoop(loop, xMm));
}

function faceAcross(face: Face, x: number, [from, to]: readonly [number, number]): readonly Vec2[] {
  return Array.from({ length: SAMPLES + 1 }, (_, index) => {
    const y = from + INSIDE_MM + ((to - from - 2 * INSIDE_MM) * index) / SAMPLES;
    return { y, z: face({ x, y })?.z };
  }).flatMap(({ y, z }): readonly Vec2[] => (z === undefined ? [] : [[y, z]]));
}

const mirrorPoint = ([y, z]: Vec2): Vec2 => [-y, z];
const mirrorFace = (face: readonly Vec2[]): readonly Vec2[] => [...face].reverse().map(mirrorPoint);
const mirrorSheet = (cut: CutSheet): CutSheet => ({
  ...cut,
  air: mirrorFace(cut.air),
  coreLower: mirrorFace(cut.coreLower),
  coreUpper: mirrorFace(cut.coreUpper),
  upper: mirrorFace(cut.upper),
});

function cutFences(fence: FenceSheet, xMm: number, wrapMm: number): readonly CutFence[] {
  return fence.chart.pieces.flatMap(({ piece, startUMm, lengthUMm }, index) =>
    crossingParameters(piece, [1, 0], xMm).flatMap((t) => {
      const alongMm = startUMm + lengthUMm * t;
      const seat = seatAt(fence, alongMm);
      const lowerZMm = lowestAt(fence, alongMm);
      if (seat === undefined || lowerZMm === undefined) return [];
      const y = pointOnPiece(piece, t)[1];
      const half = fence.thicknessMm / 2;
      const cut = {
        key: `${fence.id}/${index}`,
        itemId: fence.itemId,
        name: fence.name,
        finishedZMm: lowerZMm - wrapMm,
        yMm: y,
        corners: [
          [y - half, lowerZMm],
          [y + half, lowerZMm],
          [y + half, seat.highYMm],
          [y - half, seat.lowYMm],
        ],
      } satisfies Omit<CutFence, "hand">;
      return fence.hands.map((hand) => (hand === "left" ? mirrorFence(cut) : { ...cut, hand }));
    }),
  );
}

function mirrorFence(cut: Omit<CutFence, "hand">): CutFence {
  const [a, b, c, d] = cut.corners;
  return {
    ...cut,
    hand: "left",
    key: `${cut.key}/left`,
    yMm: -cut.yMm,
    corners: [mirrorPoint(b), mirrorPoint(a), mirrorPoint(d), mirrorPoint(c)],
  };
}

/** Heights of the seat at the foam face toward smaller y and toward larger y, between two stations. */
function seatAt(
  fence: FenceSheet,
  alongMm: number,
): { readonly lowYMm: number; readonly highYMm: number } | undefined {
  const index = fence.seat.findIndex((station) => station.alongMm >= alongMm);
  const after = fence.seat[index];
  const before = fence.seat[index - 1] ?? after;
  if (!after || !before) return undefined;
  const span = after.alongMm - before.alongMm;
  const share = span === 0 ? 0 : (alongMm - before.alongMm) / span;
  const between = (a: number, b: number) => a + (b - a) * share;
  const left = between(before.leftZMm, after.leftZMm);
  const right = between(before.rightZMm, after.rightZMm);
  // A fence's line runs rearward: left of its direction, seen from above, lies the larger y.
  return { lowYMm: right, highYMm: left };
}

/** The lowest height of the fence's outline at a place along it. */
function lowestAt(fence: FenceSheet, alongMm: number): number | undefined {
  const heights = fence.loops.flatMap((loop) =>
    loop.edges.flatMap(({ points }) =>
      points.flatMap((to, index) => {
        const from = points[index - 1];
        if (!from || (from.u - alongMm) * (to.u - alongMm) > 0 || from.u === to.u) return [];
        return [from.v + ((alongMm - from.u) / (to.u - from.u)) * (to.v - from.v)];
      }),
    ),
  );
  return heights.length === 0 ? undefined : Math.min(...heights);
}
