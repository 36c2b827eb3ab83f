import type { FlatPoint, Problem } from "../foundation/index.ts";
import { finishedLoops, polygonOfLoop } from "../patterns/index.ts";
import { type Cloth, laminateOf, type Project, type ReinforcementZone } from "../project/index.ts";
import type { Sheet } from "../surfaces/index.ts";
import { piecesOf, shiftOfPly } from "./cut-region.ts";
import type { FaceRegion } from "./face-regions.ts";
import { inwardOf } from "./joint-laps.ts";
import type { FaceJoint } from "./joint-lines.ts";
import { footOf } from "./place-in-flat.ts";
import { type Area, areaMm2, bandBeside, isWithin, overlapOf, unite } from "./polygons.ts";

/** A zone on one part: what of the face it covers, and the cloth of each of its plies in pieces. */
export interface ZoneCloth {
  /** `Z1R`. */
  readonly id: string;
  readonly zone: ReinforcementZone;
  readonly cloth: Cloth;
  readonly region: FaceRegion;
  readonly area: Area;
  readonly plies: readonly (readonly Area[])[];
}

/** What zones lie on. */
export interface ZoneGround {
  readonly sheets: readonly Sheet[];
  /** Of lower and upper face. */
  readonly regions: readonly FaceRegion[];
  readonly joints: readonly FaceJoint[];
}

/**
 * The zones of a project as cloth on the faces, each also on the other hand. A spot or rectangle keeps its size on the face,
 * about the place of the part that lies over its plan; it ends at free edges and is carried straight on over joints.
 * Problems: zone-off-tray, zone-steps-away, unknown-reference.
 */
export function zoneCloth(
  ground: ZoneGround,
  project: Project,
): { readonly items: readonly ZoneCloth[]; readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const items = laminateOf(project).zones.flatMap((zone, index): readonly ZoneCloth[] => {
    const name = `Zone ${index + 1}${zone.name === "" ? "" : ` (${zone.name})`}`;
    const place = { setting: `laminate.zones.${index}` };
    const cloth = project.materials.cloths.find(({ id }) => id === zone.clothId);
    if (cloth === undefined) {
      problems.push({ kind: "unknown-reference", place, name, field: "cloth", missingId: zone.clothId });
      return [];
    }
    const seats = seatsOf(zone, ground, project);
    if (seats.length === 0) {
      problems.push(
        zone.shape.kind === "band" && !hasEdge(zone.shape, ground)
          ? {
              kind: "unknown-reference",
              place,
              name,
              field: "edge",
              missingId: `${zone.shape.itemId} ${zone.shape.edgeId}`,
            }
          : { kind: "zone-off-tray", place, name, face: zone.face },
      );
      return [];
    }
    const laid = seats.map((seat): ZoneCloth => {
      const areas = pliesOn(seat, zone);
      return {
        id: `Z${index + 1}${handOf(seat, seats)}`,
        zone,
        cloth,
        region: seat.region,
        area: areas[0] ?? [],
        plies: areas.map((area, ply) => inPieces(area, ply, { zone, cloth, region: seat.region }, project)),
      };
    });
    const fewest = Math.min(...laid.map(({ plies }) => plies.length));
    if (fewest < zone.plies)
      problems.push({ kind: "zone-steps-away", place, name, ply: fewest + 1, stepMm: zone.stepMm });
    return laid.filter(({ plies }) => plies.length > 0);
  });
  return { items, problems };
}

/** Where a zone lies on a part: its outline a number of steps in, and what cloth may lie on there. */
interface Seat {
  readonly region: FaceRegion;
  /** On which hand of the car, where one part is on both. */
  readonly sign: 1 | -1 | 0;
  readonly ground: Area;
  readonly shapeAt: (stepsInMm: number) => Area;
}

function seatsOf(zone: ReinforcementZone, ground: ZoneGround, project: Project): readonly Seat[] {
  const own = ground.regions.filter(({ face }) => face === `${zone.face} face`);
  if (zone.shape.kind === "band") return bandSeats(zone.shape, own);
  const { shape } = zone;
  const { x, y } = shape;
  const signs: readonly (1 | -1)[] = project.symmetry === "mirrored" && Math.abs(y) > 0.5 ? [1, -1] : [1];
  return signs.flatMap((sign) => {
    for (const region of own) {
      const [flat] = footOf(ground.sheets, region.part, [{ x, y: sign * y, z: 0 }]);
      if (!flat || !isWithin(finishedLoops(region.part).map(polygonOfLoop), flat)) continue;
      const around = region.fromFlat(flat);
      const shapeAt = (inMm: number) => shapeAround(shape, around, { inMm, region, sign });
      const reachMm = Math.hypot(...spanOf(shapeAt(0), around));
      return [
        {
          region,
          sign: signs.length > 1 ? sign : 0,
          ground: beyondJoints(region, ground.joints, reachMm),
          shapeAt,
        },
      ];
    }
    return [];
  });
}

