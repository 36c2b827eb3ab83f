import { type Block, flowBlocks } from "./blocks.ts";
import { type Box, heightOf } from "./boxes.ts";
import type { Mark } from "./types.ts";

/** Pages are filled alike to this, mm. */
const STEP_MM = 1;

/**
 * The blocks on as few pages as they need, filled as evenly as their order lets: to the least height that needs no page
 * more, so that the last page is not left with a single block.
 */
export function flowEvenly(blocks: readonly Block[], area: Box): readonly (readonly Mark[])[] {
  const pages = flowBlocks(blocks, area);
  const most = Math.floor(heightOf(area) / STEP_MM);
  const least = Math.ceil(heightOf(area) / (2 * STEP_MM));
  for (let steps = least; pages.length > 1 && steps < most; steps++) {
    const low = flowBlocks(blocks, { ...area, bottom: area.top - steps * STEP_MM });
    if (low.length === pages.length) return low;
  }
  return pages;
}
