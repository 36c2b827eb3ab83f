import type { LyingSheet } from "../surfaces/index.ts";
import type { JointGround, JointLines } from "./joint-ground.ts";

/** One drawn edge of one sheet, and the drawn edges that are to lie on it: by construction, or because the builder says so. */
export interface LinkedEdge {
  readonly sheet: LyingSheet;
  readonly edgeId: string;
  /** Whether this side is the one that refers to the other. */
  readonly isFollower: boolean;
  readonly others: readonly {
    readonly sheet: LyingSheet;
    readonly edgeId: string;
    /** The image of that edge across the centre line is meant. */
    readonly isImage?: boolean;
  }[];
}

interface Link {
  readonly follower: EdgesOfItem;
  readonly followed: EdgesOfItem;
}

interface EdgesOfItem {
  readonly itemId: string;
  readonly edgeIds: readonly string[];
  readonly hand?: "right" | "left";
}

/**
 * Every edge of a sheet that another's edge refers to, both ways: pieces of outlines that follow, edges of transitions
 * that are stretches of others, and edges that the builder joined. An edge on the left is that half's own where a joined
 * sheet has it, else the image of the right one.
 */
export function linkedEdges(
  project: JointGround,
  lines: JointLines,
  sheets: readonly LyingSheet[],
): readonly LinkedEdge[] {
  const found = new Map<string, LinkedEdge>();
  const note = (own: EdgesOfItem, other: EdgesOfItem, isFollower: boolean) => {
    const others = sheets
      .filter(({ itemId }) => itemId === other.itemId)
      .flatMap((sheet) =>
        other.edgeIds.map((edgeId) => ({
          sheet,
          edgeId: edgeOnHand(sheet, edgeId, other.hand),
          isImage: other.hand === "left" && sheet.hands.length === 2,
        })),
      );
    for (const sheet of sheets.filter(({ itemId }) => itemId === own.itemId)) {
      for (const drawnId of own.edgeIds) {
        const edgeId = edgeOnHand(sheet, drawnId, own.hand);
        const key = `${sheet.id}/${edgeId}`;
        const known = found.get(key);
        found.set(
          key,
          known ? { ...known, others: [...known.others, ...others] } : { sheet, edgeId, isFollower, others },
        );
      }
    }
  };
  for (const { follower, followed } of linksOf(project, lines)) {
    note(follower, followed, true);
    note(followed, follower, false);
  }
  return [...found.values()];
}

function linksOf(project: JointGround, lines: JointLines): readonly Link[] {
  const follows = Object.entries(lines.follows).map(([key, { itemId, edgeIds, hand }]): Link => {
    const [own = "", edgeId = ""] = key.split("/");
    return { follower: { itemId: own, edgeIds: [edgeId] }, followed: onHand(itemId, edgeIds, hand) };
  });
  const joined = project.joints.joined.map(
    ({ first, second }): Link => ({
      follower: { itemId: second.itemId, edgeIds: [second.edgeId] },
      followed: { itemId: first.itemId, edgeIds: [first.edgeId] },
    }),
  );
  return [...follows, ...transitionLinks(project, lines), ...joined];
}

/** The edges of a joined sheet's left half have ids of their own. */
const edgeOnHand = (sheet: LyingSheet, edgeId: string, hand: EdgesOfItem["hand"]): string =>
  hand === "left" && sheet.kind === "section" && sheet.hands.length === 1 ? `${edgeId}.left` : edgeId;

const onHand = (itemId: string, edgeIds: readonly string[], hand: "right" | "left"): EdgesOfItem => ({
  itemId,
  edgeIds,
  hand,
});

function transitionLinks(project: JointGround, lines: JointLines): readonly Link[] {
  return project.items.flatMap((item): readonly Link[] => {
    if (item.kind !== "transition") return [];
    const edges = lines.transitions[item.id];
    if (!edges) return [];
    return (["first", "second"] as const).flatMap((side): readonly Link[] => {
      const drawn = item[side];
      if (drawn.kind !== "stretch") return [];
      const follower = { itemId: item.id, edgeIds: [side] };
      const resolved = edges[side];
      const { itemId, hand, fromNodeId, toNodeId } = drawn.edge;
      const direct: readonly Link[] =
        resolved.kind === "stretch"
          ? [{ follower, followed: onHand(resolved.itemId, resolved.edgeIds, resolved.hand) }]
          : [];
      const isOnTransition = lines.transitions[itemId] !== undefined;
      const own = isOnTransition ? edgesBetween(fromNodeId, toNodeId) : [];
      return [...direct, ...(own.length > 0 ? [{ follower, followed: onHand(itemId, own, hand) }] : [])];
    });
  });
}

/** The edge of a transition between two of its nodes: a closing edge between corners of both, else the side itself. */
function edgesBetween(fromNodeId: string, toNodeId: string): readonly string[] {
  const pair = [fromNodeId, toNodeId].sort().join(" ");
  if (pair === "first-end second-end") return ["end"];
  if (pair === "first-start second-start") return ["start"];
  return ["first", "second"];
}