/** How far an area reaches from a place at most, along u and v, mm. */
const spanOf = (area: Area, { u, v }: FlatPoint): readonly [number, number] => [
  Math.max(0, ...area.flat().map((p) => Math.abs(p.u - u))),
  Math.max(0, ...area.flat().map((p) => Math.abs(p.v - v))),
];

/** The face, and so far straight on beyond its joints. */
const beyondJoints = (region: FaceRegion, joints: readonly FaceJoint[], reachMm: number): Area =>
  unite(
    region.area,
    ...joints.flatMap(({ regions, lines }) =>
      regions.flatMap((one, side) => {
        const line = lines[side];
        return one === region && line ? [bandBeside(line, -inwardOf(line, region.area) * reachMm)] : [];
      }),
    ),
  );

/** Corners of what stands for a circle: it is off by a thousandth of its radius. */
const CORNERS = 72;

function shapeAround(
  shape: Exclude<ReinforcementZone["shape"], { readonly kind: "band" }>,
  { u, v }: FlatPoint,
  { inMm, region, sign }: { readonly inMm: number; readonly region: FaceRegion; readonly sign: 1 | -1 },
): Area {
  if (shape.kind === "spot") {
    const radiusMm = shape.radiusMm - inMm;
    if (radiusMm <= 0) return [];
    // As large as the circle itself.
    const cornerMm = radiusMm * Math.sqrt((2 * Math.PI) / CORNERS / Math.sin((2 * Math.PI) / CORNERS));
    return [
      Array.from({ length: CORNERS }, (_, k) => {
        const turn = (2 * Math.PI * k) / CORNERS;
        return { u: u + cornerMm * Math.cos(turn), v: v + cornerMm * Math.sin(turn) };
      }),
    ];
  }
  const [a, b] = [shape.lengthMm / 2 - inMm, shape.widthMm / 2 - inMm];
  if (a <= 0 || b <= 0) return [];
  const turnRad = region.rearwardRad + sign * (shape.turnRad ?? 0);
  const [c, s] = [Math.cos(turnRad), Math.sin(turnRad)];
  const corner = (along: number, across: number) => ({
    u: u + along * c - across * s,
    v: v + along * s + across * c,
  });
  return [[corner(-a, -b), corner(a, -b), corner(a, b), corner(-a, b)]];
}

type Band = Extract<ReinforcementZone["shape"], { readonly kind: "band" }>;

const isOf = ({ edgeId }: Band, own: string): boolean => own.replace(/\.left$/, "") === edgeId;

const hasEdge = (band: Band, { regions }: ZoneGround): boolean =>
  regions.some(
    ({ part, edges }) => part.itemId === band.itemId && edges.some((edge) => isOf(band, edge.edgeId)),
  );

function bandSeats(band: Band, regions: readonly FaceRegion[]): readonly Seat[] {
  return regions.flatMap((region): readonly Seat[] => {
    const edges =
      region.part.itemId === band.itemId ? region.edges.filter((edge) => isOf(band, edge.edgeId)) : [];
    if (edges.length === 0) return [];
    const shapeAt = (inMm: number): Area =>
      band.widthMm - inMm <= 0
        ? []
        : unite(
            ...edges.map(({ line }) => bandBeside(line, inwardOf(line, region.area) * (band.widthMm - inMm))),
          );
    return [{ region, sign: 0, ground: region.area, shapeAt }];
  });
}

const handOf = ({ region, sign }: Seat, seats: readonly Seat[]): string => {
  if (region.part.hand !== "whole") return region.part.hand === "right" ? "R" : "L";
  return seats.length < 2 || sign === 0 ? "" : sign > 0 ? "R" : "L";
};

/** Less cloth than this is no ply, mm². */
const LEAST_MM2 = 50;

/** The plies from the largest, as far as anything is left of them. */
function pliesOn({ ground, shapeAt }: Seat, { plies, stepMm }: ReinforcementZone): readonly Area[] {
  const areas: Area[] = [];
  for (let ply = 0; ply < plies; ply++) {
    const area = overlapOf(shapeAt(ply * stepMm), ground);
    if (areaMm2(area) < LEAST_MM2) break;
    areas.push(area);
  }
  return areas;
}

/** As it comes off the roll. */
function inPieces(
  area: Area,
  ply: number,
  { zone, cloth, region }: Pick<ZoneCloth, "zone" | "cloth" | "region">,
  project: Project,
): readonly Area[] {
  const { selvedgeMm, longestPatchMm, overlapMm } = laminateOf(project);
  const limits = {
    acrossMm: cloth.rollWidthMm - 2 * selvedgeMm,
    alongMm: longestPatchMm,
    overlapMm,
    keepOff: { shiftsMm: [0], clearMm: 0, areas: [] },
  };
  return piecesOf(area, region.rearwardRad + zone.warpRad, limits, shiftOfPly(ply, 2 * overlapMm));
}
