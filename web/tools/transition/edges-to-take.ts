import type { Project } from "../../../core/project/index.ts";
import { type NearestPoint, nearestOnChord, nearestOnLine } from "../nearest.ts";
import type { Scene, SceneEdge, SceneLine } from "../scene.ts";
import type { Place, ShownEdge, ToolContext } from "../types.ts";
import { edgeRefAt } from "./edge-ref-at.ts";

/** An edge by its line and id; the free edge of a wing by the outline of its plate and the wing's id. */
export type EdgeToTake = Pick<ShownEdge, "line" | "edgeId" | "hand">;

/** Every edge that a transition may begin or end at, in the order of the board; wings after the outlines. */
export function edgesToTake({ project, scene }: ToolContext): readonly EdgeToTake[] {
  const drawn = outlines(scene).flatMap(({ line, edges }) =>
    edges.map(({ edgeId }): EdgeToTake => ({ line, edgeId, hand: "right" })),
  );
  const wings = project.items.flatMap((item) =>
    item.kind === "plate" ? item.wings.map(({ id }) => wingEdge(item.id, id, "right")) : [],
  );
  return [...drawn, ...wings].filter((edge) => isTakeable(project, edge));
}

const wingEdge = (itemId: string, wingId: string, hand: EdgeToTake["hand"]): EdgeToTake => ({
  line: { of: "item", itemId },
  edgeId: wingId,
  hand,
});

/**
 * The edge under the pointer in plan; on the mirror image it is the image's. Of two on one spot a wing goes before the
 * edge that it is bent along, and an edge with nodes of its own before one that follows.
 */
export function edgeUnder(context: ToolContext, place: Place): EdgeToTake | undefined {
  if (place.view !== "plan") return undefined;
  const { project, scene, wingEdges } = context;
  const isImage = scene.mirrored && place.at[1] < 0;
  const hand = isImage ? "left" : "right";
  const here: Place = isImage ? { ...place, at: [place.at[0], -place.at[1]] } : place;
  const drawn = outlines(scene).flatMap((line) => {
    const found = nearestOnLine(line, here);
    if (!found) return [];
    return [near({ line: line.line, edgeId: found.edge.edgeId, hand }, found, rankOf(found.edge))];
  });
  const wings = wingEdges.map(({ itemId, wingId, from, to }) =>
    near(wingEdge(itemId, wingId, hand), nearestOnChord([from, to], here), -1),
  );
  return [...drawn, ...wings]
    .filter(({ edge, awayPx }) => awayPx <= here.reachPx && isTakeable(project, edge))
    .sort((a, b) => Math.round(a.awayPx) - Math.round(b.awayPx) || a.rank - b.rank)[0]?.edge;
}

const near = (edge: EdgeToTake, { awayPx }: Pick<NearestPoint, "awayPx">, rank: number) => ({
  edge,
  awayPx,
  rank,
});

const outlines = (scene: Scene): readonly SceneLine[] =>
  scene.lines.filter(
    ({ kind, broken }) => (kind === "section" || kind === "transition" || kind === "plate") && !broken,
  );

const rankOf = ({ kind }: SceneEdge): number => (kind === "derived" ? 2 : kind === "follow" ? 1 : 0);

const isTakeable = (project: Project, { line, edgeId, hand }: EdgeToTake): boolean =>
  line.of === "item" && edgeRefAt(project, { itemId: line.itemId, edgeId, hand }) !== undefined;
