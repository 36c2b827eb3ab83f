import type { Vec2 } from "../../core/foundation/index.ts";
import type { Command, Grip, LineRef, Note, Project, ViewPoint } from "../../core/project/index.ts";
import type { Lengths } from "../lengths/index.ts";
import type { DrawingView } from "./drawing-view.ts";
import type { Scene } from "./scene.ts";
import type { SnapKind, SnapSettings } from "./snaps/snap-kinds.ts";

/** The tools of the drawing board, in the order of the rail. */
export const ToolNames = [
  "select",
  "section",
  "transition",
  "fence",
  "plate",
  "opening",
  "profile",
  "measure",
  "underlay",
  "note",
] as const;
export type ToolName = (typeof ToolNames)[number];

/**
 * What is chosen. A node or an edge belongs to the item's line in plan unless `line` names a fence's lower edge or a
 * transition's free edge; `view` says in which view that was taken hold of, the plan if it is absent.
 */
export type Selection =
  | {
      readonly kind: "item";
      readonly itemId: string;
      readonly nodeId?: string;
      readonly edgeId?: string;
      readonly line?: "item" | "lower-edge" | "first-edge" | "second-edge";
      readonly view?: DrawingView;
    }
  | {
      readonly kind: "opening";
      readonly openingId: string;
      readonly nodeId?: string;
      readonly edgeId?: string;
    }
  | {
      readonly kind: "profile";
      readonly profileId: string;
      readonly nodeId?: string;
      readonly edgeId?: string;
    }
  /** Two things or more; nodes of a line and things as a whole may stand side by side. */
  | { readonly kind: "several"; readonly grips: readonly Grip[] }
  | { readonly kind: "note"; readonly noteId: string }
  | { readonly kind: "underlay"; readonly underlayId: string }
  | { readonly kind: "part"; readonly partId: string }
  | { readonly kind: "rib"; readonly ribId: string };

/**
 * Where the pointer is. `mmPerPx` and `reachPx` say how near is near; `snaps` is false while snaps are held off;
 * `adds` while what is pressed joins what is chosen, or leaves it.
 */
export interface Place {
  readonly view: DrawingView;
  readonly at: Vec2;
  readonly mmPerPx: Vec2;
  readonly reachPx: number;
  readonly snaps: boolean;
  readonly adds?: true;
}

/** What lies under the pointer: a node, an edge (with the place on it), or the inside of an outline. */
export type Target =
  | { readonly on: "node"; readonly line: LineRef; readonly nodeId: string }
  | {
      readonly on: "edge";
      readonly line: LineRef;
      readonly edgeId: string;
      readonly t: number;
      /** It has no nodes of its own to be split or bent by. */
      readonly followed: boolean;
    }
  | { readonly on: "inside"; readonly line: LineRef };

/** A typed place: coordinates, or a length and direction from the last node. What is left out the pointer says. */
export interface TypedPlace {
  readonly first?: number;
  readonly second?: number;
  readonly lengthMm?: number;
  readonly directionRad?: number;
}

/** The profile of a section that is being drawn: a new flat one at a height, or one that is there. */
export type ProfileChoice =
  | { readonly kind: "new"; readonly zMm: number }
  | { readonly kind: "existing"; readonly profileId: string };

/** How an opening is drawn: corner by corner, or as a circle from its centre. */
export type OpeningShape = "outline" | "circle";

/** How an edge of a transition is given: an edge that is there, or one of its own that is drawn. */
export type EdgeWay = "take" | "draw";

/** What is done to a picture under the drawing: moved, scaled by two points of it, or levelled by a line. */
export type PictureTask = "move" | "scale" | "level";

/** Everything a tool can hear, from pointer, keys and the numeric strip. */
export type ToolEvent =
  | { readonly kind: "press"; readonly place: Place }
  | { readonly kind: "move"; readonly place: Place }
  | { readonly kind: "release"; readonly place: Place }
  | { readonly kind: "double"; readonly place: Place }
  | { readonly kind: "typed"; readonly typed: TypedPlace }
  /** Numbers stand in the strip and are not yet set: they hold, the pointer says the rest. */
  | { readonly kind: "typing"; readonly typed: TypedPlace }
  | { readonly kind: "choose-profile"; readonly choice: ProfileChoice }
  /** Undefined takes the height of what lies there. */
  | { readonly kind: "choose-height"; readonly zMm: number | undefined }
  | { readonly kind: "choose-shape"; readonly shape: OpeningShape }
  | { readonly kind: "choose-way"; readonly way: EdgeWay }
  | { readonly kind: "choose-task"; readonly task: PictureTask }
  /** The words of a note that has been begun. */
  | { readonly kind: "write"; readonly text: string }
  | { readonly kind: "finish" }
  | { readonly kind: "cancel" }
  | { readonly kind: "delete" }
  | { readonly kind: "choose-all" }
  | { readonly kind: "next-node"; readonly by: 1 | -1 }
  | { readonly kind: "nudge"; readonly byMm: Vec2 }
  | { readonly kind: "bend" }
  | { readonly kind: "insert" };

