import { assertNever, formatAngle, formatMm, nodeLabel, type Vec2 } from "../../../core/foundation/index.ts";
import {
  type EdgeRef,
  type Item,
  nameOfItem,
  nameOfOpening,
  nameOfProfile,
  type PlanLine,
  type Project,
  type Section,
} from "../../../core/project/index.ts";
import { wordItem } from "../edge-words.ts";
import { findLine, type Scene, type SceneLine } from "../scene.ts";
import { chosenEdgeId, chosenNodeId, isDrawn, lineOfSelection } from "../selected-line.ts";
import type { Selection } from "../types.ts";
import { count, describeLine, pointsOf } from "./describe-line.ts";

/**
 * What is chosen as sentences for those who hear the drawing: what it is and its name, how it is drawn, how high it
 * lies, what it follows; then the chosen node or edge. Undefined where nothing of the drawing is chosen.
 */
export function describeSelection(
  project: Project,
  scene: Scene,
  selection: Selection | undefined,
): string | undefined {
  if (selection?.kind === "several")
    return `${count(selection.grips.length, "thing")} chosen. Move, turn or delete them together.`;
  if (!isDrawn(selection)) return undefined;
  const whole = wholeOf(project, scene, selection);
  const detail = wordDetail(scene, selection);
  return whole && [detail, whole].filter((word) => word !== undefined).join(" ");
}

/** Every item, opening and profile that is drawn, a paragraph each, in the order of the document. */
export function describeDrawing(project: Project, scene: Scene): readonly string[] {
  const things: readonly Selection[] = [
    ...project.items.map(({ id }) => ({ kind: "item", itemId: id }) as const),
    ...project.openings.map(({ id }) => ({ kind: "opening", openingId: id }) as const),
    ...project.profiles.map(({ id }) => ({ kind: "profile", profileId: id }) as const),
  ];
  return things.flatMap((thing) => describeSelection(project, scene, thing) ?? []);
}

function wholeOf(project: Project, scene: Scene, selection: Selection): string | undefined {
  switch (selection.kind) {
    case "item": {
      const item = project.items.find(({ id }) => id === selection.itemId);
      return item && wordsOfItem(project, scene, item);
    }
    case "opening": {
      const opening = project.openings.find(({ id }) => id === selection.openingId);
      const line = findLine(scene, { of: "opening", openingId: selection.openingId });
      return (
        opening && line && `Opening O${opening.number} ${nameOfOpening(opening)}: ${describeLine(line)}.`
      );
    }
    case "profile": {
      const profile = project.profiles.find(({ id }) => id === selection.profileId);
      const line = findLine(scene, { of: "profile", profileId: selection.profileId });
      if (!profile || !line) return undefined;
      return `Profile ${nameOfProfile(profile)}: ${describeLine(line)}. ${wordLowest(line, undefined)}.`;
    }
    default:
      return undefined;
  }
}

function wordsOfItem(project: Project, scene: Scene, item: Item): string {
  const line = findLine(scene, { of: "item", itemId: item.id });
  const name = (word: string, letter: string) => `${word} ${letter}${item.number} ${nameOfItem(item)}:`;
  const drawn = line ? describeLine(line) : "it cannot be drawn as it stands";
  switch (item.kind) {
    case "section":
      return sentences(`${name("Section", "S")} ${drawn}`, wordHeights(project, scene, item, line), [
        ...wordFollowed(project, item.outline),
      ]);
    case "fence":
      return sentences(`${name("Fence", "F")} ${drawn}`, wordLowerEdge(scene, item), [
        ...wordFollowed(project, item.line),
        item.seat === "core" ? "Seated on the foam" : "Seated on the finished skin",
      ]);
    case "transition":
      return sentences(`${name("Transition", "T")} ${drawn}`, undefined, [
        `First edge ${wordOfEdge(project, item.first)}`,
        `Second edge ${wordOfEdge(project, item.second)}`,
      ]);
    case "plate":
      return sentences(`${name("Plate", "P")} ${drawn}`, `At z ${formatMm(item.zMm)} mm`, [
        `${count(item.wings.length, "wing")}${item.wings.length > 0 ? ` bent ${item.wings.map(({ angleRad }) => formatAngle(angleRad)).join(", ")}` : ""}`,
      ]);
    default:
      return assertNever(item);
  }
}

