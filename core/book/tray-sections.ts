import type { Solid } from "../solids/index.ts";
import { boxOf } from "./boxes.ts";
import { cutSolid } from "./cut-solid.ts";
import { paper } from "./marks.ts";
import { type SectionStation, sectionStations } from "./section-stations.ts";
import type { PaperPoint } from "./types.ts";

/** A part where a section cuts it: closed loops, y of the car to the right and z up. */
export interface CutPart {
  readonly partId: string;
  readonly isImage: boolean;
  readonly loops: readonly (readonly PaperPoint[])[];
}

/** A section across the bare tray, and every part that it cuts. */
export interface TraySection {
  readonly station: SectionStation;
  readonly parts: readonly CutPart[];
}

/** The sections that are drawn of a tray, front to rear. */
export const traySections = (solids: readonly Solid[]): readonly TraySection[] =>
  sectionStations(solids).map((station) => ({ station, parts: partsAt(solids, station) }));

const partsAt = (solids: readonly Solid[], { xMm }: SectionStation): readonly CutPart[] =>
  solids.flatMap((solid) => {
    const loops = cutSolid(solid, xMm);
    return loops.length === 0 ? [] : [{ partId: solid.partId, isImage: solid.isImage, loops }];
  });

/** A place at the end of a part that is told in figures: where, and how high the lower face is. */
export interface Told {
  readonly y: number;
  readonly z: number;
}

/** Both ends of a loop across the car, each at its lowest point nearby. */
export function endsOf(loop: readonly PaperPoint[]): readonly Told[] {
  const box = boxOf(loop);
  return [box.left, box.right].map((y) => {
    const near = loop.filter((p) => Math.abs(p.x - y) < END_MM);
    const lowest = near.reduce((low, p) => (p.y < low.y ? p : low), near[0] ?? paper(y, box.bottom));
    return { y: lowest.x, z: lowest.y };
  });
}

/** A bevelled edge is as wide as this at most on paper that anybody reads, mm of the car. */
const END_MM = 4;

/** The lowest face over a place across the car; undefined where nothing is. */
export function lowestOver(parts: readonly CutPart[], y: number): number | undefined {
  const heights = parts.flatMap(({ loops }) =>
    loops.flatMap((loop) =>
      loop.flatMap((b, i) => {
        const a = loop[(i + loop.length - 1) % loop.length] ?? b;
        if (a.x < y === b.x < y) return [];
        return [a.y + ((b.y - a.y) * (y - a.x)) / (b.x - a.x)];
      }),
    ),
  );
  return heights.length === 0 ? undefined : Math.min(...heights);
}
