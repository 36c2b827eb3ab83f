import type { Project } from "../project/index.ts";
import type { Lettering } from "./lettering.ts";
import { HEADING_MM, type PageWindow } from "./page-window.ts";
import type { Mark } from "./types.ts";

/** What every page of the templates has in common. */
export interface TemplateSetting {
  readonly title: string;
  readonly window: PageWindow;
  readonly lettering: Lettering;
  readonly pageCount: number;
  readonly cutting: Project["cutting"];
  /** The words of every piece in its own frame, by the piece's code. */
  readonly labels: ReadonlyMap<string, readonly Mark[]>;
}

/** The instruction on every page. */
export const PRINT_WORDS = "print at 100 %, no scaling; check the bar with a steel rule";

/** How to cut ribs and plates by their lines, beside the words about foam. */
export const BOARD_WORDS = "metal, boards: to its centre";

/** Length of a page from the roll, mm. */
export const cutLength = (layout: { readonly windowHeightMm: number }, window: PageWindow): number =>
  2 * window.marginMm + HEADING_MM + layout.windowHeightMm * window.correctionY;