/** What a tool may look at. */
export interface ToolContext {
  readonly project: Project;
  readonly scene: Scene;
  readonly selection: Selection | undefined;
  readonly hairlineXMm: number;
  readonly snaps: SnapSettings;
  /** How lengths are said in prompts and snaps. */
  readonly lengths: Lengths;
  /** What a plain press does with the Choose tool: one thing, or several one by one. */
  readonly choosing?: "one" | "several";
  /** Height of the drawn surface over a place in plan, as the tray was last computed; undefined over none. */
  readonly heightOver: (at: Vec2) => number | undefined;
  /** Free edges of wings, as the tray was last computed. */
  readonly wingEdges: readonly WingEdgeInPlan[];
}

/** The free edge of a plate's wing as the plan sees it. */
export interface WingEdgeInPlan {
  readonly itemId: string;
  readonly wingId: string;
  readonly from: Vec2;
  readonly to: Vec2;
}

/** A mark of a snap on the board: its kind's own shape, turned along what it lies on, with a guide line to it. */
export interface SnapSign {
  readonly kind: SnapKind;
  readonly at: Vec2;
  /** Unit directions of the lines that meet there, mm. */
  readonly along?: readonly Vec2[];
  readonly guide?: readonly [Vec2, Vec2];
  /** The guide runs to the ruler of stations. */
  readonly isToRuler?: true;
}

/**
 * What a step gives back. All `commands` of a step are one undo step; while `gesture` is "open" the next steps
 * join it, "abandoned" takes the whole gesture back. `selection` null chooses nothing; absent leaves it.
 */
export interface Step<State> {
  readonly state: State;
  readonly commands: readonly Command[];
  readonly gesture?: "open" | "closed" | "abandoned";
  readonly selection?: Selection | null;
  readonly tool?: ToolName;
}

/** A place after snapping, why it is there in words, and the edge it lies on. */
export interface Snap {
  readonly at: Vec2;
  readonly reasons: readonly string[];
  /** What the board draws of the reasons. */
  readonly signs?: readonly SnapSign[];
  readonly edge?: { readonly line: LineRef; readonly edgeId: string };
  /** The snap closes the line that is being drawn. */
  readonly closes?: true;
}

/** A line that is being drawn and is not yet in the document. */
export interface Draft {
  readonly view: DrawingView;
  readonly nodes: readonly DraftNode[];
  /** Where the next node would go. */
  readonly pointer?: Vec2;
  readonly closes: boolean;
  /** It is a circle, and the nodes do not show. */
  readonly circle?: { readonly centre: Vec2; readonly radiusMm: number };
}

/** An edge that a tool shows as taken, or as what a click would take; on the mirror image where it says so. */
export interface ShownEdge {
  readonly line: LineRef;
  readonly edgeId: string;
  readonly hand: "right" | "left";
  readonly isTaken: boolean;
}

export interface DraftNode {
  readonly at: Vec2;
  readonly next: "line" | "curve";
}

/** What the board shows of a tool's state: one sentence, the draft, the snap, and what can be typed. */
export interface Sight {
  readonly prompt: string;
  readonly view?: DrawingView;
  readonly draft?: Draft;
  /** A line that has been drawn before the draft, and waits for it. */
  readonly drawnBefore?: Draft;
  readonly snap?: Snap;
  /** A box that is drawn round what is to be chosen. */
  readonly box?: { readonly view: DrawingView; readonly from: Vec2; readonly to: Vec2 };
  /** The numeric strip is shown; lengths and directions are measured from this node. */
  readonly typing?: {
    readonly view: DrawingView;
    readonly from?: Vec2;
    readonly pointer?: Vec2;
    /** Only the radius about `from` is asked for. */
    readonly radius?: true;
  };
  readonly nextSegment?: "line" | "curve";
  readonly profile?: ProfileChoice;
  /** Height above the ground of what is drawn next, as typed or as the tool takes it. */
  readonly zMm?: number;
  readonly shape?: OpeningShape;
  readonly way?: EdgeWay;
  readonly edges?: readonly ShownEdge[];
  /** What is being done to a picture; `pickedMm` apart are the two points that wait for their true distance. */
  readonly picture?: { readonly task: PictureTask; readonly pickedMm?: number };
  /** A note that has its pin and waits for its words. */
  readonly note?: Pick<Note, "view" | "pin" | "leader" | "widthMm"> & { readonly at: ViewPoint };
  /** What finishing does now, as a button; absent when it would do nothing. */
  readonly finish?: string;
}

/** A tool: a reducer over its own state. Every state answers "cancel". */
export interface Tool<State> {
  readonly start: State;
  readonly step: (state: State, event: ToolEvent, context: ToolContext) => Step<State>;
  readonly sight: (state: State, context: ToolContext) => Sight;
}
