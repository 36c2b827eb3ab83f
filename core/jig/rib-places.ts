import { at } from "../foundation/index.ts";
import type { RibPlaces } from "../project/index.ts";
import type { JigGround } from "./jig-ground.ts";
import type { RestingFace } from "./resting-face.ts";

/** The first and the last rib stand this far inside the tray's ends, mm (common practice). */
const INSIDE_END_MM = 25;
/** A batten sags most in its end spans: their pitch is 0.8 of the others' (continuous beam, equal sag). */
const END_PITCH = 0.8;
/** Closer than this no hand reaches between, and odd settings make thousands of ribs, mm. */
const LEAST_SPACING_MM = 40;
const DEFAULT_SPACING_MM = 300;
const MOST_RIBS = 200;

/** A rib before its top is known. */
export interface RibPlace {
  readonly id: string;
  readonly runs: "across" | "along";
  readonly atMm: number;
  /** Past the trim line of a bent edge: it holds foam that is trimmed off. */
  readonly isOutboard: boolean;
}

/**
 * Where ribs stand: across at x (A1, A2 … from the front), along at y (L1R, L1L … from the centre line outward;
 * L1, L2 … from the left without mirroring). Spaced ribs stand 25 mm inside the tray's ends, on whole
 * millimetres, at pitches no longer than the spacing and 0.8 of that at the ends.
 */
export function ribPlaces(project: JigGround, { least, most }: RestingFace): RibPlace[] {
  const across = placesWithin(project.jig.across, least.x, most.x).map(
    (atMm, i): RibPlace => ({ id: `A${i + 1}`, runs: "across", atMm, isOutboard: false }),
  );
  const isMirrored = project.symmetry === "mirrored";
  const halfMm = Math.max(Math.abs(least.y), Math.abs(most.y));
  const alongMm = isMirrored
    ? mirroredPlaces(project.jig.along, halfMm)
    : placesWithin(project.jig.along, least.y, most.y);
  return [...across, ...(isMirrored ? mirroredNames(alongMm) : plainNames(alongMm))];
}

/** Automatic places are typed ones by now: they are found before the jig is built. */
function placesWithin(places: RibPlaces, fromMm: number, toMm: number): number[] {
  if (places.kind === "none" || places.kind === "automatic") return [];
  return places.kind === "typed" ? ascending(places.atMm) : spaced(places.spacingMm, fromMm, toMm);
}

/** Right-hand places, 0 included; the left ones are their images. */
function mirroredPlaces(places: RibPlaces, halfMm: number): number[] {
  if (places.kind === "none" || places.kind === "automatic") return [];
  if (places.kind === "typed") return ascending(places.atMm.map(Math.abs));
  return spaced(places.spacingMm, -halfMm, halfMm).filter((yMm) => yMm >= 0);
}

function ascending(typedMm: readonly number[]): number[] {
  const sorted = typedMm.filter(Number.isFinite).sort((a, b) => a - b);
  return sorted.filter((atMm, i) => i === 0 || atMm - at(sorted, i - 1) > 0.5).slice(0, MOST_RIBS);
}

function spaced(spacingMm: number, fromMm: number, toMm: number): number[] {
  const firstMm = fromMm + INSIDE_END_MM;
  const lengthMm = toMm - INSIDE_END_MM - firstMm;
  if (!(lengthMm > 0)) return [(fromMm + toMm) / 2];
  const longestMm = Number.isFinite(spacingMm) ? Math.max(spacingMm, LEAST_SPACING_MM) : DEFAULT_SPACING_MM;
  const lost = 2 * (1 - END_PITCH);
  const bays = Math.min(MOST_RIBS, Math.max(1, Math.ceil(lengthMm / longestMm + lost - 1e-9)));
  const pitchMm = bays === 1 ? lengthMm : lengthMm / (bays - lost);
  const middleMm = (fromMm + toMm) / 2;
  return Array.from({ length: bays + 1 }, (_, i) => {
    const fromEnd = Math.min(i, bays - i);
    const offMm = fromEnd === 0 ? 0 : pitchMm * (fromEnd - 1 + END_PITCH);
    const raw = i <= bays - i ? firstMm + offMm : firstMm + lengthMm - offMm;
    return middleMm + Math.sign(raw - middleMm) * Math.floor(Math.abs(raw - middleMm));
  });
}

const plainNames = (atMm: readonly number[]): RibPlace[] =>
  atMm.map((y, i) => ({ id: `L${i + 1}`, runs: "along", atMm: y, isOutboard: false }));

function mirroredNames(rightMm: readonly number[]): RibPlace[] {
  const place = { runs: "along" as const, isOutboard: false };
  return rightMm.flatMap((yMm, i): RibPlace[] => {
    const id = `L${i + 1}`;
    if (yMm < 0.5) return [{ id, ...place, atMm: 0 }];
    return [
      { id: `${id}R`, ...place, atMm: yMm },
      { id: `${id}L`, ...place, atMm: -yMm },
    ];
  });
}
