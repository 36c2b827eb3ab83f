import { stepFor, wordGrid } from "../../lengths/index.ts";
import { LEAST_STRONG_PX } from "../stations.ts";
import type { Coordinate } from "./coordinate.ts";
import { inWholeSteps, reachBesideGrid } from "./grid-snap.ts";
import { ALIGN_PX, type SnapRequest } from "./snap-request.ts";

/** Onto the hairline, else onto a station that the ruler numbers. */
export function onStation(request: SnapRequest, x: number): Coordinate | undefined {
  const { place, context } = request;
  const { hairlineXMm, lengths } = context;
  if (Math.abs(x - hairlineXMm) <= ALIGN_PX * place.mmPerPx[0])
    return station(hairlineXMm, `hairline, station ${lengths.show(hairlineXMm)}`);
  const stepMm = stepFor(lengths.units, 1 / place.mmPerPx[0], LEAST_STRONG_PX);
  const numbered = inWholeSteps(x, stepMm);
  const isNear = Math.abs(x - numbered) <= reachBesideGrid(request, 0, ALIGN_PX);
  return isNear ? station(numbered, `station ${wordGrid(lengths, numbered)}`) : undefined;
}

const station = (value: number, reason: string): Coordinate => ({
  value: value === 0 ? 0 : value,
  reason,
  sign: (at) => ({ kind: "stations", at, isToRuler: true }),
});
