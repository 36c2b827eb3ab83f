import type { BendFace } from "../bending/index.ts";
import type { FlatPoint, SpacePoint } from "../foundation/index.ts";
import type { Joint } from "../joints/index.ts";
import { type FlatEdge, faceDevelopment, finishedLoops, type Part, partPlaces } from "../patterns/index.ts";
import type { Sheet } from "../surfaces/index.ts";
import { footOf } from "./place-in-flat.ts";
import { type Area, bandAlong, evenLine, grown, islandsOf, subtract, thinned, unite } from "./polygons.ts";
import type { SkinFaceName } from "./types.ts";

/** An edge of a face, on the face laid flat. */
export interface FaceEdge {
  readonly edgeId: string;
  readonly name: string;
  readonly role: FlatEdge["role"];
  readonly line: readonly FlatPoint[];
  /** The same points in the car, on the drawn surface; of joints only. */
  readonly space: readonly SpacePoint[];
}

/** A face of a part as cloth comes onto it: laid flat, without what fences cover that stand on it. */
export interface FaceRegion {
  readonly part: Part;
  readonly face: SkinFaceName;
  readonly side: BendFace;
  readonly area: Area;
  /** The same without a hair along its border, so that cloth that runs over an edge is one with the cloth on the face. */
  readonly inner: Area;
  readonly edges: readonly FaceEdge[];
  /** Which way rearward runs on it, from +u toward +v. */
  readonly rearwardRad: number;
  /** A place of the part's own pattern on it. */
  readonly fromFlat: (flat: FlatPoint) => FlatPoint;
}

/** Cloth is cut to a millimetre: outlines are thinned to this, mm. */
const THIN_MM = 0.1;
const HAIR_MM = 0.2;
/** On a bend a straight of the pattern is a curve on the face: it is followed in steps, mm. */
const STEP_MM = 25;
/** Strips of a transition come to lie beside each other within this, mm. */
const TOUCHING_MM = 0.25;

/** The faces of every part: lower and upper of what lies, both sides of what stands. */
export function faceRegions(
  sheets: readonly Sheet[],
  parts: readonly Part[],
  joints: readonly Joint[],
): readonly FaceRegion[] {
  return parts.flatMap((part) => {
    const half = part.thicknessMm / 2;
    const region = (face: SkinFaceName, side: BendFace, awayMm: number) =>
      regionOf(sheets, part, { face, side, awayMm });
    if (part.kind === "fence")
      return [
        region("fence sides", "inboard face", part.hand === "left" ? half : -half),
        region("fence sides", "outboard face", part.hand === "left" ? -half : half),
      ];
    return [
      withoutFences(region("lower face", "lower face", -half), sheets, parts, joints),
      region("upper face", "upper face", half),
    ];
  });
}

interface Side {
  readonly face: SkinFaceName;
  readonly side: BendFace;
  readonly awayMm: number;
}

function regionOf(sheets: readonly Sheet[], part: Part, { face, side, awayMm }: Side): FaceRegion {
  const fromFlat = faceDevelopment(sheets, part, awayMm);
  const toSpace = partPlaces(sheets, part);
  const lines = finishedLoops(part).map(({ edges }) =>
    edges.map((edge) => {
      const even = evenLine(edge.points, THIN_MM / 2, STEP_MM);
      const space = edge.role === "joint" && toSpace ? even.map((flat) => toSpace(flat, 0)) : [];
      return { ...edge, line: even.map(fromFlat), space };
    }),
  );
  const mapped = lines.map((edges) => edges.flatMap(({ line }) => line.slice(0, -1)));
  const isDivided = part.kind === "transition" && mapped.length > 1;
  const whole = isDivided ? grown(unite(grown(mapped, TOUCHING_MM)), -TOUCHING_MM) : mapped;
  const area = islandsOf(thinned(unite(whole), THIN_MM)).flat();
  return {
    part,
    face,
    side,
    area,
    inner: grown(area, -HAIR_MM),
    edges: lines.flat().map(({ edgeId, name, role, line, space }) => ({ edgeId, name, role, line, space })),
    rearwardRad: rearwardOn(sheets, part),
    fromFlat,
  };
}

/** Which way the car's x runs over a part's flat, at its middle; along a fence it is u. */
function rearwardOn(sheets: readonly Sheet[], part: Part): number {
  const places = partPlaces(sheets, part);
  const corner = part.loops[0]?.edges[0]?.points[0];
  if (part.kind === "fence" || !places || !corner) return 0;
  const points = part.loops.flatMap(({ edges }) => edges.flatMap((edge) => edge.points));
  const mean = (of: (point: FlatPoint) => number) =>
    points.reduce((sum, p) => sum + of(p), 0) / points.length;
  const middle = { u: mean(({ u }) => u), v: mean(({ v }) => v) };
  const here = places(middle, 0);
  const alongU = places({ u: middle.u + 1, v: middle.v }, 0);
  const alongV = places({ u: middle.u, v: middle.v + 1 }, 0);
  return Math.atan2(alongV.x - here.x, alongU.x - here.x);
}

/** The face without the ground that fences on the bare core stand on. */
function withoutFences(
  region: FaceRegion,
  sheets: readonly Sheet[],
  parts: readonly Part[],
  joints: readonly Joint[],
): FaceRegion {
  const seats = joints.filter(
    ({ kind, partIds: [fenceId, partId] }) =>
      kind === "fence seat" && partId === region.part.id && isOnCore(fenceId, parts, sheets),
  );
  const feet = seats.flatMap(({ partIds: [fenceId], stations }) => {
    const thicknessMm = parts.find(({ id }) => id === fenceId)?.thicknessMm ?? 0;
    const line = footOf(
      sheets,
      region.part,
      stations.map((station) => station.at),
    ).map(region.fromFlat);
    return bandAlong(line, thicknessMm / 2);
  });
  if (feet.length === 0) return region;
  const area = subtract(region.area, unite(feet));
  return { ...region, area, inner: grown(area, -HAIR_MM) };
}

/** Whether a fence stands on the bare core, glued before the skins. */
export function isOnCore(fenceId: string, parts: readonly Part[], sheets: readonly Sheet[]): boolean {
  const sheetId = parts.find(({ id }) => id === fenceId)?.sheetId;
  const sheet = sheets.find(({ id }) => id === sheetId);
  return sheet?.kind === "fence" && sheet.seatOn === "core";
}
