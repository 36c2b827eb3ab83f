import { type Design, planTemplates } from "../../core/book/index.ts";

/** A tray of which every strip is printed whole on A4, and how many pages that takes. */
export interface ManyTiles {
  readonly tray: Design;
  readonly tileCount: number;
}

/** A tray with every strip as often, or as few of its strips, as it takes for about so many pages. */
export function manyTiles(design: Design, aboutPages: number): ManyTiles {
  const whole = printedWhole(design, 1);
  const once = pagesOf(whole);
  const copies = Math.max(1, Math.round(aboutPages / once));
  const tray = copies === 1 ? fewer(whole, aboutPages) : printedWhole(design, copies);
  return { tray, tileCount: pagesOf(tray) };
}

/** The strips so many times over; ribs and plates are left out. */
function printedWhole(design: Design, copies: number): Design {
  const { project, strips, jig } = design;
  return {
    ...design,
    project: { ...project, paper: { ...project.paper, size: "A4", templateWay: "full", templateWays: [] } },
    strips: Array.from({ length: copies }, (_, k) =>
      strips.map((strip) => (k === 0 ? strip : { ...strip, id: `${strip.id}-${k + 1}` })),
    ).flat(),
    plates: [],
    jig: { ...jig, ribs: [] },
  };
}

/** Only as many of the strips as fill so many pages. */
function fewer(design: Design, aboutPages: number): Design {
  let kept = design;
  while (kept.strips.length > 1 && pagesOf(kept) > aboutPages * 1.1)
    kept = { ...kept, strips: kept.strips.slice(0, -1) };
  return kept;
}

const pagesOf = (design: Design): number => planTemplates(design).plan?.pageCount ?? 0;
