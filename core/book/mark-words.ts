import type { Strip } from "../cutting/index.ts";
import { formatMm } from "../foundation/index.ts";
import type { EdgeMark } from "../marking/index.ts";
import type { Part } from "../patterns/index.ts";
import { bevelFigure } from "./bevel-words.ts";
import { cornerPairs } from "./strip-drawing.ts";

/**
 * The marks along each edge of a strip in words, measured on the flat from the edge's first corner: those that meet the
 * neighbour's marks by their numbers, and the bevel at each wherever it changes.
 */
export function markWords(strip: Strip, part: Part, marks: readonly EdgeMark[]): readonly string[] {
  const pairs = cornerPairs(strip);
  const edges = strip.loops.flatMap((loop) => loop.edges);
  return edges.flatMap((edge, index) => {
    const own = marks.filter(({ edgeIndex }) => edgeIndex === index);
    if (own.length === 0) return [];
    const [from, to] = pairs[index] ?? [0, 0];
    const jointIds = [...new Set(own.flatMap(({ joint }) => joint?.id ?? []))];
    const title = jointIds.length > 0 ? `joint ${jointIds.join(", ")}` : edge.name;
    const sorted = [...own].sort((a, b) => a.fromCornerMm - b.fromCornerMm);
    let before = "";
    const words = sorted.map(({ joint, fromCornerMm, bevelRad }) => {
      const bevel = bevelFigure(bevelRad, part.kind) || "square";
      const isNew = bevel !== before;
      before = bevel;
      const number = joint === undefined ? "" : `${joint.label} at `;
      return `${number}${formatMm(fromCornerMm)}${isNew && !(bevel === "square" && joint && own.every((m) => bevelFigure(m.bevelRad, part.kind) === "")) ? ` (${bevel})` : ""}`;
    });
    return [`${from}–${to}, ${title}, from corner ${from}: ${words.join(", ")}.`];
  });
}
