import { COINCIDENT_POINTS_MM, type Vec2 } from "../../../core/foundation/index.ts";
import type { Command, LineRef, Profile, SideNode } from "../../../core/project/index.ts";
import { idsOf, newId } from "../new-id.ts";
import { findLine, type Scene } from "../scene.ts";

/** Where a segment is split when its front half becomes a new one: near enough to its start to leave its curve. */
const NEAR_START = 1e-3;

/**
 * The commands that put a node at a place into a profile: behind its rear, before its front, or into the segment
 * over that x. None when a node stands at that x already.
 */
export function extendProfile(
  profile: Profile,
  at: Vec2,
  segment: "line" | "curve",
  scene: Scene,
): { readonly commands: readonly Command[]; readonly nodeId: string } {
  const line: LineRef = { of: "profile", profileId: profile.id };
  const nodeId = newId("n", idsOf(profile.nodes));
  const first = profile.nodes[0];
  const last = profile.nodes.at(-1);
  const isTaken = profile.nodes.some((node) => Math.abs(node.x - at[0]) <= COINCIDENT_POINTS_MM);
  if (isTaken) return { commands: [], nodeId };
  if (!first || !last || at[0] > last.x) return { commands: behind(line, last, nodeId, at, segment), nodeId };
  if (at[0] < first.x) return { commands: before(line, first, nodeId, at, segment), nodeId: first.id };
  const place = segmentOver(profile, at[0], scene);
  if (!place) return { commands: [], nodeId };
  return {
    nodeId,
    commands: [
      { kind: "split-segment", line, afterNodeId: place.nodeId, t: place.t, newNodeId: nodeId },
      { kind: "move-node", line, nodeId, to: at },
    ],
  };
}

function behind(
  line: LineRef,
  last: SideNode | undefined,
  nodeId: string,
  at: Vec2,
  segment: "line" | "curve",
): readonly Command[] {
  const append: Command = {
    kind: "append-node",
    line,
    node: { kind: "node", id: nodeId, x: at[0], z: at[1], next: segment },
  };
  if (!last || last.next === segment) return [append];
  return [{ kind: "change-node", line, nodeId: last.id, changes: { next: segment } }, append];
}

/** A line grows at its rear only: so its first segment is split at its start, and the first node goes ahead. */
function before(
  line: LineRef,
  first: SideNode,
  newNodeId: string,
  at: Vec2,
  segment: "line" | "curve",
): readonly Command[] {
  return [
    { kind: "split-segment", line, afterNodeId: first.id, t: NEAR_START, newNodeId },
    { kind: "move-node", line, nodeId: newNodeId, to: [first.x, first.z] },
    { kind: "move-node", line, nodeId: first.id, to: at },
    { kind: "change-node", line, nodeId: first.id, changes: { next: segment } },
  ];
}

function segmentOver(
  profile: Profile,
  x: number,
  scene: Scene,
): { readonly nodeId: string; readonly t: number } | undefined {
  const index = profile.nodes.findIndex((node) => node.x > x);
  const from = profile.nodes[index - 1];
  const to = profile.nodes[index];
  if (!from || !to) return undefined;
  const straight = { nodeId: from.id, t: (x - from.x) / (to.x - from.x) };
  if (from.next === "line") return straight;
  const edge = findLine(scene, { of: "profile", profileId: profile.id })?.edges.find(
    (other) => other.edgeId === from.id,
  );
  const stretch = edge?.stretches[0];
  if (!stretch) return straight;
  const end = stretch.points.findIndex((point) => point[0] > x);
  const t = stretch.parameters[end];
  return t === undefined ? straight : { nodeId: from.id, t };
}
