import type { Problem } from "../../core/foundation/index.ts";
import { findJoints, type Joint } from "../../core/joints/index.ts";
import { layParts, type Part, type PartEdge } from "../../core/patterns/index.ts";
import {
  checkDocument,
  type EdgeRef,
  emptyProject,
  type Fence,
  type FollowPiece,
  type Item,
  type PlanElement,
  type PlanNode,
  type Project,
  resolveLines,
  type Section,
  type SideNode,
  soundProject,
  type Transition,
  type TransitionEdge,
} from "../../core/project/index.ts";
import { buildSheets, type Sheet } from "../../core/surfaces/index.ts";

/** What a small tray differs in from the usual one. */
export interface TraySettings {
  readonly symmetry?: Project["symmetry"];
  readonly drawnFace?: Project["drawnFace"];
  readonly thicknessMm?: number;
  /** Nominal skin on both faces. */
  readonly skinMm?: number;
  /** Gap that the glue may fill: 0 has every fold mitred. */
  readonly gapLimitMm?: number;
  readonly glueGapMm?: number;
  /** Least radius of a cold bend as a multiple of the thickness. */
  readonly leastBendRatio?: number;
}

/** A project of the given profiles (by id) and items; not mirrored, air side drawn, 20 mm foam, skins of 0.8 mm. */
export function tray(
  profiles: Readonly<Record<string, readonly SideNode[]>>,
  items: readonly Item[],
  settings: TraySettings = {},
): Project {
  const empty = emptyProject({ id: "tray", title: "Tray", issuedOn: "2026-01-01" });
  const skinMm = settings.skinMm ?? 0.8;
  return {
    ...empty,
    jig: { ...empty.jig, across: { kind: "spacing", spacingMm: 300 } },
    symmetry: settings.symmetry ?? "none",
    drawnFace: settings.drawnFace ?? "air",
    core: { foamId: "xps", thicknessMm: settings.thicknessMm ?? 20 },
    skins: { lowerMm: skinMm, upperMm: skinMm },
    profiles: Object.entries(profiles).map(([id, nodes]) => ({ id, name: `Profile ${id}`, nodes })),
    items,
    materials: {
      ...empty.materials,
      foams: empty.materials.foams.map((foam) =>
        foam.id === "xps"
          ? { ...foam, leastBendRatio: settings.leastBendRatio ?? foam.leastBendRatio }
          : foam,
      ),
      glues: empty.materials.glues.map((glue) => ({
        ...glue,
        gapLimitMm: settings.gapLimitMm ?? glue.gapLimitMm,
      })),
    },
    stock: [
      { id: "board", foamId: "xps", thicknessMm: settings.thicknessMm ?? 20, lengthMm: 6000, widthMm: 6000 },
    ],
    glue: { ...empty.glue, gapMm: settings.glueGapMm ?? 0 },
  };
}

/** A section S`number` over the profile "p". */
export function section(
  number: number,
  elements: readonly PlanElement[],
  changes: Partial<Section> = {},
): Section {
  return {
    kind: "section",
    id: `s${number}`,
    number,
    name: `Section ${number}`,
    outline: { closed: true, elements },
    profileId: "p",
    headingRad: 0,
    tiltRad: 0,
    ...changes,
  };
}

/** A fence F`number` of an even depth of 40 mm along a line. */
export function fence(number: number, elements: readonly PlanElement[], changes: Partial<Fence> = {}): Fence {
  return {
    kind: "fence",
    id: `f${number}`,
    number,
    name: `Fence ${number}`,
    line: { closed: false, elements },
    lowerEdge: { kind: "depths", nodes: [{ id: "d", alongMm: 0, depthMm: 40 }] },
    seat: "core",
    standsFirst: false,
    ...changes,
  };
}

/** A transition T`number` between two edges. */
export function transition(
  number: number,
  first: TransitionEdge,
  second: TransitionEdge,
  changes: Partial<Transition> = {},
): Transition {
  return {
    kind: "transition",
    id: `t${number}`,
    number,
    name: `Transition ${number}`,
    first,
    second,
    ...changes,
  };
}

/** The stretch of an item's edge from one node to another. */
export const stretchOf = (
  itemId: string,
  fromNodeId: string,
  toNodeId: string,
  hand: EdgeRef["hand"] = "right",
): TransitionEdge => ({ kind: "stretch", edge: { itemId, fromNodeId, toNodeId, hand } });

