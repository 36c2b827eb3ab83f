import { pieceLengthMm, pointOnPiece, trimPiece } from "../curves/index.ts";
import {
  at,
  CHORD_ERROR_MM,
  type FlatPoint,
  ON_CENTRE_LINE_MM,
  OUTLINE_SHORTFALL,
} from "../foundation/index.ts";
import {
  type Development,
  pointOnRuled,
  type RuledPlace,
  type RuledSurface,
  rulingAt,
} from "../rulings/index.ts";
import { type ChordLimits, chordLimits } from "./chord-limits.ts";
import type { WallRun } from "./cut-ruled.ts";
import type { MetRun } from "./meet-on-ruled.ts";
import { type BorderRun, standsStill, stretchesOfRun } from "./ruled-border.ts";
import { ruledBevelRad, type WallFinder, type WallKind, walkedDirection } from "./ruled-walls.ts";
import { sampleChords } from "./sample-chords.ts";
import type { RegionEdge } from "./types.ts";

/** A strip of a transition, and how it is laid flat. */
export interface TracedStrip {
  readonly surface: RuledSurface;
  readonly development: Development;
  readonly strip: number;
  readonly isMirrored: boolean;
}

/** A run of a strip's border as region edges, laid flat by the strip's development; those without length are left out. */
export function traceBorder(
  { surface, development, strip, isMirrored }: TracedStrip,
  run: BorderRun,
): readonly RegionEdge[] {
  return stretchesOfRun(surface, run)
    .map((span): RegionEdge => {
      const edge = traceStraight(surface, development, { run, strip }, span);
      return span[0].t === span[1].t && standsStill(surface, span) ? { ...edge, isApex: true } : edge;
    })
    .filter(hasLength)
    .map((edge) => (isMirrored && liesOnCentre(surface, edge) ? { ...edge, role: "centre" } : edge));
}

const hasLength = ({ flat }: RegionEdge): boolean =>
  flat.some((point) => Math.hypot(point.u - at(flat, 0).u, point.v - at(flat, 0).v) > 1e-6);

function liesOnCentre(surface: RuledSurface, { points, role }: RegionEdge): boolean {
  if (role !== "free") return false;
  const isOn = ({ u, v }: FlatPoint) =>
    Math.abs(pointOnRuled(surface, { sMm: u, t: v }, 0).y) <= ON_CENTRE_LINE_MM;
  const [a, b] = [at(points, 0), at(points, -1)];
  return [...points, { u: (a.u + b.u) / 2, v: (a.v + b.v) / 2 }].every(isOn);
}

function traceStraight(
  surface: RuledSurface,
  development: Development,
  { run: { edgeId, name, role }, strip }: { readonly run: BorderRun; readonly strip: number },
  [from, to]: readonly [RuledPlace, RuledPlace],
): RegionEdge {
  const placeAt = (share: number): RuledPlace => ({
    sMm: from.sMm + (to.sMm - from.sMm) * share,
    t: from.t + (to.t - from.t) * share,
  });
  const sample = (share: number) => ({ share, flat: development.flatAt(placeAt(share)) });
  const samples =
    from.sMm === to.sMm
      ? [sample(0), sample(1)]
      : sampleChords(sample, ({ flat }) => flat, [0, 1], limitsOf(surface));
  return {
    edgeId,
    name,
    role,
    points: samples.map(({ share }) => {
      const { sMm, t } = placeAt(share);
      return { u: sMm, v: t };
    }),
    flat: samples.map(({ flat }) => flat),
    shares: samples.map(({ share }) => share),
    trace: { kind: "ruled", from, to, strip },
  };
}

/** As for any sheet: edges short by no more than OUTLINE_SHORTFALL, and the area by its share along both edges. */
function limitsOf(surface: RuledSurface): ChordLimits {
  const middle = rulingAt(surface, surface.lengthSMm / 2);
  const widthMm = Math.max(middle.lengthMm, 1);
  return {
    sagMm: Math.min(CHORD_ERROR_MM, 0.75 * OUTLINE_SHORTFALL * widthMm),
    turnRad: Math.min(0.05, Math.sqrt(24 * OUTLINE_SHORTFALL)),
  };
}

/** The limits of the walls among runs, so that these together leave out little of an area. */
export function wallLimits(
  loops: readonly (readonly MetRun[])[],
  areaMm2: number,
): (wall: WallRun) => ChordLimits {
  const stretchOf = ({ drawn, from, to }: WallRun) => ({
    ...drawn,
    piece: trimPiece(drawn.piece, Math.min(from, to), Math.max(from, to)),
  });
  const limits = chordLimits(
    loops.map((runs) => runs.flatMap(({ wall }) => (wall ? [stretchOf(wall)] : []))),
    areaMm2 / 2,
    "for cutting",
  );
  return (wall) => limits(stretchOf(wall));
}

/** A wall as a region edge; undefined where it leaves the sheet. */
export function traceWall(
  { surface, development, strip }: TracedStrip,
  { drawn, kind, from, to }: WallRun,
  limits: ChordLimits,
  finders: (kind: WallKind) => WallFinder,
): RegionEdge | undefined {
  const { piece } = drawn;
  const find = finders(kind);
  let isLost = false;
  const sample = (t: number) => {
    const [x, y] = pointOnPiece(piece, t);
    const place = find({ x, y });
    if (!place) isLost = true;
    const known = place ?? NOWHERE;
    return { t, place: known, flat: development.flatAt(known) };
  };
  if (pieceLengthMm(piece) === 0) return undefined;
  const samples = sampleChords(sample, ({ flat }) => flat, [from, to], limits);
  if (isLost) return undefined;
  const bevelAt = ({ t, place }: (typeof samples)[number]): number =>
    ruledBevelRad(surface, place, walkedDirection(piece, t, to > from));
  return {
    edgeId: drawn.edgeId,
    name: drawn.name,
    role: "free",
    ...(drawn.openingId !== undefined && { openingId: drawn.openingId }),
    points: samples.map(({ place }) => ({ u: place.sMm, v: place.t })),
    flat: samples.map(({ flat }) => flat),
    shares: samples.map(({ t }) => (t - from) / (to - from)),
    trace: { kind, piece, from, to, strip },
    ...(kind === "plumb" && { bevelsRad: samples.map(bevelAt) }),
  };
}

const NOWHERE: RuledPlace = { sMm: 0, t: 0 };
