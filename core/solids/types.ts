import type { FlatPoint, SpacePoint } from "../foundation/index.ts";

/** A place of a sheet in the coordinates that its solid is meshed in: `along` from ruling to ruling, `across` on one; mm. */
export interface ChartSpot {
  readonly along: number;
  readonly across: number;
}

/**
 * A place of the middle of the foam, and where an edge is bevelled how far beside it the lower face ends, in the flat;
 * the upper face ends as far on its other side.
 */
export interface RimPoint extends ChartSpot {
  readonly offset: FlatPoint;
}

/** A corner of a rim: `isSharp` where the outline turns there. */
export type Rim = readonly RimPoint[];

/**
 * The inside of some rims as triangles. Every vertex lies on a station; triangles run counter-clockwise in
 * (along, across), and no vertex lies on the side of a triangle that does not have it.
 */
export interface RegionMesh {
  readonly stationsMm: readonly number[];
  readonly vertices: readonly RimPoint[];
  /** Of each vertex. */
  readonly stationOf: readonly number[];
  readonly triangles: readonly Triangle[];
}

export type Triangle = readonly [number, number, number];

/** The tangent plane on a ruling: a point of it in space and flat, and where the flat's u, v and its reader's side point. */
export interface StationFrame {
  readonly place: SpacePoint;
  readonly flat: FlatPoint;
  readonly alongU: SpacePoint;
  readonly alongV: SpacePoint;
  readonly normal: SpacePoint;
}

/** How a flat part, or one strip of it, lies in space. Depths are those of the sheet. */
export interface SheetLie {
  readonly rims: readonly Rim[];
  /** Where the mesh is to have a ruling, ascending. */
  readonly stationsMm: readonly number[];
  readonly lowerMm: number;
  readonly middleMm: number;
  readonly upperMm: number;
  /** A place in space, so far beside a spot in the flat. */
  readonly spaceAt: (spot: ChartSpot, offset: FlatPoint, depthMm: number) => SpacePoint;
  readonly flatAt: (spot: ChartSpot) => FlatPoint;
  readonly frameAt: (alongMm: number) => StationFrame;
}

/** What a solid needs to be bent back toward its flat pattern: all in the frames of its rulings. */
export interface SolidBend {
  /** Of each vertex: the ruling it lies on. */
  readonly stationOf: Uint16Array<ArrayBuffer>;
  /** Of each vertex, three each, from its ruling's place in the frame of the ruling: laid flat, and bent. */
  readonly flat: Float32Array<ArrayBuffer>;
  readonly bent: Float32Array<ArrayBuffer>;
  /** Of each ruling, nine each: the frame in space as rows (u, v, normal). */
  readonly frames: Float32Array<ArrayBuffer>;
  /** Of each ruling, three each: its place in space. */
  readonly places: Float32Array<ArrayBuffer>;
  /** Of each ruling, two each: its place on the flat pattern. */
  readonly flatPlaces: Float32Array<ArrayBuffer>;
  /** The ruling that stays where it is. */
  readonly heldStation: number;
}

/** A solid as triangles, closed; seen from outside they run counter-clockwise. Plain data and typed arrays. */
export interface Solid {
  /** That of its part, with a count behind it where a part is in several pieces. */
  readonly id: string;
  readonly partId: string;
  readonly itemId: string;
  readonly name: string;
  readonly kind: "section" | "fence" | "transition" | "plate" | "rib";
  /** Of ribs and boards: which set they belong to. */
  readonly stand?: "jig" | "cradle";
  /** Whether it is the image of the drawn one: y changes sign. */
  readonly isImage: boolean;
  /** x, y, z of each vertex, mm. */
  readonly positions: Float32Array<ArrayBuffer>;
  /** Three vertices a triangle. */
  readonly triangles: Uint32Array<ArrayBuffer>;
  /** Two vertices a line: the edges to be drawn. */
  readonly outline: Uint32Array<ArrayBuffer>;
  /** Two vertices a line: rulings that it is bent about, on both faces. */
  readonly rulings: Uint32Array<ArrayBuffer>;
  /** Middle of its box, mm. */
  readonly middle: SpacePoint;
  /** Where it goes when the tray is drawn apart, all the way, mm. */
  readonly apart: SpacePoint;
  /** Absent where it stays folded. */
  readonly bend?: SolidBend;
}