/** A free edge of straight pieces through points. */
export const freeEdge = (...points: readonly (readonly [number, number, number])[]): TransitionEdge => ({
  kind: "free",
  nodes: points.map(([x, y, z], i) => ({ id: `e${i + 1}`, x, y, z, next: "line" })),
});

export const planNode = (
  id: string,
  x: number,
  y: number,
  changes: Partial<Omit<PlanNode, "kind">> = {},
): PlanNode => ({ kind: "node", id, x, y, next: "line", ...changes });

export const sideNode = (
  id: string,
  x: number,
  z: number,
  changes: Partial<Omit<SideNode, "kind">> = {},
): SideNode => ({ kind: "node", id, x, z, next: "line", ...changes });

export const followEdge = (
  id: string,
  edge: Omit<EdgeRef, "hand">,
  direction: FollowPiece["direction"],
): FollowPiece => ({
  kind: "follow",
  id,
  edge: { hand: "right", ...edge },
  direction,
  next: "line",
});

/** Nodes front-inner, rear-inner, rear-outer, front-outer; the edges that leave them are inner, rear, outer, front. */
export function rectangle(fromX: number, toX: number, fromY: number, toY: number): readonly PlanNode[] {
  return [
    planNode("inner", fromX, fromY),
    planNode("rear", toX, fromY),
    planNode("outer", toX, toY),
    planNode("front", fromX, toY),
  ];
}

/** A straight profile from (x0, z0) to (x1, z1). */
export const straightProfile = (x0: number, z0: number, x1: number, z1: number): readonly SideNode[] => [
  sideNode("a", x0, z0),
  sideNode("b", x1, z1),
];

/**
 * An arc of radius r over `sweepRad`, level at its front end (x0, z0), drawn as one radiused node between its two
 * tangents; `turns` 1 rises (its centre above), -1 falls.
 */
export function arcProfile(
  [x0, z0]: readonly [number, number],
  radiusMm: number,
  sweepRad: number,
  turns: 1 | -1,
): readonly SideNode[] {
  const tangentMm = radiusMm * Math.tan(sweepRad / 2);
  return [
    sideNode("a", x0, z0),
    sideNode("b", x0 + tangentMm, z0, { radiusMm }),
    sideNode("c", x0 + tangentMm * (1 + Math.cos(sweepRad)), z0 + turns * tangentMm * Math.sin(sweepRad)),
  ];
}

/** A tray as far as its flat patterns. */
export interface LaidTray {
  readonly sheets: readonly Sheet[];
  readonly joints: readonly Joint[];
  readonly parts: readonly Part[];
  readonly problems: readonly Problem[];
}

/** The stages from the drawing to the flat patterns. */
export function layTray(typed: Project): LaidTray {
  const project = soundProject(typed);
  const lines = resolveLines(project);
  const surfaces = buildSheets(project, lines);
  const joining = findJoints(project, lines, surfaces.sheets, surfaces.folds);
  const patterns = layParts(project, surfaces.sheets, joining.setBacks);
  return {
    sheets: surfaces.sheets,
    joints: joining.joints,
    parts: patterns.parts,
    problems: [
      ...checkDocument(typed),
      ...lines.problems,
      ...surfaces.problems,
      ...joining.problems,
      ...patterns.problems,
    ],
  };
}

/** The same of a project that must have no problem but of the kinds that are allowed for. */
export function soundTray(project: Project, allowed: readonly Problem["kind"][] = []): LaidTray {
  const laid = layTray(project);
  const others = laid.problems.filter(({ kind }) => !allowed.includes(kind));
  if (others.length > 0) throw new Error(JSON.stringify(others));
  return laid;
}

export function partOf(laid: LaidTray, id: string): Part {
  const part = laid.parts.find((candidate) => candidate.id === id);
  if (!part) throw new Error(`no part ${id} among ${laid.parts.map((one) => one.id).join(", ")}`);
  return part;
}

export function edgeOf(part: Part, edgeId: string): PartEdge {
  const edge = part.edges.find((candidate) => candidate.edgeId === edgeId);
  if (!edge) throw new Error(`no edge ${edgeId} among ${part.edges.map((one) => one.edgeId).join(", ")}`);
  return edge;
}

/** Relative difference of a value from what it should be. */
export const relativeMiss = (value: number, expected: number): number => Math.abs(value / expected - 1);
