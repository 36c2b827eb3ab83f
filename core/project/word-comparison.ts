import { formatMm, formatNumber, nodeLabel, sayNode, THIN_SPACE, toDegrees } from "../foundation/index.ts";
import {
  type Comparison,
  NodeAxes,
  type NodeAxis,
  type NodeChange,
  type NodePlace,
  type ThingChange,
  type ThingList,
} from "./compare-projects.ts";
import { fieldWord, unitOfField } from "./field-words.ts";
import { lineName } from "./name-of-command.ts";
import { nameOfItem, nameOfNote, nameOfOpening, nameOfProfile, nameOfUnderlay } from "./names.ts";
import type { Project } from "./schema.ts";
import { type PlainValue, type ValueChange, valueAt } from "./value-changes.ts";

/** A row of the table of differences, in words: what, how it was, how it is, and the difference between. */
export interface ComparisonRow {
  /** Stands for the row in lists; no two are alike. */
  readonly key: string;
  readonly what: string;
  readonly from: string;
  readonly to: string;
  readonly by: string;
}

/** The differences of two documents in words, as tables: things, nodes with lengths in mm, settings. */
export interface ComparisonTables {
  readonly things: readonly ComparisonRow[];
  readonly nodes: readonly ComparisonRow[];
  readonly settings: readonly ComparisonRow[];
}

interface Both {
  readonly before: Project;
  readonly after: Project;
}

/** The words for a comparison of these two documents; the one place that has them. */
export function wordComparison(comparison: Comparison, both: Both): ComparisonTables {
  return {
    things: comparison.things.flatMap((thing) => thingRows(thing, both)),
    nodes: comparison.nodes.flatMap((node) => nodeRows(node, both)),
    settings: comparison.settings.map((value) => ({
      key: value.path.join("/"),
      what: capital(settingWords(value.path, both)),
      ...valueWords(value, both),
    })),
  };
}

const CAME_AND_WENT = { added: "added", gone: "gone" } as const;

function thingRows({ list, id, change, values }: ThingChange, both: Both): readonly ComparisonRow[] {
  const name = thingName(list, id, both);
  const key = `${list}/${id}`;
  if (change !== "changed") return [{ key, what: name, ...presence(change), by: CAME_AND_WENT[change] }];
  return values.map((value) => ({
    key: `${key}/${value.path.join("/")}`,
    what: `${name}: ${pathWords(value.path, [list, id], both)}`,
    ...valueWords(value, both),
  }));
}

const presence = (change: "added" | "gone"): Pick<ComparisonRow, "from" | "to"> =>
  change === "added" ? { from: NOTHING, to: "there" } : { from: "there", to: NOTHING };

/** Stands where there is nothing to show. */
const NOTHING = "–";

function nodeRows(node: NodeChange, both: Both): readonly ComparisonRow[] {
  const { nodeId, line, change, from, to } = node;
  const owner = lineName(hasThing(both.after, node) ? both.after : both.before, line);
  const what = `${capital(sayNode(nodeId))} of ${owner}`;
  const key = `${node.list}/${node.thingId}/${JSON.stringify(line)}/${nodeId}`;
  const places = { from: placeWords(from), to: placeWords(to) };
  if (change === "added" || change === "gone") return [{ key, what, ...places, by: CAME_AND_WENT[change] }];
  const moved = change === "moved" ? [{ key, what, ...places, by: moveWords(node) }] : [];
  const changed = node.values.map((value) => ({
    key: `${key}/${value.path.join("/")}`,
    what: `${what}: ${value.path.map(fieldWord).join(", ")}`,
    ...valueWords(value, both),
  }));
  return [...moved, ...changed];
}

const hasThing = (project: Project, { list, thingId }: NodeChange): boolean =>
  project[list].some(({ id }) => id === thingId);

const AXIS_WORDS: Readonly<Record<NodeAxis, string>> = {
  x: "x",
  y: "y",
  z: "z",
  alongMm: "along",
  depthMm: "depth",
};

/** `x 800.0, y 400.0`. */
function placeWords(place: NodePlace | undefined): string {
  if (place === undefined) return NOTHING;
  const words = NodeAxes.flatMap((axis) => {
    const value = place[axis];
    return value === undefined ? [] : [`${AXIS_WORDS[axis]} ${formatMm(value)}`];
  });
  return words.length > 0 ? words.join(", ") : "follows an edge";
}

