import type { Project } from "../../../core/project/index.ts";
import { nearestOnLine } from "../nearest.ts";
import type { Scene, SceneEdge, SceneLine } from "../scene.ts";
import type { Place, ShownEdge } from "../types.ts";
import { edgeRefAt } from "./edge-ref-at.ts";

export type EdgeToTake = Pick<ShownEdge, "line" | "edgeId" | "hand">;

/** Every edge that a transition may begin or end at, in the order of the board. */
export const edgesToTake = (project: Project, scene: Scene): readonly EdgeToTake[] =>
  outlines(scene).flatMap((line) =>
    line.edges.flatMap(({ edgeId }) => {
      const edge = { line: line.line, edgeId, hand: "right" } as const;
      return isTakeable(project, edge) ? [edge] : [];
    }),
  );

/** The edge under the pointer in plan; on the mirror image it is the image's. One's own goes before a followed one. */
export function edgeUnder(project: Project, scene: Scene, place: Place): EdgeToTake | undefined {
  if (place.view !== "plan") return undefined;
  const isImage = scene.mirrored && place.at[1] < 0;
  const here: Place = isImage ? { ...place, at: [place.at[0], -place.at[1]] } : place;
  const near = outlines(scene).flatMap((line) => {
    const found = nearestOnLine(line, here);
    if (!found) return [];
    const { edgeId } = found.edge;
    const edge: EdgeToTake = { line: line.line, edgeId, hand: isImage ? "left" : "right" };
    return isTakeable(project, edge)
      ? [{ edge, away: Math.round(found.awayPx), rank: rankOf(found.edge) }]
      : [];
  });
  return near.sort((a, b) => a.away - b.away || a.rank - b.rank)[0]?.edge;
}

const outlines = (scene: Scene): readonly SceneLine[] =>
  scene.lines.filter(
    ({ kind, broken }) => (kind === "section" || kind === "transition" || kind === "plate") && !broken,
  );

const rankOf = ({ kind }: SceneEdge): number => (kind === "derived" ? 2 : kind === "follow" ? 1 : 0);

const isTakeable = (project: Project, { line, edgeId, hand }: EdgeToTake): boolean =>
  line.of === "item" && edgeRefAt(project, { itemId: line.itemId, edgeId, hand }) !== undefined;
