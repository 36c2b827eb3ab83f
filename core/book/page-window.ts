import { fail, type Problem, type Result, succeed } from "../foundation/index.ts";
import type { Project } from "../project/index.ts";
import { LONGEST_PAGE_MM, paperSize } from "./papers.ts";

/**
 * What one page shows of the drawing: a window of `widthMm` by `heightMm` of true size, whose lower left corner
 * lies `marginMm` from the paper's. The print correction stretches what is in the window about that corner; a
 * strip for words stays free above it.
 */
export interface PageWindow {
  readonly paperWidthMm: number;
  readonly paperHeightMm: number;
  readonly marginMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly overlapMm: number;
  readonly correctionX: number;
  readonly correctionY: number;
  /** A roll is cut where the drawing ends. */
  readonly cutToLength: boolean;
}

/** Height of the strip for words above the window, mm. */
export const HEADING_MM = 22;
/** From the window's corner to the bar and the square, beyond the overlap, mm. */
export const GAUGE_INSET_MM = 4;
export const BAR_MM = 200;
export const SQUARE_MM = 100;
/** Between the bar and the square. */
export const GAUGE_GAP_MM = 8;

const LEAST_CORRECTION = 0.98;
const MOST_CORRECTION = 1.02;

/**
 * The window that the paper settings leave. Problems: `number-out-of-range` for a setting that cannot be
 * printed, `page-too-small` where bar and square do not fit.
 */
export function pageWindow(settings: Project["paper"]): Result<PageWindow> {
  const wrong = wrongSettings(settings);
  if (wrong.length > 0) return fail(...wrong);
  const { widthMm: paperWidthMm, heightMm: paperHeightMm } = paperSize(settings.size, settings.rollWidthMm);
  const { marginMm, correctionX, correctionY } = settings;
  const overlapMm = Math.round(settings.overlapMm * 10) / 10;
  const widthMm = downToTenth((paperWidthMm - 2 * marginMm) / correctionX);
  const heightMm = downToTenth((paperHeightMm - 2 * marginMm - HEADING_MM) / correctionY);
  const window: PageWindow = {
    paperWidthMm,
    paperHeightMm,
    marginMm,
    widthMm,
    heightMm,
    overlapMm,
    correctionX,
    correctionY,
    cutToLength: settings.size === "roll",
  };
  return fitsGauges(window) ? succeed(window) : fail(tooSmall(window));
}

/** Windows and overlaps are whole tenths, so that the origin printed on each page is exact. */
const downToTenth = (lengthMm: number): number => Math.floor(lengthMm * 10 + 1e-6) / 10;

const inset = (window: PageWindow): number => window.overlapMm + GAUGE_INSET_MM;

/** Whether the 200 mm bar lies across the page; else it stands upright. */
export const barIsLevel = (window: PageWindow): boolean => window.widthMm >= BAR_MM + 2 * inset(window);

const besideBar = (window: PageWindow): number => SQUARE_MM + GAUGE_GAP_MM + 2 * inset(window);

/** The window is never lower than bar and square need, mm. */
export const leastWindowHeight = (window: PageWindow): number =>
  barIsLevel(window) ? besideBar(window) : BAR_MM + 2 * inset(window);

const fitsGauges = (window: PageWindow): boolean =>
  window.heightMm >= leastWindowHeight(window) && (barIsLevel(window) || window.widthMm >= besideBar(window));

const tooSmall = (window: PageWindow): Problem => ({
  kind: "page-too-small",
  place: { setting: "paper.size" },
  name: "The paper",
  usableWidthMm: Math.max(0, window.widthMm),
  usableHeightMm: Math.max(0, window.heightMm),
});

function wrongSettings(settings: Project["paper"]): Problem[] {
  const fields: readonly (readonly [string, string, number, number, number])[] = [
    ["paper.marginMm", "Margin", settings.marginMm, 0, 100],
    ["paper.overlapMm", "Overlap", settings.overlapMm, 0, 50],
    ["paper.correctionX", "Print correction across", settings.correctionX, LEAST_CORRECTION, MOST_CORRECTION],
    ["paper.correctionY", "Print correction along", settings.correctionY, LEAST_CORRECTION, MOST_CORRECTION],
    ...(settings.size === "roll"
      ? ([["paper.rollWidthMm", "Roll width", settings.rollWidthMm, 100, LONGEST_PAGE_MM]] as const)
      : []),
  ];
  return fields
    .filter(([, , value, least, most]) => !(value >= least && value <= most))
    .map(([setting, field, value, least, most]) => ({
      kind: "number-out-of-range" as const,
      place: { setting },
      name: "the paper",
      field,
      value,
      least,
      most,
    }));
}
