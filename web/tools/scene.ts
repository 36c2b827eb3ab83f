import type { CurvePiece } from "../../core/curves/index.ts";
import { assertNever, type Vec2 } from "../../core/foundation/index.ts";
import type { LineRef } from "../../core/project/index.ts";
import type { DrawingView } from "./drawing-view.ts";

export { ownerKey } from "../../core/project/index.ts";

/** One smooth piece of a drawn edge with the points that are drawn and the edge's curve parameter at each. */
export interface Stretch {
  readonly piece: CurvePiece;
  readonly points: readonly Vec2[];
  readonly parameters: readonly number[];
}

/** One drawn edge, between two nodes in the order of the line. */
export interface SceneEdge {
  readonly edgeId: string;
  /** A followed edge is drawn where another line runs; a derived one has no nodes of its own to reshape it by. */
  readonly kind: "line" | "curve" | "follow" | "derived";
  readonly stretches: readonly Stretch[];
  /** The nodes at its ends, for a straight edge; its curve parameter counts between them. */
  readonly ends: readonly [Vec2, Vec2] | undefined;
  readonly name: string | undefined;
}

export interface SceneNode {
  readonly nodeId: string;
  readonly at: Vec2;
  /** A node between curves is drawn round, any other square, one with a radius as a ring. */
  readonly mark: "square" | "round" | "ring";
}

/** A line of the document as the board shows it: where it runs and what can be grabbed. */
export interface SceneLine {
  readonly line: LineRef;
  readonly view: DrawingView;
  readonly kind:
    | "section"
    | "fence"
    | "transition"
    | "plate"
    | "opening"
    | "profile"
    | "lower-edge"
    | "free-edge";
  readonly name: string;
  readonly closed: boolean;
  readonly edges: readonly SceneEdge[];
  readonly nodes: readonly SceneNode[];
  /** It lies on both sides of the centre line already: mirroring gives it no image. */
  readonly isWhole?: true;
  /** It could not be compiled; the edges are the bare chords between its nodes. */
  readonly broken: boolean;
}

export interface Scene {
  readonly mirrored: boolean;
  readonly lines: readonly SceneLine[];
}

/** The line in the scene that a reference names. */
export const findLine = (scene: Scene, line: LineRef): SceneLine | undefined =>
  scene.lines.find((other) => isSameLine(other.line, line));

export function isSameLine(one: LineRef, other: LineRef): boolean {
  return lineKey(one) === lineKey(other);
}

/** A text that stands for a line, for comparing and for keys. */
export function lineKey(line: LineRef): string {
  switch (line.of) {
    case "profile":
      return `profile/${line.profileId}`;
    case "opening":
      return `opening/${line.openingId}`;
    case "edge":
      return `edge/${line.itemId}/${line.side}/${line.view}`;
    case "item":
    case "lower-edge":
      return `${line.of}/${line.itemId}`;
    default:
      return assertNever(line);
  }
}

/** A free edge as the other view shows it; every other line is in one view only. */
export const inView = (line: LineRef, view: DrawingView): LineRef =>
  line.of === "edge" ? { ...line, view } : line;
