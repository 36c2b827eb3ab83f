import { distance2, roundTo, sayNode, type Vec2 } from "../../core/foundation/index.ts";
import { widerGrid, wordGrid } from "../lengths/index.ts";
import { awayPx, nearestOnLine } from "./nearest.ts";
import { isSameLine, ownerKey, type Scene, type SceneLine } from "./scene.ts";
import { chosenOwnersOf } from "./several.ts";
import type { DraftNode, Place, Snap, ToolContext } from "./types.ts";

/** A snap reaches less far than a grab: else near things could not be drawn apart. */
const SNAP_SHARE = 0.6;
/** Nearer than this a coordinate is drawn onto that of another node, px. */
const ALIGN_PX = 5;
/** Decimals of a mm that a place on the grid keeps: steps of an inch have no shorter numbers. */
const GRID_DECIMALS = 9;
/** Grid lines nearer together than this are no help to the hand, px. */
const LEAST_GRID_PX = 2;

export interface SnapRequest {
  readonly place: Place;
  readonly context: ToolContext;
  /** The line being drawn: its first node closes it, its nodes line up with the next. */
  readonly draft?: readonly DraftNode[];
  /** The draft may be closed on its first node. */
  readonly canClose?: boolean;
  /** The line whose node is moved, and the node. */
  readonly moving?: { readonly line: SceneLine["line"]; readonly nodeId: string };
}

/**
 * Where a place comes to lie, and why, in words: on a node, on another line's edge, or each coordinate for
 * itself on the centre line, in line with a node, on the hairline or on the grid. With mirroring, plan places
 * left of the centre line come onto it. While snaps are held off only that last rule holds.
 */
export function snapPlace(request: SnapRequest): Snap {
  const { place, context } = request;
  const onHalf = onDrawnHalf(place, context.scene);
  if (!place.snaps) return { at: onHalf.at, reasons: onHalf.reasons };
  const settings = context.snaps;
  return (
    closingSnap(request) ??
    (settings.nodes ? nodeSnap(request) : undefined) ??
    (settings.nodes ? edgeSnap(request) : undefined) ??
    coordinateSnap(request, onHalf.at)
  );
}

function onDrawnHalf(place: Place, scene: Scene): Snap {
  const isLeft = place.view === "plan" && scene.mirrored && place.at[1] < 0;
  return isLeft ? { at: [place.at[0], 0], reasons: ["centre line"] } : { at: place.at, reasons: [] };
}

function closingSnap({ place, draft, canClose }: SnapRequest): Snap | undefined {
  const first = draft?.[0];
  if (!canClose || !first || awayPx(first.at, place.at, place.mmPerPx) > place.reachPx) return undefined;
  return { at: first.at, reasons: ["first node: closes the outline"], closes: true };
}

function nodeSnap(request: SnapRequest): Snap | undefined {
  const { place, moving } = request;
  let best: { readonly line: SceneLine; readonly nodeId: string; readonly at: Vec2 } | undefined;
  let bestPx = place.reachPx * SNAP_SHARE;
  for (const { line, nodeId, at } of otherNodes(request)) {
    // A node dropped on another of its own line would leave a segment without length.
    if (moving && isSameLine(line.line, moving.line)) continue;
    const away = awayPx(at, place.at, place.mmPerPx);
    if (away > bestPx) continue;
    bestPx = away;
    best = { line, nodeId, at };
  }
  return best && { at: best.at, reasons: [`${sayNode(best.nodeId)} of ${best.line.name}`] };
}

function edgeSnap({ place, context, moving }: SnapRequest): Snap | undefined {
  let best: Snap | undefined;
  let bestPx = Number.POSITIVE_INFINITY;
  for (const line of context.scene.lines) {
    if (line.view !== place.view || line.broken || (moving && isSameLine(line.line, moving.line))) continue;
    const here = nearestOnLine(line, { ...place, reachPx: place.reachPx * SNAP_SHARE });
    if (!here || here.awayPx >= bestPx) continue;
    bestPx = here.awayPx;
    best = {
      at: here.at,
      reasons: [`on the edge of ${line.name}`],
      edge: { line: line.line, edgeId: here.edge.edgeId },
    };
  }
  return best;
}

