import { formatMm, formatNumber } from "../foundation/index.ts";
import type { LaidZone, SkinFace } from "./types.ts";

/** A zone in figures, as it stands in tables. */
export function zoneRow(zone: LaidZone): {
  readonly name: string;
  readonly field: string;
  readonly plies: string;
  readonly step: string;
  readonly area: string;
  readonly adds: string;
  readonly all: string;
  readonly mass: string;
} {
  const { id, name, fieldId, plyMm2, stepMm, thicknessMm, totalThicknessMm, massKg } = zone;
  return {
    name: name === "" ? id : `${id}, ${name}`,
    field: fieldId,
    plies: `${plyMm2.length}`,
    step: formatMm(stepMm),
    area: formatNumber(plyMm2.reduce((sum, mm2) => sum + mm2, 0) / 1e6, 3),
    adds: formatNumber(thicknessMm, 2),
    all: formatNumber(totalThicknessMm, 2),
    mass: formatNumber(massKg * 1000, 0),
  };
}

/** What wants care at a zone: laps under it, and cured cloth that it reaches onto; none where it lies on whole wet cloth. */
export function zoneWords({ id, overLapsOf, onCured }: LaidZone): readonly string[] {
  const laps =
    overLapsOf.length === 0
      ? []
      : [
          `Under ${id} pieces of ply ${overLapsOf.join(" and ")} lap: there was no room to move the seam. Press it down well before the reinforcement comes on it.`,
        ];
  const cured =
    onCured.length === 0
      ? []
      : [
          `${id} reaches onto ${onCured.join(", ")}, which an earlier session laid: peel ply down there, strip it and abrade before ${id} is laid.`,
        ];
  return [...laps, ...cured];
}

/** What a cloth of a face or of its zones is called. */
export const clothNameOn = ({ plies, zones }: SkinFace, clothId: string): string =>
  [...plies, ...zones].find((one) => one.clothId === clothId)?.clothName ?? clothId;
