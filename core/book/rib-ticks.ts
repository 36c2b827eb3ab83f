import type { PlanPoint } from "../foundation/index.ts";
import { drawnPlaceMm, type Rib } from "../jig/index.ts";
import type { Part } from "../patterns/index.ts";
import { isInsideLoops } from "./chords.ts";
import type { Design } from "./design.ts";
import { flatOfPlan } from "./flat-of-plan.ts";
import { type LineMark, lineMark, paper } from "./marks.ts";
import type { PaperPoint } from "./types.ts";

/** Half the length of a tick across a rib's line, mm. */
const HALF_TICK_MM = 3;
/** The direction of the rib's line is taken over this, mm. */
const FEEL_MM = 1;

/**
 * Short marks across the rib lines on a part's flat pattern, at the stations of each rib of the jig: laid on the jig they
 * meet the station lines on the rib.
 */
export function ribTicks(
  design: Design,
  part: Part,
  loops: readonly (readonly PaperPoint[])[],
): readonly LineMark[] {
  const sheet = design.sheets.find(({ id }) => id === part.sheetId);
  const toFlat = flatOfPlan(design, part);
  if (sheet === undefined || toFlat === undefined) return [];
  const { coreLowerMm, coreUpperMm } = sheet.depths;
  return design.jig.ribs.flatMap((rib) => {
    // Past a trim line the foam has no station to meet.
    if (rib.isOutboard) return [];
    const depthMm = rib.attitude === "upright" ? coreLowerMm : coreUpperMm;
    return stationsUnder(rib, part, design.project.marking.intervalMm).flatMap((alongMm) => {
      const drawn = { ...rib, atMm: drawnPlaceMm(rib, design.jig) };
      const flat = toFlat([pointOn(drawn, alongMm), pointOn(drawn, alongMm + FEEL_MM)], depthMm);
      const [here, next] = flat;
      if (here === undefined || next === undefined) return [];
      if (!isInsideLoops(paper(here.u, here.v), loops)) return [];
      const lengthMm = Math.hypot(next.u - here.u, next.v - here.v) || 1;
      const aside = {
        u: (-(next.v - here.v) / lengthMm) * HALF_TICK_MM,
        v: ((next.u - here.u) / lengthMm) * HALF_TICK_MM,
      };
      const ends = [-1, 1].map((side) => paper(here.u + side * aside.u, here.v + side * aside.v));
      return ends.every((end) => isInsideLoops(end, loops)) ? [lineMark(ends, "station", "ribs")] : [];
    });
  });
}

const pointOn = ({ runs, atMm }: Rib, alongMm: number): PlanPoint =>
  runs === "across" ? { x: atMm, y: alongMm } : { x: alongMm, y: atMm };

/** Even stations along a rib at which it carries the part. */
function stationsUnder({ heights }: Rib, part: Part, intervalMm: number): readonly number[] {
  const isEven = (mm: number) => Math.abs(mm / intervalMm - Math.round(mm / intervalMm)) < 1e-9;
  return [...new Set(heights.filter(({ partId }) => partId === part.id).map(({ atMm }) => atMm))].filter(
    isEven,
  );
}