interface Coordinate {
  readonly value: number;
  readonly reason: string | undefined;
}

function coordinateSnap(request: SnapRequest, at: Vec2): Snap {
  const first = snapCoordinate(request, at, 0);
  const second = snapCoordinate(request, at, 1);
  const reasons = [first.reason, second.reason].filter((reason) => reason !== undefined);
  return { at: [first.value, second.value], reasons: [...new Set(reasons)] };
}

function snapCoordinate(request: SnapRequest, at: Vec2, axis: 0 | 1): Coordinate {
  const { place, context } = request;
  const value = at[axis];
  const mmPerPx = place.mmPerPx[axis];
  const alignMm = ALIGN_PX * mmPerPx;
  const isAcross = place.view === "plan" && axis === 1;
  if (context.snaps.centreLine && isAcross && Math.abs(value) <= alignMm) {
    return { value: 0, reason: "centre line" };
  }
  const aligned = context.snaps.nodes ? alignedWith(request, value, axis, alignMm) : undefined;
  if (aligned) return aligned;
  if (axis === 0 && Math.abs(value - context.hairlineXMm) <= alignMm) {
    return { value: context.hairlineXMm, reason: "hairline" };
  }
  return context.snaps.grid ? onGrid(value, context, mmPerPx) : { value, reason: undefined };
}

/** In line with a node: of the line that is drawn or chosen, so that far things do not pull. */
function alignedWith(
  request: SnapRequest,
  value: number,
  axis: 0 | 1,
  alignMm: number,
): Coordinate | undefined {
  const word = axis === 0 ? "same x as" : request.place.view === "plan" ? "same y as" : "same height as";
  const candidates = [
    ...(request.draft ?? []).map((node, index) => ({ at: node.at, name: `node ${index + 1}` })),
    ...otherNodes(request)
      .filter(({ line }) => isNearby(line, request))
      .map(({ nodeId, at }) => ({ at, name: sayNode(nodeId) })),
  ];
  const at = request.place.at;
  // Of several in line the nearest one is named.
  const near = candidates
    .filter((candidate) => Math.abs(candidate.at[axis] - value) <= alignMm)
    .map((candidate) => ({ ...candidate, offMm: Math.abs(candidate.at[axis] - value) }))
    .sort((a, b) => a.offMm - b.offMm || distance2(a.at, at) - distance2(b.at, at))[0];
  return near && { value: near.at[axis], reason: `${word} ${near.name}` };
}

function isNearby(line: SceneLine, { moving, context }: SnapRequest): boolean {
  if (moving) return isSameLine(line.line, moving.line);
  return chosenOwnersOf(context.selection).includes(ownerKey(line.line));
}

/** On a grid that the hand can feel at this scale: the chosen step, or the next wider ones. */
function onGrid(value: number, { snaps, lengths }: ToolContext, mmPerPx: number): Coordinate {
  if (!(snaps.gridMm > 0)) return { value, reason: undefined };
  let stepMm = snaps.gridMm;
  while (stepMm < LEAST_GRID_PX * mmPerPx) stepMm = widerGrid(lengths.units, stepMm);
  const rounded = roundTo(Math.round(value / stepMm) * stepMm, GRID_DECIMALS);
  return { value: rounded === 0 ? 0 : rounded, reason: `grid ${wordGrid(lengths, stepMm)}` };
}

interface NodeOfLine {
  readonly line: SceneLine;
  readonly nodeId: string;
  readonly at: Vec2;
}

function otherNodes({ place, context, moving }: SnapRequest): readonly NodeOfLine[] {
  return context.scene.lines.flatMap((line) =>
    line.view !== place.view
      ? []
      : line.nodes.flatMap((node) =>
          moving && node.nodeId === moving.nodeId && isSameLine(line.line, moving.line)
            ? []
            : [{ line, nodeId: node.nodeId, at: node.at }],
        ),
  );
}
