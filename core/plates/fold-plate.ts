import type { Curve } from "../curves/index.ts";
import { at, ON_CENTRE_LINE_MM, type Problem } from "../foundation/index.ts";
import { type Metal, metalOf, nameOfItem, type Plate, type Project } from "../project/index.ts";
import { baseLoops } from "./base-loops.ts";
import type { DrawnWing } from "./course.ts";
import { flatPart } from "./flat-part.ts";
import { foldWing } from "./fold-wing.ts";
import { foldingOrder } from "./folding-order.ts";
import { mirrorPlatePart } from "./mirror-plate-part.ts";
import { overlapInFlat } from "./overlap-in-flat.ts";
import { placeWings } from "./place-wings.ts";
import { baseOutline, plateAreas } from "./plate-areas.ts";
import type { BaseEdge, FoldedPlate, FoldedWing, PlacedWing, PlateLoop, PlatePart } from "./types.ts";
import { wingCollision } from "./wing-collisions.ts";
import { wingEdges } from "./wing-edges.ts";
import { wingLoop } from "./wing-loop.ts";
import { wingOwner } from "./wing-owner.ts";

/** A folded plate, absent where its metal is unknown, and everything that is wrong with it. */
export interface PlateOutcome {
  readonly plate?: FoldedPlate;
  readonly problems: readonly Problem[];
}

/**
 * Unfolds a plate onto the flat and folds it up in space. `outline` is the base as drawn, on the air side, closed and
 * counter-clockwise. Seen from the upper face the flat lies where the base is drawn: u is x, v is y; each wing lies
 * beyond its bend. A base that touches the centre line of a mirrored tray is whole, else it is made on both hands. A
 * wing that cannot be made is left out and named: wing-… problems, wings-collide, plate-overlaps-itself; else
 * unknown-reference.
 */
export function foldPlate(project: Project, plate: Plate, outline: Curve): PlateOutcome {
  const metal = metalOf(project, plate.metalId);
  if (!metal) {
    const owner = { name: nameOfItem(plate), place: { itemId: plate.id } };
    return { problems: [{ ...owner, kind: "unknown-reference", field: "metal", missingId: plate.metalId }] };
  }
  const isMirrored = project.symmetry === "mirrored";
  const { loops, isJoined } = baseLoops(outline, drawnOn(plate), isMirrored);
  const drawn = placeWings(plate, loops, metal);
  const problems = [...drawn.problems];
  let left = drawn.wings;
  for (;;) {
    const onHands = isMirrored && !isJoined;
    const tried = tryWings(plate, loops, left, onHands);
    if (tried.ok) {
      return { plate: describe(plate, metal, loops, tried.made, onHands), problems };
    }
    problems.push(tried.problem);
    left = left.filter(({ wingId }) => wingId !== tried.withoutWingId);
  }
}

const drawnOn = ({ outline, wings }: Plate) => ({
  typedNames: Object.fromEntries(outline.elements.map(({ id, edgeName }) => [id, edgeName ?? ""])),
  wingEdgeIds: new Set(wings.map(({ edgeId }) => edgeId)),
});

/** The flat loops of a plate with its wings placed, and the wings folded. */
interface MadeWings {
  readonly loops: readonly PlateLoop[];
  readonly placed: readonly PlacedWing[];
  readonly folded: readonly FoldedWing[];
}

type TriedWings =
  | { readonly ok: true; readonly made: MadeWings }
  | { readonly ok: false; readonly problem: Problem; readonly withoutWingId: string };

