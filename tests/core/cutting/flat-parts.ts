import { lengthOfEdgeMm } from "../../../core/cutting/index.ts";
import type { FlatEdge, FlatLoop, Part } from "../../../core/patterns/index.ts";

export type Corner = readonly [u: number, v: number];

/** A loop with one straight edge from each corner to the next: `e0`, `e1` … */
export function loopThrough(corners: readonly Corner[], prefix = "e"): FlatLoop {
  return {
    edges: corners.map(([u, v], i): FlatEdge => {
      const [nextU, nextV] = corners[(i + 1) % corners.length] ?? [u, v];
      return {
        edgeId: `${prefix}${i}`,
        name: `edge ${prefix}${i}`,
        role: "free",
        points: [
          { u, v },
          { u: nextU, v: nextV },
        ],
      };
    }),
  };
}

/** A loop of one smooth edge, as dense as patterns are written. */
export function smoothLoop(
  count: number,
  at: (turn: number) => Corner,
  direction: "outline" | "hole" = "outline",
): FlatLoop {
  const sign = direction === "outline" ? 1 : -1;
  const points = Array.from({ length: count + 1 }, (_, i) => {
    const [u, v] = at((sign * ((i % count) * 2 * Math.PI)) / count);
    return { u, v };
  });
  return { edges: [{ edgeId: "round", name: "round edge", role: "free", points }] };
}

export const rectangle = (lengthMm: number, widthMm: number): FlatLoop =>
  loopThrough([
    [0, 0],
    [lengthMm, 0],
    [lengthMm, widthMm],
    [0, widthMm],
  ]);

/** A flat part of the given loops. */
export function flatPart(loops: readonly FlatLoop[], changes: Partial<Part> = {}): Part {
  return {
    id: "S1R",
    sheetId: "S1",
    itemId: "section-1",
    name: "Floor",
    kind: "section",
    hand: "right",
    faceShown: "upper face",
    foamId: "xps",
    thicknessMm: 10,
    loops,
    edges: loops.flatMap((loop) =>
      loop.edges.map((edge) => {
        const lengthMm = lengthOfEdgeMm(edge);
        return {
          edgeId: edge.edgeId,
          name: edge.name,
          role: edge.role,
          drawnLengthMm: lengthMm,
          spaceLengthMm: lengthMm,
          flatLengthMm: lengthMm,
          bevelRad: [0, 0] as const,
          bevels: [],
        };
      }),
    ),
    spaceAreaMm2: 0,
    flatAreaMm2: 0,
    zones: [],
    maxStrain: 0,
    verdict: "flat",
    seat: [],
    rulings: [],
    ...changes,
  };
}
