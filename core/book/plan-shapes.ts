import type { Strip } from "../cutting/index.ts";
import type { FlatPoint, SpacePoint } from "../foundation/index.ts";
import { finishedLoops, type Part, partPlaces, polygonOfLoop } from "../patterns/index.ts";
import type { Design } from "./design.ts";

/** The loops of a part, a strip or a plate in space, on the drawn surface; a fence's are upright. */
export interface SpaceShape {
  readonly id: string;
  readonly partId: string;
  readonly kind: Part["kind"] | "plate";
  readonly hand: Part["hand"];
  readonly loops: readonly (readonly SpacePoint[])[];
}

/** Every part in space. */
export const partShapes = (design: Design): readonly SpaceShape[] =>
  design.parts.flatMap((part) =>
    shapeOf(design, part, { id: part.id, loops: finishedLoops(part).map(polygonOfLoop) }),
  );

/** Every strip in space. */
export const stripShapes = (design: Design): readonly SpaceShape[] =>
  design.strips.flatMap((strip: Strip) => {
    const part = design.parts.find((candidate) => candidate.id === strip.partId);
    return part === undefined
      ? []
      : shapeOf(design, part, { id: strip.id, loops: [strip.outlineMm, ...strip.holesMm] });
  });

/** Every plate in space, folded: its base and its wings on the air side. */
export const plateShapes = (design: Design): readonly SpaceShape[] =>
  design.plates.flatMap(({ parts, base, wings, zMm }) => {
    const loops = [
      ...base.map((loop) => loop.map((p) => ({ ...p, z: zMm }))),
      ...wings.map((wing) => wing.airFace),
    ];
    return parts.map(({ id, hand }): SpaceShape => {
      const shape: SpaceShape = { id, partId: id, kind: "plate", hand, loops };
      return hand === "left" ? turnedOver(shape) : shape;
    });
  });

/** The shape as it is seen from above when the tray lies upside down, front still to the left. */
export const turnedOver = (shape: SpaceShape): SpaceShape => ({
  ...shape,
  loops: shape.loops.map((loop) => loop.map((p) => ({ ...p, y: -p.y }))),
});

function shapeOf(
  design: Design,
  part: Part,
  flat: { readonly id: string; readonly loops: readonly (readonly FlatPoint[])[] },
): readonly SpaceShape[] {
  const place = partPlaces(design.sheets, part);
  if (place === undefined) return [];
  const loops = flat.loops.map((loop) => sparse(loop).map((p) => place(p, 0)));
  return [{ id: flat.id, partId: part.id, kind: part.kind, hand: part.hand, loops }];
}

/** Points of a small-scale picture: no nearer than this, and no chord longer than that, mm. */
const NEAREST_MM = 2;
const LONGEST_MM = 60;

/** A loop with few enough points for a picture, and enough where a long straight edge bends in space. */
function sparse(loop: readonly FlatPoint[]): readonly FlatPoint[] {
  const points: FlatPoint[] = [];
  loop.forEach((p, i) => {
    const before = points.at(-1);
    if (
      before !== undefined &&
      i < loop.length - 1 &&
      Math.hypot(p.u - before.u, p.v - before.v) < NEAREST_MM
    )
      return;
    if (before !== undefined) points.push(...between(before, p));
    points.push(p);
  });
  const [first, last] = [points[0], points.at(-1)];
  return first === undefined || last === undefined ? points : [...points, ...between(last, first)];
}

function between(a: FlatPoint, b: FlatPoint): readonly FlatPoint[] {
  const count = Math.floor(Math.hypot(b.u - a.u, b.v - a.v) / LONGEST_MM);
  return Array.from({ length: count }, (_, k) => {
    const t = (k + 1) / (count + 1);
    return { u: a.u + (b.u - a.u) * t, v: a.v + (b.v - a.v) * t };
  });
}