/** `x +100.0`; with the straight distance where it moved along more than one axis. */
function moveWords({ from = {}, to = {}, byMm }: NodeChange): string {
  const steps = NodeAxes.flatMap((axis) => {
    const stepMm = (to[axis] ?? 0) - (from[axis] ?? 0);
    return Object.is(to[axis], from[axis]) ? [] : [`${AXIS_WORDS[axis]} ${signed(stepMm, 1)}`];
  });
  return steps.length > 1 ? `${steps.join(", ")}; ${formatMm(byMm)} in all` : steps.join("");
}

function signed(value: number, decimals: number): string {
  const text = formatNumber(value, decimals);
  return value > 0 && Number(value.toFixed(decimals)) !== 0 ? `+${text}` : text;
}

function valueWords({ path, from, to }: ValueChange, both: Both): Pick<ComparisonRow, "from" | "to" | "by"> {
  const field = path.at(-1) ?? "";
  if (field === "picture") return { from: NOTHING, to: NOTHING, by: "another picture" };
  const words = (value: PlainValue | undefined) => sayValue(field, value, both);
  const isFigure = typeof from === "number" && typeof to === "number" && Number.isFinite(to - from);
  return { from: words(from), to: words(to), by: isFigure ? differenceWords(field, to - from) : "changed" };
}

function differenceWords(field: string, difference: number): string {
  const unit = unitOfField(field);
  const shown = unit === "°" ? toDegrees(difference) : difference;
  return `${signed(shown, decimalsOf(unit, shown))}${unitEnding(unit)}`;
}

function sayValue(field: string, value: PlainValue | undefined, both: Both): string {
  if (value === undefined) return field === "radiusMm" ? "sharp" : NOTHING;
  if (typeof value === "number") return sayNumber(field, value);
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "object") return value.map((entry) => sayValue(field, entry, both)).join(", ");
  if (field === "next") return value === "line" ? "straight" : value;
  if (/NodeId$/.test(field)) return nodeLabel(value);
  return (/Id$/.test(field) ? nameOfId(value, both) : undefined) ?? (value.trim() || NOTHING);
}

function sayNumber(field: string, value: number): string {
  if (!Number.isFinite(value)) return "no number";
  const unit = unitOfField(field);
  const shown = unit === "°" ? toDegrees(value) : value;
  return `${formatNumber(shown, decimalsOf(unit, shown))}${unitEnding(unit)}`;
}

const unitEnding = (unit: string | undefined): string =>
  unit === undefined ? "" : unit === "°" ? unit : `${THIN_SPACE}${unit}`;

/** One decimal for lengths and angles; elsewhere as many as tell the value, up to three. */
function decimalsOf(unit: string | undefined, value: number): number {
  if (unit === "mm" || unit === "°") return 1;
  return [0, 1, 2].find((decimals) => Number(value.toFixed(decimals)) === value) ?? 3;
}

/** What the thing or material with an id is called, now or before. */
function nameOfId(id: string, { after, before }: Both): string | undefined {
  for (const project of [after, before]) {
    const things = [...project.items, ...project.profiles, ...Object.values(project.materials).flat()];
    const name = things.find((thing) => thing.id === id)?.name.trim();
    if (name !== undefined && name !== "") return name;
  }
  return undefined;
}

function thingName(list: ThingList, id: string, { after, before }: Both): string {
  return nameIn(after, list, id) ?? nameIn(before, list, id) ?? id;
}

function nameIn(project: Project, list: ThingList, id: string): string | undefined {
  const find = <Thing extends { readonly id: string }>(
    things: readonly Thing[],
    nameOf: (thing: Thing) => string,
  ): string | undefined => {
    const thing = things.find((other) => other.id === id);
    return thing && nameOf(thing);
  };
  switch (list) {
    case "items":
      return find(project.items, nameOfItem);
    case "openings":
      return find(project.openings, nameOfOpening);
    case "profiles":
      return find(project.profiles, nameOfProfile);
    case "notes":
      return find(project.notes, nameOfNote);
    case "underlays":
      return find(project.underlays, nameOfUnderlay);
  }
}

/** `jig: least height`; a setting at the top by its own word. */
function settingWords(path: readonly string[], both: Both): string {
  const [group = "", ...rest] = path;
  return rest.length === 0 ? fieldWord(group) : `${fieldWord(group)}: ${pathWords(rest, [group], both)}`;
}

/** A path in words, entries of lists by their names. */
function pathWords(path: readonly string[], inside: readonly string[], { after, before }: Both): string {
  return path
    .map((name, index) => {
      const whole = [...inside, ...path.slice(0, index + 1)];
      const entry = valueAt(after, whole) ?? valueAt(before, whole);
      const named = valueAt(entry, ["name"]);
      if (typeof named === "string" && named.trim() !== "") return named.trim();
      return /^\d+$/.test(name) ? `${Number(name) + 1}` : fieldWord(name);
    })
    .join(", ");
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
