import { at, type SpacePoint } from "../foundation/index.ts";
import type { FlatLoop, Part } from "../patterns/index.ts";
import type { FoldedPlate } from "../plates/index.ts";
import { fibreOf, type Sheet, type TransitionSheet } from "../surfaces/index.ts";
import type { FacetMesh } from "./facets.ts";
import { fenceLie } from "./fence-lie.ts";
import { plateBase } from "./plate-base.ts";
import { type FlatRimPoint, rimOfLoop } from "./rim-of-loop.ts";
import { sectionLie } from "./section-lie.ts";
import { type ThickMesh, thicken } from "./thicken.ts";
import { offStripMm, transitionLie } from "./transition-lie.ts";
import type { Solid, SolidBend } from "./types.ts";
import { wingSolid } from "./wing-solid.ts";

/** What the solids are made from. */
export interface MadeTray {
  readonly sheets: readonly Sheet[];
  readonly parts: readonly Part[];
  readonly plates: readonly FoldedPlate[];
}

/**
 * Every part of the tray as a solid in space, for looking: the bare foam between its two faces, without skins, and the
 * folded metal. Outlines are those of the flat patterns to a tenth of a mm, set-backs, openings and bevels among them; a
 * bevelled edge is straight from face to face, and where its bevel changes abruptly the corner is rounded off. Bends are
 * shown in steps of two degrees. A transition in several strips has a solid for each; a plate one for its base and one for
 * every wing with its bend.
 */
export function traySolids(tray: MadeTray): readonly Solid[] {
  const drawn = [...tray.sheets.flatMap((sheet) => sheetSolids(tray, sheet)), ...plateSolids(tray.plates)];
  const middle = middleOf(drawn);
  return drawn.map((solid) => {
    // The wings of a plate go where its base goes.
    const leader = solid.kind === "plate" ? drawn.find(({ id }) => id === solid.partId) : undefined;
    return { ...solid, apart: apartFrom(middle, leader ?? solid) };
  });
}

type PlacedSolid = Omit<Solid, "apart">;

function sheetSolids({ parts }: MadeTray, sheet: Sheet): readonly PlacedSolid[] {
  const own = parts.filter(({ sheetId }) => sheetId === sheet.id);
  const right = own.find(({ hand }) => hand !== "left");
  if (!right) return [];
  const meshes = meshesOf(sheet, right);
  return own.flatMap((part) =>
    meshes.map((mesh, i): PlacedSolid => {
      const isImage = part.hand === "left";
      return {
        id: i === 0 ? part.id : `${part.id}/${i + 1}`,
        partId: part.id,
        itemId: part.itemId,
        name: part.name,
        kind: part.kind,
        isImage,
        ...(isImage ? imageOf(mesh) : mesh),
        bend: mesh.bend,
      };
    }),
  );
}

function meshesOf(sheet: Sheet, part: Part): readonly ThickMesh[] {
  const rimsOf = (loops: readonly FlatLoop[]) =>
    loops.map((loop) => rimOfLoop(loop, part.edges, sheet.thicknessMm / 2));
  const { middleAt } = fibreOf(sheet, part.stretches);
  /** Along the middle of the foam, where a sheet lies in space. */
  const inMiddle = (rims: readonly (readonly FlatRimPoint[])[]) =>
    rims.map((rim) => rim.map(({ at: { u, v }, offset }) => ({ at: { u: middleAt(u), v }, offset })));
  switch (sheet.kind) {
    case "section":
      return [thicken(sectionLie(sheet, inMiddle(rimsOf(part.loops))))];
    case "fence":
      return [thicken(fenceLie(sheet, inMiddle(rimsOf(part.loops))))];
    case "transition":
      return loopsByStrip(sheet, part.loops).flatMap((loops, strip) =>
        loops.length === 0 ? [] : [thicken(transitionLie(sheet, strip, rimsOf(loops)))],
      );
  }
}

/** The loops that lie on each strip of a transition. */
function loopsByStrip(sheet: TransitionSheet, loops: readonly FlatLoop[]): readonly (readonly FlatLoop[])[] {
  if (sheet.strips.length === 1) return [loops];
  const stripOf = (loop: FlatLoop): number => {
    const corners = loop.edges.map(({ points }) => at(points, 0));
    const off = sheet.strips.map((_, strip) =>
      corners.reduce((sum, corner) => sum + offStripMm(sheet, strip, corner), 0),
    );
    return off.indexOf(Math.min(...off));
  };
  const strips = loops.map(stripOf);
  return sheet.strips.map((_, strip) => loops.filter((_loop, i) => strips[i] === strip));
}

/** The base of a plate, then every wing with its bend. */
const plateSolids = (plates: readonly FoldedPlate[]): readonly PlacedSolid[] =>
  plates.flatMap((plate) => {
    const meshes: readonly (FacetMesh & { readonly bend?: SolidBend })[] = [
      plateBase(plate),
      ...wingMeshes(plate),
    ];
    return plate.parts.flatMap(({ id, hand }) => {
      const isImage = hand === "left";
      const { itemId, name } = plate;
      const common = { partId: id, itemId, name, kind: "plate", isImage } as const;
      return meshes.map(
        (mesh, i): PlacedSolid => ({
          ...common,
          id: i === 0 ? id : `${id}/${i + 1}`,
          ...(isImage ? imageOf(mesh) : mesh),
          ...(mesh.bend && { bend: mesh.bend }),
        }),
      );
    });
  });

/** A wing bends as its line on the flat of the right (or whole) hand says. */
function wingMeshes({ parts, wings }: FoldedPlate): readonly (FacetMesh & { readonly bend?: SolidBend })[] {
  const bends = at(parts, 0).bends;
  return wings.flatMap((wing) => {
    const line = bends.find(({ id }) => id === wing.id);
    return line ? [wingSolid(wing, line.figures)] : [];
  });
}

/** The image across the centre line: y changes sign, and triangles are turned round. */
function imageOf({ positions, triangles, outline, rulings, middle }: FacetMesh): FacetMesh {
  return {
    positions: positions.map((value, i) => (i % 3 === 1 ? -value : value)),
    triangles: triangles.map((_, i) =>
      at([...triangles.subarray(i - (i % 3), i - (i % 3) + 3)], [0, 2, 1][i % 3] ?? 0),
    ),
    outline: outline.slice(),
    rulings: rulings.slice(),
    middle: { ...middle, y: -middle.y },
  };
}

function middleOf(solids: readonly PlacedSolid[]): SpacePoint {
  const mean = (pick: (p: SpacePoint) => number) =>
    solids.reduce((sum, { middle }) => sum + pick(middle), 0) / Math.max(1, solids.length);
  return { x: mean((p) => p.x), y: mean((p) => p.y), z: mean((p) => p.z) };
}

/** All the way apart, parts stand so many times farther from the tray's middle in plan. */
const APART_IN_PLAN = 0.6;
/** What stands under the sheets goes down so far, and what lies on top goes up, mm. */
const APART_DOWN_MM = { section: 0, transition: 0, fence: -220, plate: -380, rib: 0 } as const;

const apartFrom = (middle: SpacePoint, { middle: own, kind }: PlacedSolid): SpacePoint => ({
  x: (own.x - middle.x) * APART_IN_PLAN,
  y: (own.y - middle.y) * APART_IN_PLAN,
  z: APART_DOWN_MM[kind],
});