/** Makes the plate with all its wings, or names the one to leave out. */
function tryWings(
  plate: Plate,
  base: readonly (readonly BaseEdge[])[],
  wings: readonly DrawnWing[],
  onHands: boolean,
): TriedWings {
  const loops: PlateLoop[] = [];
  const placed: PlacedWing[] = [];
  for (const [i, loop] of base.entries()) {
    const made = wingLoop(
      loop,
      wings.filter(({ loopIndex }) => loopIndex === i),
    );
    if (!made.ok) {
      const { wing, kind, other } = made.trouble;
      return without(plate, wing.wingId, troubleOf(kind, other?.name));
    }
    loops.push(made.value.loop);
    placed.push(...made.value.wings);
  }
  const flat = overlapInFlat(loops);
  if (flat) {
    const wing = placed.find(({ id }) => id === flat.placedWingId);
    if (wing)
      return without(plate, wing.wingId, { kind: "plate-overlaps-itself", otherName: flat.otherName });
  }
  placed.sort((a, b) => orderOf(plate, a.wingId) - orderOf(plate, b.wingId));
  const folded = placed.map((wing) =>
    foldWing(wing, at(at(base, wing.loopIndex), wing.edgeIndex), plate.zMm),
  );
  const over = onHands ? folded.find((wing) => overCentreMm(wing) > ON_CENTRE_LINE_MM) : undefined;
  if (over) {
    return without(plate, over.wingId, {
      kind: "wings-collide",
      otherName: "its own image",
      overlapMm: 2 * overCentreMm(over),
    });
  }
  const collision = wingCollision(folded);
  if (!collision) return { ok: true, made: { loops, placed, folded } };
  const [first, second] = collision.wings;
  const isLater = orderOf(plate, second.wingId) >= orderOf(plate, first.wingId);
  const [kept, gone] = isLater ? [first, second] : [second, first];
  const { overlapMm } = collision;
  return without(plate, gone.wingId, { kind: "wings-collide", otherName: kept.name, overlapMm });
}

/** How far a wing reaches over the centre line, where the plate of the other hand lies. */
const overCentreMm = ({ airFace, upperFace, bend }: FoldedWing): number =>
  -Math.min(
    ...[...airFace, ...upperFace, ...bend.flatMap(({ air, upper }) => [...air, ...upper])].map(({ y }) => y),
  );

const orderOf = (plate: Plate, wingId: string): number => plate.wings.findIndex(({ id }) => id === wingId);

type WingProblem =
  | { readonly kind: "wing-relief-does-not-fit" }
  | { readonly kind: "wing-without-width"; readonly at: "bend" | "free edge" }
  | { readonly kind: "plate-overlaps-itself"; readonly otherName: string }
  | { readonly kind: "wings-collide"; readonly otherName: string; readonly overlapMm: number };

function troubleOf(
  kind: "no room" | "no width" | "no free edge" | "overlap",
  otherName = "another wing",
): WingProblem {
  switch (kind) {
    case "no room":
      return { kind: "wing-relief-does-not-fit" };
    case "no width":
      return { kind: "wing-without-width", at: "bend" };
    case "no free edge":
      return { kind: "wing-without-width", at: "free edge" };
    case "overlap":
      return { kind: "plate-overlaps-itself", otherName };
  }
}

const without = (plate: Plate, wingId: string, problem: WingProblem): TriedWings => ({
  ok: false,
  problem: { ...wingOwner(plate, wingId), ...problem },
  withoutWingId: wingId,
});

function describe(
  plate: Plate,
  metal: Metal,
  base: readonly (readonly BaseEdge[])[],
  { loops, placed, folded }: MadeWings,
  onHands: boolean,
): FoldedPlate {
  const id = `P${plate.number}`;
  const edgeOf = (wing: PlacedWing) => at(at(base, wing.loopIndex), wing.edgeIndex);
  const right: PlatePart = flatPart(
    onHands ? `${id}R` : id,
    onHands ? "right" : "whole",
    loops,
    placed,
    edgeOf,
  );
  const areas = plateAreas(loops, placed);
  return {
    id,
    itemId: plate.id,
    name: nameOfItem(plate),
    metalId: metal.id,
    metalName: metal.name,
    thicknessMm: plate.thicknessMm,
    zMm: plate.zMm,
    parts: onHands ? [right, mirrorPlatePart(right, `${id}L`)] : [right],
    base: loops.map(baseOutline),
    wings: folded,
    wingEdges: wingEdges(folded, placed),
    folding: foldingOrder(right.bends, folded),
    ...areas,
    massKg: areas.flatAreaMm2 * plate.thicknessMm * metal.densityKgPerM3 * CUBIC_METRES_PER_MM3,
  };
}

const CUBIC_METRES_PER_MM3 = 1e-9;
