import type { Grip, LineRef } from "../../core/project/index.ts";
import { inView, lineKey, ownerKey } from "./scene.ts";
import { isDrawn, lineOfSelection, selectLine } from "./selected-line.ts";
import type { Selection, Target } from "./types.ts";

const NONE: readonly Grip[] = [];

/** What is chosen, one by one: nodes as nodes, and everything else as a whole; none for parts and ribs. */
export function gripsOf(selection: Selection | undefined): readonly Grip[] {
  if (selection?.kind === "several") return selection.grips;
  const line = lineOfSelection(selection);
  if (!line || !isDrawn(selection)) return NONE;
  return [selection.nodeId === undefined ? wholeOf(line) : { line, nodeId: selection.nodeId }];
}

/** The selection of these things: none, one, or several. */
export function selectGrips(grips: readonly Grip[]): Selection | undefined {
  const [first] = grips;
  if (!first || grips.length > 1) return first && { kind: "several", grips };
  const chosen = selectLine(first.line);
  return first.nodeId === undefined ? chosen : { ...chosen, nodeId: first.nodeId };
}

/** The selection with a thing added. */
export const withGrips = (selection: Selection | undefined, grips: readonly Grip[]): Selection | undefined =>
  selectGrips(grips.reduce(withGrip, gripsOf(selection)));

/**
 * The selection with what was pressed added, or taken away if it was chosen. A thing that is chosen as a whole is
 * taken away as a whole, wherever it is pressed.
 */
export function withToggled(selection: Selection | undefined, target: Target): Selection | undefined {
  const grips = gripsOf(selection);
  const pressed = gripOf(target);
  const key = gripKey(pressed);
  const whole = gripKey(wholeOf(target.line));
  const kept = grips.filter((grip) => gripKey(grip) !== key && gripKey(grip) !== whole);
  return selectGrips(kept.length < grips.length ? kept : withGrip(grips, pressed));
}

/** Whether what was pressed is among several that are chosen. */
export function isAmong(selection: Selection | undefined, target: Target): boolean {
  if (selection?.kind !== "several") return false;
  const keys = new Set(selection.grips.map(gripKey));
  return keys.has(gripKey(gripOf(target))) || keys.has(gripKey(wholeOf(target.line)));
}

/** Whose lines a selection chooses, wholly or by a node, as `ownerKey` tells it. */
export const chosenOwnersOf = (selection: Selection | undefined): readonly string[] => [
  ...new Set(gripsOf(selection).map(({ line }) => ownerKey(line))),
];

/** The chosen nodes of each line, by its key; both views of a free edge have them. */
export function chosenNodesByLine(selection: Selection | undefined): ReadonlyMap<string, readonly string[]> {
  const nodes = new Map<string, readonly string[]>();
  for (const { line, nodeId } of gripsOf(selection)) {
    if (nodeId === undefined) continue;
    for (const key of new Set([lineKey(inView(line, "plan")), lineKey(inView(line, "side"))]))
      nodes.set(key, [...(nodes.get(key) ?? []), nodeId]);
  }
  return nodes;
}

/** A thing as a whole, by any of its lines. */
export function wholeOf(line: LineRef): Grip {
  return line.of === "profile" || line.of === "opening"
    ? { line }
    : { line: { of: "item", itemId: line.itemId } };
}

/** A text that stands for a grip: one free edge is one line in both views. */
export const gripKey = ({ line, nodeId }: Grip): string =>
  nodeId === undefined ? ownerKey(line) : `${lineKey(inView(line, "plan"))}#${nodeId}`;

const gripOf = (target: Target): Grip =>
  target.on === "node" ? { line: target.line, nodeId: target.nodeId } : wholeOf(target.line);

/** A whole takes the place of its nodes; a node of a whole that is chosen adds nothing. */
function withGrip(grips: readonly Grip[], added: Grip): readonly Grip[] {
  const owner = ownerKey(added.line);
  const isOfOwner = (grip: Grip) => ownerKey(grip.line) === owner;
  if (added.nodeId === undefined) return [...grips.filter((grip) => !isOfOwner(grip)), added];
  const key = gripKey(added);
  const isThere = grips.some(
    (grip) => isOfOwner(grip) && (grip.nodeId === undefined || gripKey(grip) === key),
  );
  return isThere ? grips : [...grips, added];
}
