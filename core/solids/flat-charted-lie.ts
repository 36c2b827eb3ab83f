import type { FlatPoint } from "../foundation/index.ts";
import type { FenceSheet, SectionSheet } from "../surfaces/index.ts";
import type { FlatRimPoint } from "./rim-of-loop.ts";
import type { RimPoint, SheetLie, StationFrame } from "./types.ts";

/** What tells one sheet whose rulings all run across its flat from another. */
interface FlatCharted extends Pick<SheetLie, "stationsMm" | "spaceAt"> {
  readonly axesAt: (alongMm: number) => Pick<StationFrame, "alongU" | "alongV" | "normal">;
}

/** The lie of a sheet that is charted by its flat itself: `along` is u, `across` is v. */
export function flatChartedLie(
  { depths }: SectionSheet | FenceSheet,
  rims: readonly (readonly FlatRimPoint[])[],
  { stationsMm, spaceAt, axesAt }: FlatCharted,
): SheetLie {
  const vs = rims.flat().map((point) => point.at.v);
  const middleV = (Math.min(...vs) + Math.max(...vs)) / 2;
  return {
    rims: rims.map((rim) => rim.map(rimPoint)),
    stationsMm,
    lowerMm: depths.coreLowerMm,
    middleMm: depths.neutralMm,
    upperMm: depths.coreUpperMm,
    spaceAt,
    flatAt: ({ along, across }) => ({ u: along, v: across }),
    frameAt: (along) => ({
      place: spaceAt({ along, across: middleV }, HERE, depths.neutralMm),
      flat: { u: along, v: middleV },
      ...axesAt(along),
    }),
  };
}

const rimPoint = ({ at: { u, v }, offset }: FlatRimPoint): RimPoint => ({ along: u, across: v, offset });

/** No way beside a spot. */
const HERE: FlatPoint = { u: 0, v: 0 };
