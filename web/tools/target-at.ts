import { awayPx, isInside, nearestOnLine } from "./nearest.ts";
import type { Scene, SceneLine } from "./scene.ts";
import { ownerKey } from "./scene.ts";
import { lineOfSelection } from "./selected-line.ts";
import { chosenOwnersOf } from "./several.ts";
import type { Place, Selection, Target } from "./types.ts";

/**
 * What lies under the pointer: a node of the chosen line first, then any node, then the nearest edge, then the
 * inside of an outline (the smallest that holds the point). Undefined on bare paper.
 */
export function targetAt(place: Place, scene: Scene, selection: Selection | undefined): Target | undefined {
  const chosen = new Set(chosenOwnersOf(selection));
  const lines = scene.lines.filter((line) => line.view === place.view);
  const sorted = [...lines].sort((a, b) => rank(a, chosen) - rank(b, chosen));
  return nodeAt(place, lines, chosen) ?? edgeAt(place, sorted) ?? insideAt(place, lines);
}

/** Whose lines a selection of one thing chooses, as `ownerKey` tells it. */
export function chosenOwner(selection: Selection | undefined): string | undefined {
  const line = lineOfSelection(selection);
  return line && ownerKey(line);
}

const rank = (line: SceneLine, chosen: ReadonlySet<string>): number =>
  chosen.has(ownerKey(line.line)) ? 0 : 1;

/** A node of the chosen line goes before a nearer one of another, so that shared corners stay apart. */
function nodeAt(place: Place, lines: readonly SceneLine[], chosen: ReadonlySet<string>): Target | undefined {
  const near = lines.flatMap((line) =>
    line.nodes.flatMap((node) => {
      const away = awayPx(node.at, place.at, place.mmPerPx);
      return away <= place.reachPx ? [{ line, node, away, rank: rank(line, chosen) }] : [];
    }),
  );
  const best = near.sort((a, b) => a.rank - b.rank || a.away - b.away)[0];
  return best && { on: "node", line: best.line.line, nodeId: best.node.nodeId };
}

function edgeAt(place: Place, lines: readonly SceneLine[]): Target | undefined {
  for (const line of lines) {
    const here = nearestOnLine(line, place);
    if (here) {
      return {
        on: "edge",
        line: line.line,
        edgeId: here.edge.edgeId,
        t: here.t,
        followed: here.edge.kind === "follow" || here.edge.kind === "derived",
      };
    }
  }
  return undefined;
}

function insideAt(place: Place, lines: readonly SceneLine[]): Target | undefined {
  const around = lines.filter((line) => isInside(line, place.at));
  const smallest = [...around].sort((a, b) => boxArea(a) - boxArea(b))[0];
  return smallest && { on: "inside", line: smallest.line };
}

function boxArea(line: SceneLine): number {
  const points = line.edges.flatMap((edge) => edge.stretches.flatMap((stretch) => stretch.points));
  const xs = points.map((point) => point[0]);
  const ys = points.map((point) => point[1]);
  return (Math.max(...xs) - Math.min(...xs)) * (Math.max(...ys) - Math.min(...ys));
}
