import type { Rib } from "../../../core/jig/index.ts";

/** Places of ribs nearer to each other than this are one rib in pieces, or its image, mm. */
const ONE_PLACE_MM = 0.5;

/** The typed places of all ribs that run as one of them does, with that one moved; what stands on both hands is told once. */
export function placesWithMoved(ribs: readonly Rib[], moved: Rib, toMm: number): readonly number[] {
  const isSame = ({ runs, atMm }: Rib) => runs === moved.runs && Math.abs(atMm - moved.atMm) < ONE_PLACE_MM;
  const isImage = ({ runs, atMm }: Rib) =>
    runs === "along" && runs === moved.runs && Math.abs(atMm + moved.atMm) < ONE_PLACE_MM;
  const others = ribs.filter(
    (rib) => rib.runs === moved.runs && !rib.isOutboard && !isSame(rib) && !isImage(rib),
  );
  const places = [...others.map(({ atMm }) => atMm), toMm].map((mm) =>
    moved.runs === "along" ? Math.abs(mm) : mm,
  );
  return [...new Set(places)].sort((a, b) => a - b);
}
