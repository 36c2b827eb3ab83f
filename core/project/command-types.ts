import type { Vec2 } from "../foundation/index.ts";
import type { Motion } from "./motion.ts";
import type {
  EdgeRef,
  Fence,
  Item,
  LineRef,
  Note,
  Opening,
  PlanNode,
  Plate,
  Profile,
  Project,
  Section,
  SideNode,
  SpaceNode,
  ThingRef,
  Transition,
  Underlay,
} from "./schema.ts";

export type { LineRef } from "./schema.ts";

/** One thing of several: an item, opening or profile as a whole, or one node of a line. */
export interface Grip {
  readonly line: LineRef;
  readonly nodeId?: string;
}

/** A node of a line, and where it goes. */
export interface NodeMove {
  readonly line: LineRef;
  readonly nodeId: string;
  readonly to: Vec2;
}

/** New things with ids, numbers and names of their own. */
export interface Copies {
  readonly items: readonly Item[];
  readonly openings: readonly Opening[];
  readonly profiles: readonly Profile[];
}

/** The settings of a project that no item owns; a change replaces whole fields. */
export type Settings = Omit<
  Project,
  "format" | "version" | "id" | "profiles" | "items" | "openings" | "notes" | "underlays"
>;

/** What may be changed on a section or fence besides its nodes; `undefined` takes an optional field away. */
export type SectionChanges = {
  readonly [Key in "name" | "profileId" | "pivotYMm" | "headingRad" | "tiltRad" | "bends" | "core"]?:
    | Section[Key]
    | undefined;
};
export type FenceChanges = {
  readonly [Key in "name" | "lowerEdge" | "seat" | "standsFirst" | "bends" | "core" | "panel"]?:
    | Fence[Key]
    | undefined;
};
export type TransitionChanges = {
  readonly [Key in "name" | "first" | "second" | "rulings" | "coreSide" | "core"]?:
    | Transition[Key]
    | undefined;
};
export type PlateChanges = {
  readonly [Key in "name" | "zMm" | "metalId" | "thicknessMm" | "wings" | "bond"]?: Plate[Key] | undefined;
};
export type OpeningChanges = {
  readonly [Key in "name" | "outline" | "cut" | "itemId"]?: Opening[Key] | undefined;
};

export type NoteChanges = Partial<Omit<Note, "id">>;
export type UnderlayChanges = Partial<Omit<Underlay, "id" | "locked" | "hidden">>;

/** How a thing can stand on the board. */
export type Standing = "locked" | "unlocked" | "hidden" | "shown";

/** What may be changed on a node besides its place; `undefined` takes an optional field away. */
export type NodeChanges = {
  readonly [Key in "radiusMm" | "meets" | "tangentInRad" | "tangentOutRad" | "next" | "edgeName"]?:
    | PlanNode[Key]
    | undefined;
};

/**
 * Every edit of a document, as plain data. `applyCommand` gives the new document; ids of new things are
 * chosen by whoever makes the command, so that applying is pure.
 */
