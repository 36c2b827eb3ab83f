import { roundTo } from "../foundation/index.ts";
import type { FollowPiece, PlanNode, SideNode } from "../project/index.ts";

/** How finely a starter places what it draws, in decimals of a mm; so that its numbers are fit to be typed over. */
const DECIMALS = 2;

/** A length as a starter writes it into the document, mm. */
export const settled = (lengthMm: number): number => roundTo(lengthMm, DECIMALS);

/** A node in plan with a straight edge behind it, mm. */
export const planNode = (
  id: string,
  [x, y]: readonly [number, number],
  more: Partial<PlanNode> = {},
): PlanNode => ({
  kind: "node",
  id,
  x: settled(x),
  y: settled(y),
  next: "line",
  ...more,
});

/** A node in the side view with a straight line behind it, mm. */
export const sideNode = (
  id: string,
  [x, z]: readonly [number, number],
  more: Partial<SideNode> = {},
): SideNode => ({
  kind: "node",
  id,
  x: settled(x),
  z: settled(z),
  next: "line",
  ...more,
});

/** A piece of outline that is the stretch of another item's edge, run in that outline's own direction reversed. */
export const followAgainst = (
  id: string,
  [itemId, fromNodeId, toNodeId]: readonly [string, string, string],
  edgeName: string,
): FollowPiece => ({
  kind: "follow",
  id,
  edge: { itemId, fromNodeId, toNodeId, hand: "right" },
  direction: "against",
  next: "line",
  edgeName,
});
