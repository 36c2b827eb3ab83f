import {
  areaOfPieces,
  type Cell,
  cellsOf,
  evenGrid,
  type FieldGrid,
  inCell,
  type PieceLimits,
  piecesOf,
  shiftedGrid,
  shiftOfPly,
} from "./cut-region.ts";
import type { FaceRegion } from "./face-regions.ts";
import { clothGround, type JointLap, type LapSettings } from "./joint-laps.ts";
import { type Area, areaMm2, borderMm, overlapOf, reachAlong, unite } from "./polygons.ts";
import type { WorkedArea } from "./work-minutes.ts";
import type { ZoneCloth } from "./zone-cloth.ts";

/** A ply that is to be laid on a face. */
export interface PlyCloth {
  readonly warpRad: number;
  /** What the roll gives across, without selvedges, mm. */
  readonly acrossMm: number;
}

/** A field with the cloth of each ply as pieces. */
export interface CutField {
  readonly cell: Cell;
  readonly own: WorkedArea;
  readonly plies: readonly (readonly Area[])[];
  /** Zones of reinforcement that lie on it, whole or in part, the one it holds most of first. */
  readonly zones: readonly ZoneOnField[];
}

/** So much of a zone lies on a field, mm². */
export interface ZoneOnField {
  readonly zone: ZoneCloth;
  readonly onFieldMm2: number;
}

/** A face divided: the lines between its fields, and the fields. */
export interface CutFace {
  readonly region: FaceRegion;
  readonly grid: FieldGrid;
  readonly fields: readonly CutField[];
}

/** How cloth is cut: laps, the longest piece, and the foam's own joints, which no seam lies on. */
export interface CutSettings extends LapSettings {
  readonly longestMm: number;
  readonly foamSeams: FieldGrid;
  /** No seam lies on these where they can be moved aside. */
  readonly zones: readonly ZoneCloth[];
  /** Cloth beyond the edges of the face in a ply. */
  readonly beyondEdges: (ply: number) => Area;
}

/** A seam's lap keeps so far off a joint of the foam, mm (common practice). */
const OFF_FOAM_SEAM_MM = 10;
/** Narrower fields count slower, mm (common practice: a roller's stroke and two hands). */
const NARROW_MM = 130;
/** Fields of one face at most: a face that needs more has a slip in its numbers. */
const MOST_FIELDS = 24;

/**
 * A face divided into as few fields as each can be laid in one go (`isEnough`), with the cloth of every ply: its own part of
 * the face, lapping by half the overlap past each line between fields, over the joints as the laps say. The lines shift
 * from ply to ply. Among divisions into as many fields the one with the shortest lines is taken.
 */
export function layFace(
  region: FaceRegion,
  plies: readonly PlyCloth[],
  laps: readonly JointLap[],
  settings: CutSettings,
  isEnough: (field: CutField) => boolean,
): CutFace {
  const grounds = plies.map((_, ply) => {
    const { kept, flaps } = clothGround(region, laps, ply);
    const beyond = [...flaps, ...settings.beyondEdges(ply)];
    return beyond.length === 0 ? kept : unite(kept, beyond);
  });
  const cut = (counts: Counts): CutFace => cutAs(region, plies, grounds, settings, counts);
  let last: CutFace | undefined;
  for (let count = 1; count <= MOST_FIELDS; count++) {
    for (const counts of divisionsInto(region.area, count)) {
      last = cut(counts);
      if (last.fields.every(isEnough)) return last;
    }
  }
  return last ?? cut({ alongU: 1, alongV: 1 });
}

interface Counts {
  readonly alongU: number;
  readonly alongV: number;
}

/** The ways to divide an area into so many fields by lines along and across, the shortest lines first. */
function divisionsInto(area: Area, count: number): readonly Counts[] {
  const [u, v] = [reachAlong(area, 0), reachAlong(area, Math.PI / 2)];
  const [lengthMm, widthMm] = [u[1] - u[0], v[1] - v[0]];
  const linesMm = ({ alongU, alongV }: Counts) => (alongU - 1) * widthMm + (alongV - 1) * lengthMm;
  return Array.from({ length: count }, (_, i) => ({ alongU: i + 1, alongV: count / (i + 1) }))
    .filter(({ alongV }) => Number.isInteger(alongV))
    .toSorted((a, b) => linesMm(a) - linesMm(b));
}

function cutAs(
  region: FaceRegion,
  plies: readonly PlyCloth[],
  grounds: readonly Area[],
  settings: CutSettings,
  counts: Counts,
): CutFace {
  const { overlapMm, staggerMm, longestMm, foamSeams, zones } = settings;
  const shiftsMm = plies.map((_, ply) => shiftOfPly(ply, staggerMm));
  const clearMm = overlapMm / 2 + OFF_FOAM_SEAM_MM;
  const reinforced = zones.map(({ area }) => area);
  const grid = evenGrid(region.area, counts, foamSeams, { shiftsMm, clearMm, areas: reinforced });
  const fields = cellsOf(grid).flatMap((cell): readonly CutField[] => {
    const own = inCell(region.area, grid, cell, 0);
    const pieces = plies.map(({ warpRad, acrossMm }, ply) => {
      const shiftMm = shiftsMm[ply] ?? 0;
      const cloth = inCell(grounds[ply] ?? [], shiftedGrid(grid, shiftMm), cell, overlapMm / 2);
      const limits: PieceLimits = {
        acrossMm,
        alongMm: longestMm,
        overlapMm,
        keepOff: { shiftsMm: shiftsMm.map((mm) => mm - shiftMm), clearMm, areas: reinforced },
      };
      return piecesOf(cloth, region.rearwardRad + warpRad, limits, shiftMm);
    });
    const area = areaMm2(own);
    if (area <= 0 && areaOfPieces(pieces.flat()) <= 0) return [];
    return [
      {
        cell,
        own: { areaMm2: area, narrowMm2: isNarrow(own) ? area : 0 },
        plies: pieces,
        zones: zonesOn(own, zones),
      },
    ];
  });
  return { region, grid, fields };
}

const zonesOn = (own: Area, zones: readonly ZoneCloth[]): readonly ZoneOnField[] =>
  zones
    .map((zone) => ({ zone, onFieldMm2: areaMm2(overlapOf(zone.area, own)) }))
    .filter(({ onFieldMm2 }) => onFieldMm2 > LEAST_ON_FIELD_MM2);

/** A zone that lies on less of a field does not reach it, mm². */
const LEAST_ON_FIELD_MM2 = 100;

/** Whether an area is a narrow strip: the mean width of one is its area over half its border. */
export const isNarrow = (area: Area): boolean => 2 * areaMm2(area) < NARROW_MM * borderMm(area);