const sentences = (first: string, second: string | undefined, rest: readonly string[]): string =>
  [first, ...(second === undefined ? [] : [second]), ...rest].map((sentence) => `${sentence}.`).join(" ");

/** The section's profile by name, and how low it comes within the outline. */
function wordHeights(
  project: Project,
  scene: Scene,
  section: Section,
  outline: SceneLine | undefined,
): string | undefined {
  const profile = project.profiles.find(({ id }) => id === section.profileId);
  const line = findLine(scene, { of: "profile", profileId: section.profileId });
  if (!profile || !line) return "It has no profile";
  const xs = outline ? pointsOf(outline).map(([x]) => x) : [];
  const within = xs.length > 0 ? ([Math.min(...xs), Math.max(...xs)] as const) : undefined;
  return `Profile ${nameOfProfile(profile)}, ${wordLowest(line, within).toLowerCase()}`;
}

function wordLowerEdge(scene: Scene, item: Extract<Item, { kind: "fence" }>): string | undefined {
  if (item.lowerEdge.kind === "depths") {
    const depths = item.lowerEdge.nodes.map(({ depthMm }) => depthMm);
    return depths.length > 0 ? `At most ${formatMm(Math.max(...depths))} mm deep below the sheet` : undefined;
  }
  const line = findLine(scene, { of: "lower-edge", itemId: item.id });
  return (
    line && `Lower edge of ${count(line.nodes.length, "node")}, ${wordLowest(line, undefined).toLowerCase()}`
  );
}

/** Where a line of the side view is lowest, of the points that are drawn, between two stations where given. */
function wordLowest(line: SceneLine, within: readonly [number, number] | undefined): string {
  const points = pointsOf(line).filter(
    ([x]) => within === undefined || (x >= within[0] - 0.5 && x <= within[1] + 0.5),
  );
  const lowest = points.reduce<Vec2 | undefined>(
    (low, point) => (low === undefined || point[1] < low[1] ? point : low),
    undefined,
  );
  if (lowest === undefined) return "No height here";
  return `Lowest ${formatMm(lowest[1])} mm at x ${formatMm(lowest[0])}`;
}

const wordFollowed = (project: Project, { elements }: PlanLine): readonly string[] =>
  elements.flatMap((element) =>
    element.kind === "follow" ? [`Follows ${wordRef(project, element.edge)}`] : [],
  );

const wordRef = (project: Project, { itemId, fromNodeId, toNodeId }: EdgeRef): string =>
  `${wordItem(project, itemId)} from node ${nodeLabel(fromNodeId)} to ${nodeLabel(toNodeId)}`;

const wordOfEdge = (project: Project, edge: Extract<Item, { kind: "transition" }>["first"]): string =>
  edge.kind === "stretch"
    ? `runs along ${wordRef(project, edge.edge)}`
    : `is its own, of ${count(edge.nodes.length, "node")}`;

function wordDetail(scene: Scene, selection: Selection): string | undefined {
  const ref = lineOfSelection(selection);
  const line = ref && findLine(scene, ref);
  const nodeId = chosenNodeId(selection);
  const node = line?.nodes.find((one) => one.nodeId === nodeId);
  if (line && node) {
    const [across, up] = node.at;
    const place = `x ${formatMm(across)}, ${line.view === "plan" ? "y" : "z"} ${formatMm(up)} mm`;
    return `Node ${nodeLabel(node.nodeId)} at ${place}.`;
  }
  const edge = line?.edges.find(({ edgeId }) => edgeId === chosenEdgeId(selection));
  return edge && `${WORDS[edge.kind]} edge${edge.name === undefined ? "" : ` ${edge.name}`} chosen.`;
}

const WORDS = { line: "Straight", curve: "Curved", follow: "Following", derived: "Given" } as const;
