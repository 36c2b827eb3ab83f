import type { LineRef } from "./command-types.ts";
import type { Project } from "./schema.ts";
import { type ValueChange, valueAt, valueChanges } from "./value-changes.ts";

/** The lists of a document whose entries are things with an id of their own. */
export const ThingLists = ["items", "openings", "profiles", "notes", "underlays"] as const;
export type ThingList = (typeof ThingLists)[number];

/** Something drawn or pinned that came, went or changed, apart from its nodes. */
export interface ThingChange {
  readonly list: ThingList;
  readonly id: string;
  readonly change: "added" | "gone" | "changed";
  /** The values that changed, by path inside the thing; empty where the whole came or went. */
  readonly values: readonly ValueChange[];
}

/** Coordinates of a node by name: x, y and z in mm; of a fence's depths alongMm and depthMm. */
export type NodePlace = Readonly<Partial<Record<NodeAxis, number>>>;
export const NodeAxes = ["x", "y", "z", "alongMm", "depthMm"] as const;
export type NodeAxis = (typeof NodeAxes)[number];

/** A node, or a piece that follows an edge, that came, went, moved or changed on a thing that both documents have. */
export interface NodeChange {
  readonly list: ThingList;
  readonly thingId: string;
  readonly line: LineRef;
  readonly nodeId: string;
  readonly change: "added" | "gone" | "moved" | "changed";
  /** Where it was and is; absent where it was or is not. */
  readonly from?: NodePlace;
  readonly to?: NodePlace;
  /** How far it moved, straight; 0 where it did not. */
  readonly byMm: number;
  /** What else changed on it, by the name of the field. */
  readonly values: readonly ValueChange[];
}

/** In what two documents differ. */
export interface Comparison {
  readonly things: readonly ThingChange[];
  readonly nodes: readonly NodeChange[];
  /** Values of the document that no thing owns, by path. */
  readonly settings: readonly ValueChange[];
}

/**
 * In what a document differs from another: things that came, went or changed, every node on the things that both
 * have, and settings. Says nothing exactly where both are the same file. Order: that of the documents.
 */
export function compareProjects(before: Project, after: Project): Comparison {
  const compared = ThingLists.flatMap((list) => compareList(list, before[list], after[list]));
  return {
    things: compared.flatMap(({ thing }) => (thing ? [thing] : [])),
    nodes: compared.flatMap(({ nodes }) => nodes),
    settings: [...valueChanges(settingsOf(before), settingsOf(after)), ...orderOfThings(before, after)],
  };
}

/** Whether two documents differ in anything. */
export const isDifferent = ({ things, nodes, settings }: Comparison): boolean =>
  things.length + nodes.length + settings.length > 0;

type Things = readonly { readonly id: string }[];

interface ComparedThing {
  readonly thing: ThingChange | undefined;
  readonly nodes: readonly NodeChange[];
}

function compareList(list: ThingList, before: Things, after: Things): readonly ComparedThing[] {
  const ids = [...new Set([...before, ...after].map(({ id }) => id))];
  return ids.map((id) => {
    const is = (thing: { readonly id: string }) => thing.id === id;
    return compareThing(list, id, before.find(is), after.find(is));
  });
}

function compareThing(list: ThingList, id: string, before: unknown, after: unknown): ComparedThing {
  if (before === undefined) return { thing: { list, id, change: "added", values: [] }, nodes: [] };
  if (after === undefined) return { thing: { list, id, change: "gone", values: [] }, nodes: [] };
  const changes = valueChanges(before, after);
  const values = changes.filter(({ path }) => nodePath(path) === undefined);
  return {
    thing: values.length > 0 ? { list, id, change: "changed", values } : undefined,
    nodes: compareNodes(changes).map(({ path, values: own }) => {
      const places = { from: placeOf(valueAt(before, path)), to: placeOf(valueAt(after, path)) };
      return nodeChange({ list, thingId: id }, path, own, places);
    }),
  };
}

/** The first part of a path, as far as the node that it leads to; undefined where it leads to none. */
function nodePath(path: readonly string[]): readonly string[] | undefined {
  const at = path.findIndex((name, index) => index < 3 && (name === "elements" || name === "nodes"));
  return at >= 0 && path.length > at + 2 ? path.slice(0, at + 2) : undefined;
}

interface NodeValues {
  readonly path: readonly string[];
  readonly values: readonly ValueChange[];
}

/** The changes that belong to nodes, together for each node. */
function compareNodes(changes: readonly ValueChange[]): readonly NodeValues[] {
  const nodes = new Map<string, NodeValues>();
  for (const change of changes) {
    const path = nodePath(change.path);
    if (path === undefined) continue;
    const key = path.join("/");
    const value = { ...change, path: change.path.slice(path.length) };
    nodes.set(key, { path, values: [...(nodes.get(key)?.values ?? []), value] });
  }
  return [...nodes.values()];
}

/** Undefined where there is no node; empty for a piece that follows an edge. */
function placeOf(node: unknown): NodePlace | undefined {
  if (node === undefined) return undefined;
  return Object.fromEntries(
    NodeAxes.flatMap((axis) => {
      const value = valueAt(node, [axis]);
      return typeof value === "number" ? [[axis, value]] : [];
    }),
  );
}

function nodeChange(
  thing: Pick<NodeChange, "list" | "thingId">,
  path: readonly string[],
  values: readonly ValueChange[],
  { from, to }: { readonly from: NodePlace | undefined; readonly to: NodePlace | undefined },
): NodeChange {
  const isAxis = (name: string | undefined) => NodeAxes.some((axis) => axis === name);
  const isMoved = values.some((value) => isAxis(value.path[0]));
  const change = from === undefined ? "added" : to === undefined ? "gone" : isMoved ? "moved" : "changed";
  return {
    ...thing,
    line: lineOf(thing, path),
    nodeId: path.at(-1) ?? "",
    change,
    ...(from ? { from } : {}),
    ...(to ? { to } : {}),
    byMm: change === "moved" ? distance(from ?? {}, to ?? {}) : 0,
    values: change === "added" || change === "gone" ? [] : values.filter((value) => !isAxis(value.path[0])),
  };
}

const distance = (from: NodePlace, to: NodePlace): number =>
  Math.hypot(...NodeAxes.map((axis) => (to[axis] ?? 0) - (from[axis] ?? 0)));

/** The line that a list of nodes is of. */
function lineOf({ list, thingId }: Pick<NodeChange, "list" | "thingId">, path: readonly string[]): LineRef {
  if (list === "profiles") return { of: "profile", profileId: thingId };
  if (list === "openings") return { of: "opening", openingId: thingId };
  const [first] = path;
  if (first === "lowerEdge") return { of: "lower-edge", itemId: thingId };
  if (first === "first" || first === "second")
    return { of: "edge", itemId: thingId, side: first, view: "plan" };
  return { of: "item", itemId: thingId };
}

/** All that no thing owns. */
function settingsOf(project: Project): object {
  const { items: _items, openings: _openings, profiles: _profiles, ...rest } = project;
  const { notes: _notes, underlays: _underlays, ...settings } = rest;
  return settings;
}

/** Things that both documents have, in another order. */
function orderOfThings(before: Project, after: Project): readonly ValueChange[] {
  return ThingLists.flatMap((list) => {
    const idsIn = (project: Project) => project[list].map(({ id }) => id);
    const both = (ids: readonly string[], others: readonly string[]) =>
      ids.filter((id) => others.includes(id)).map((id) => ({ id }));
    const [from, to] = [idsIn(before), idsIn(after)];
    return valueChanges(both(from, to), both(to, from), [list]);
  });
}
