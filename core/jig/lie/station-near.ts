import type { LieLine, LieStation } from "./types.ts";

/** The station of a line that lies nearest to a length along it. */
export const stationNear = ({ stations }: LieLine, alongMm: number): LieStation | undefined =>
  stations.reduce<LieStation | undefined>(
    (best, one) => (best && Math.abs(best.alongMm - alongMm) <= Math.abs(one.alongMm - alongMm) ? best : one),
    undefined,
  );
