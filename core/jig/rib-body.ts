import { at } from "../foundation/index.ts";
import type { Rest } from "./resting-face.ts";
import type { TopPoint } from "./top-stretches.ts";

/** Which way a rib's body goes from its station plane: toward greater or lesser x (across) or y (along). */
export type BodySide = 1 | -1;

export interface BodyChoice {
  readonly side: BodySide;
  readonly cut: "square" | "bevel";
  /** How far a square cut stands above the foam anywhere over the board's thickness, at worst, mm. */
  readonly mostProudMm: number;
  /** The same of a top that is bevelled straight from face to face: more than nothing where the foam folds over it. */
  readonly bevelProudMm: number;
}

export interface BodySettings {
  readonly thicknessMm: number;
  readonly proudLimitMm: number;
  /** +1 when greater z is higher on the jig (upright), −1 when lower (inverted). */
  readonly upSign: 1 | -1;
  /** The side for a top that is level across the rib. */
  readonly levelSide: BodySide;
}

/** Differences below this are rounding, mm. */
const LEVEL_MM = 1e-6;
/** The foam is looked at this often between the faces of a board, mm: bends are far wider. */
const LOOK_STEP_MM = 2;
/** A border between sheets is found to this, mm: on a slope of 1 it misses a tenth of what a rib's top may. */
const BORDER_MM = 1e-3;

/**
 * Which side of the station plane a rib's body lies on: the side where the foam moves away from the rib, so that
 * a square cut touches with its station edge alone (a rule of geometry and common practice). The foam is judged
 * over the whole thickness, for it may fold between both faces. Where the slope changes along the rib, the side
 * that stands less proud; where that is still over the limit the top is bevelled, with the station plane on the
 * fuller face, so that there is wood to plane off. `restAt(offset, along)` is what rests beside the station plane.
 */
export function chooseBody(
  top: readonly TopPoint[],
  restAt: (offsetMm: number, alongMm: number) => Rest | undefined,
  settings: BodySettings,
): BodyChoice {
  const { levelSide, proudLimitMm } = settings;
  const proud = (side: BodySide) => proudOver(top, restAt, side, settings);
  const ahead = proud(levelSide);
  const back: BodySide = levelSide === 1 ? -1 : 1;
  const behind = ahead.squareMm > LEVEL_MM ? proud(back) : ahead;
  const isBack = behind.squareMm < ahead.squareMm - LEVEL_MM;
  const away = isBack ? back : levelSide;
  const least = isBack ? behind : ahead;
  if (least.squareMm <= proudLimitMm)
    return { side: away, cut: "square", mostProudMm: least.squareMm, bevelProudMm: least.bevelMm };
  const fuller = isBack ? ahead : behind;
  return {
    side: away === 1 ? -1 : 1,
    cut: "bevel",
    mostProudMm: least.squareMm,
    bevelProudMm: fuller.bevelMm,
  };
}

/** How far a square and a straight bevelled top stand above the foam, at worst. */
interface Proud {
  readonly squareMm: number;
  readonly bevelMm: number;
}

function proudOver(
  top: readonly TopPoint[],
  restAt: (offsetMm: number, alongMm: number) => Rest | undefined,
  side: BodySide,
  { thicknessMm, upSign }: BodySettings,
): Proud {
  let squareMm = 0;
  let bevelMm = 0;
  for (const { atMm, zMm, partId } of top) {
    const looks = looksAcross((offsetMm) => restAt(side * offsetMm, atMm), { zMm, partId }, thicknessMm);
    const last = at(looks, -1);
    for (const { offsetMm, rest } of looks) {
      const bevelledZMm = zMm + (last.offsetMm > 0 ? offsetMm / last.offsetMm : 0) * (last.rest.zMm - zMm);
      squareMm = Math.max(squareMm, upSign * (zMm - rest.zMm));
      bevelMm = Math.max(bevelMm, upSign * (bevelledZMm - rest.zMm));
    }
  }
  return { squareMm: squareMm < LEVEL_MM ? 0 : squareMm, bevelMm: bevelMm < LEVEL_MM ? 0 : bevelMm };
}

interface Look {
  readonly offsetMm: number;
  readonly rest: Rest;
}

/** The foam over a board from its station plane to its other face, with both sides of every border in between. */
function looksAcross(
  over: (offsetMm: number) => Rest | undefined,
  station: Rest,
  thicknessMm: number,
): readonly Look[] {
  const looks: Look[] = [{ offsetMm: 0, rest: station }];
  const steps = Math.max(1, Math.ceil(thicknessMm / LOOK_STEP_MM - LEVEL_MM));
  const keep = (offsetMm: number, rest: Rest | undefined) => {
    if (rest !== undefined) looks.push({ offsetMm, rest });
  };
  let [beforeMm, before]: [number, Rest | undefined] = [0, station];
  for (let i = 1; i <= steps; i++) {
    const offsetMm = (thicknessMm * i) / steps;
    const rest = over(offsetMm);
    if (rest?.partId !== before?.partId) {
      const [lastMm, nextMm] = borderBetween(beforeMm, offsetMm, (mm) => over(mm)?.partId === before?.partId);
      keep(lastMm, over(lastMm));
      keep(nextMm, over(nextMm));
    }
    keep(offsetMm, rest);
    [beforeMm, before] = [offsetMm, rest];
  }
  return looks;
}

/** The last place that is like the first, and the next one, which is not. */
function borderBetween(
  fromMm: number,
  toMm: number,
  isLikeFirst: (offsetMm: number) => boolean,
): readonly [number, number] {
  let [last, next] = [fromMm, toMm];
  while (next - last > BORDER_MM) {
    const middle = (last + next) / 2;
    if (isLikeFirst(middle)) last = middle;
    else next = middle;
  }
  return [last, next];
}