export type Command =
  | { readonly kind: "add-section"; readonly section: Section; readonly profile?: Profile }
  | { readonly kind: "add-fence"; readonly fence: Fence }
  | { readonly kind: "add-transition"; readonly transition: Transition }
  | { readonly kind: "add-plate"; readonly plate: Plate }
  | { readonly kind: "add-opening"; readonly opening: Opening }
  | { readonly kind: "add-profile"; readonly profile: Profile }
  | { readonly kind: "delete-item"; readonly itemId: string }
  | { readonly kind: "delete-opening"; readonly openingId: string }
  | { readonly kind: "delete-profile"; readonly profileId: string }
  | { readonly kind: "change-section"; readonly itemId: string; readonly changes: SectionChanges }
  | { readonly kind: "change-fence"; readonly itemId: string; readonly changes: FenceChanges }
  | { readonly kind: "change-transition"; readonly itemId: string; readonly changes: TransitionChanges }
  | { readonly kind: "change-plate"; readonly itemId: string; readonly changes: PlateChanges }
  | { readonly kind: "change-opening"; readonly openingId: string; readonly changes: OpeningChanges }
  /** The heights (and plan) of a transition's free edge as easing it found them. */
  | {
      readonly kind: "ease-edge";
      readonly itemId: string;
      readonly side: "first" | "second";
      readonly nodes: readonly SpaceNode[];
    }
  | { readonly kind: "rename-profile"; readonly profileId: string; readonly name: string }
  /** `to` is (x, y) in plan, (x, z) in the side view. A node of a fence's depths has (alongMm, depthMm), one of a free edge what the line's view shows. */
  | {
      readonly kind: "move-node";
      readonly line: LineRef;
      readonly nodeId: string;
      readonly to: readonly [number, number];
    }
  /** Several nodes moved at once; `to` as for one. */
  | { readonly kind: "move-nodes"; readonly moves: readonly NodeMove[] }
  | {
      readonly kind: "change-node";
      readonly line: LineRef;
      readonly nodeId: string;
      readonly changes: NodeChanges;
    }
  | { readonly kind: "append-node"; readonly line: LineRef; readonly node: PlanNode | SideNode | SpaceNode }
  /** Puts a node into the segment that leaves `afterNodeId`, at curve parameter t: the line keeps its shape. */
  | {
      readonly kind: "split-segment";
      readonly line: LineRef;
      readonly afterNodeId: string;
      readonly t: number;
      readonly newNodeId: string;
    }
  | { readonly kind: "delete-node"; readonly line: LineRef; readonly nodeId: string }
  | { readonly kind: "close-outline"; readonly itemId: string }
  /** Lets the segment that leaves `afterNodeId` follow an edge; its end nodes, and those between, give way to it. */
  | {
      readonly kind: "follow-edge";
      readonly itemId: string;
      readonly afterNodeId: string;
      readonly beforeNodeId: string;
      readonly edge: EdgeRef;
      readonly direction: "along" | "against";
      readonly newId: string;
    }
  /** Gives a following piece nodes of its own again, where it runs now. */
  | { readonly kind: "unfollow-edge"; readonly itemId: string; readonly followId: string }
  | { readonly kind: "add-note"; readonly note: Note }
  | { readonly kind: "change-note"; readonly noteId: string; readonly changes: NoteChanges }
  | { readonly kind: "delete-note"; readonly noteId: string }
  | { readonly kind: "add-underlay"; readonly underlay: Underlay }
  | { readonly kind: "change-underlay"; readonly underlayId: string; readonly changes: UnderlayChanges }
  | { readonly kind: "delete-underlay"; readonly underlayId: string }
  /** Locks, unlocks, hides or shows drawn things; nothing is made differently for it. */
  | { readonly kind: "set-standing"; readonly things: readonly ThingRef[]; readonly standing: Standing }
  /** Moves, turns, scales or mirrors things as wholes, or nodes. */
  | { readonly kind: "transform"; readonly grips: readonly Grip[]; readonly motion: Motion }
  /** Sets down copies that have ids of their own. */
  | { readonly kind: "add-copies"; readonly copies: Copies }
  /** Moves an outline or a fence's line to its parallel: outward, or outboard, where the distance is positive. */
  | { readonly kind: "offset-line"; readonly line: LineRef; readonly distanceMm: number }
  /** A fence at one node of it, or a section from node to node along a straight cut, made two. */
  | {
      readonly kind: "split-item";
      readonly itemId: string;
      readonly nodeIds: readonly string[];
      readonly half: { readonly id: string; readonly number: number; readonly name: string };
    }
  /** Two fences end to end, or two sections that share an edge, made one. */
  | { readonly kind: "join-items"; readonly firstId: string; readonly secondId: string }
  | { readonly kind: "change-settings"; readonly changes: Partial<Settings> };
