import {
  type Curve,
  compilePath,
  derivativeOnPiece,
  endOfPiece,
  extremeParameters,
  findSelfCrossings,
  pointOnPiece,
  reversePiece,
  startOfPiece,
  toCurve,
} from "../curves/index.ts";
import {
  assertNever,
  at,
  cross2,
  distance2,
  gauss,
  type Memory,
  NO_MEMORY,
  ON_CENTRE_LINE_MM,
  PROFILE_FALLBACK_MM,
  type Problem,
} from "../foundation/index.ts";
import { checkItems } from "./check-items.ts";
import { type LineOwner, lowerEdgeOwner } from "./check-line.ts";
import { compileItems, openingKey } from "./compile-items.ts";
import { planLineOf } from "./edit-lines.ts";
import type { DrawnLine } from "./find-stretch.ts";
import { fromPathProblem } from "./from-path-problem.ts";
import { nameOfItem, nameOfOpening, nameOfProfile } from "./names.ts";
import { sidePath } from "./paths.ts";
import type { ResolvedLines, TransitionEdges } from "./resolved-lines.ts";
import type { Item, Project, SideNode } from "./schema.ts";

/** A tangled outline crosses itself in many places; the first few say where to look. */
const MOST_CROSSINGS_TOLD = 3;

/**
 * Every drawn line of a project as a curve; see `ResolvedLines`. What `checkDocument` finds unfit is left out
 * without telling it again; everything else that compiles is delivered. Problems: open and crossing outlines,
 * profiles that fall back, curves that bulge over the centre line, references without an end or in a cycle, and
 * all that keeps a path from being a curve. With a memory, only what has changed is compiled and checked again.
 */
export function resolveLines(project: Project, memory: Memory = NO_MEMORY): ResolvedLines {
  const { symmetry } = project;
  const faults = checkItems(project);
  const drawn = compileItems(project, faults, memory);
  const problems: Problem[] = [];
  const plan: Record<string, Curve> = {};
  const unfit: Record<string, Curve> = {};
  const profiles: Record<string, Curve> = {};
  const lowerEdges: Record<string, Curve> = {};
  const follows: Record<string, ResolvedLines["follows"][string]> = {};
  const transitions: Record<string, TransitionEdges> = {};
  const openings: Record<string, Curve> = {};

  project.profiles.forEach((profile, index) => {
    if (faults.repeatedProfiles.has(index) || faults.unfitProfileIds.has(profile.id)) return;
    const owner = { name: nameOfProfile(profile), place: { profileId: profile.id } };
    const side = memory.recall(`profile ${profile.id}`, [profile], () => compileSide(profile.nodes, owner));
    problems.push(...side.problems);
    if (side.curve) profiles[profile.id] = side.curve;
  });
  project.items.forEach((item, index) => {
    const line = drawn.get(item.id);
    if (!line || faults.repeatedItems.has(index)) return;
    const check = () => [...line.problems, ...checkDrawn(item, line, symmetry)];
    const found = memory.recall(`check ${item.id}`, [item, line, symmetry], check);
    problems.push(...found);
    const isFit = !faults.unfitItemIds.has(item.id) && found.length === 0;
    if (line.edges && isFit) transitions[item.id] = line.edges;
    if (line.curve && isFit) {
      const { curve } = line;
      plan[item.id] = memory.recall(`plan ${item.id}`, [curve], () => counterClockwise(curve));
      noteFollows(item, line, follows);
    } else if (line.curve) unfit[item.id] = line.curve;
    if (item.kind !== "fence" || item.lowerEdge.kind !== "heights" || faults.unfitLowerEdgeIds.has(item.id))
      return;
    const owner = lowerEdgeOwner(item);
    const { nodes } = item.lowerEdge;
    const side = memory.recall(`lower edge ${item.id}`, [item], () => compileSide(nodes, owner));
    problems.push(...side.problems);
    if (side.curve) lowerEdges[item.id] = side.curve;
  });
  project.openings.forEach((opening, index) => {
    const line = drawn.get(openingKey(opening.id));
    if (!line || faults.repeatedOpenings.has(index)) return;
    const owner = { name: nameOfOpening(opening), place: { openingId: opening.id } };
    const check = () => [...line.problems, ...checkLoop(opening.outline.closed, line, owner, symmetry)];
    const found = memory.recall(`check opening ${opening.id}`, [opening, line, symmetry], check);
    problems.push(...found);
    const { curve } = line;
    if (curve && found.length === 0)
      openings[opening.id] = memory.recall(`plan of opening ${opening.id}`, [curve], () =>
        counterClockwise(curve),
      );
    else if (curve) unfit[openingKey(opening.id)] = curve;
  });
  return { plan, unfit, profiles, lowerEdges, transitions, openings, follows, problems };
}

function noteFollows(
  item: Item,
  line: DrawnLine,
  follows: Record<string, ResolvedLines["follows"][string]>,
): void {
  for (const element of planLineOf(item).elements) {
    if (element.kind === "node") continue;
    follows[`${item.id}/${element.id}`] = {
      itemId: element.edge.itemId,
      edgeIds: line.followed[element.id] ?? [],
      hand: element.edge.hand,
    };
  }
}

/** What is wrong with a line that compiles: an open outline, a closed fence, crossings, the wrong side. */
function checkDrawn(item: Item, line: DrawnLine, symmetry: Project["symmetry"]): readonly Problem[] {
  const owner = { name: nameOfItem(item), place: { itemId: item.id } };
  switch (item.kind) {
    case "section":
    case "plate":
      return checkLoop(item.outline.closed, line, owner, symmetry);
    case "fence":
      return item.line.closed
        ? [{ ...owner, kind: "fence-line-closed" }]
        : checkCourse(line, owner, symmetry);
    case "transition":
      return [];
    default:
      return assertNever(item);
  }
}

function checkLoop(
  closed: boolean,
  line: DrawnLine,
  owner: LineOwner,
  symmetry: Project["symmetry"],
): readonly Problem[] {
  if (closed) return checkCourse(line, owner, symmetry);
  return line.curve ? [{ ...owner, kind: "outline-open", gapMm: gapMm(line.curve) }] : [];
}

function checkCourse(
  { curve }: DrawnLine,
  owner: LineOwner,
  symmetry: Project["symmetry"],
): readonly Problem[] {
  if (!curve) return [];
  const crossings = findSelfCrossings(curve).slice(0, MOST_CROSSINGS_TOLD);
  return [
    ...crossings.map(
      ({ edgeIds, at: [x, y] }): Problem => ({
        ...owner,
        kind: "line-crosses-itself",
        edgeIds,
        at: { x, y },
      }),
    ),
    ...(symmetry === "mirrored" ? leftOfCentreLine(curve, owner) : []),
  ];
}

const gapMm = (curve: Curve): number =>
  distance2(startOfPiece(at(curve.pieces, 0)), endOfPiece(at(curve.pieces, -1)));

/** The place where a curve bulges farthest over the centre line between nodes that do not. */
function leftOfCentreLine(curve: Curve, owner: LineOwner): readonly Problem[] {
  let leastY = -ON_CENTRE_LINE_MM;
  let nodeId: string | undefined;
  for (const piece of curve.pieces) {
    for (const t of [0, ...extremeParameters(piece, [0, 1]), 1]) {
      const y = pointOnPiece(piece, t)[1];
      if (y >= leastY) continue;
      leastY = y;
      nodeId = piece.startNodeId ?? piece.endNodeId ?? piece.edgeId;
    }
  }
  if (nodeId === undefined) return [];
  return [{ kind: "left-of-centre-line", name: owner.name, place: { ...owner.place, nodeId }, yMm: leastY }];
}

/** A closed curve turned so that its area lies on its left; an open one as it is. */
function counterClockwise(curve: Curve): Curve {
  if (!curve.closed || signedAreaMm2(curve) >= 0) return curve;
  return reversed(curve);
}

const reversed = (curve: Curve): Curve =>
  toCurve([...curve.pieces].reverse().map(reversePiece), curve.closed);

/** Green's theorem: half the integral of x dy − y dx round the curve. */
function signedAreaMm2(curve: Curve): number {
  return curve.pieces.reduce((sum, piece) => {
    const rate = (t: number) => cross2(pointOnPiece(piece, t), derivativeOnPiece(piece, t)) / 2;
    return sum + gauss(rate, 0, 1);
  }, 0);
}

/** A curve, and what is wrong with it: one or the other. */
interface Compiled {
  readonly curve?: Curve;
  readonly problems: readonly Problem[];
}

/** A line of the side view as a curve with x rising; a problem where it cannot be one. */
function compileSide(nodes: readonly SideNode[], owner: LineOwner): Compiled {
  const compiled = compilePath(sidePath(nodes));
  if (!compiled.ok)
    return { problems: compiled.problems.map((problem) => fromPathProblem(problem, owner, "xz")) };
  const drawn = compiled.value;
  const rises = endOfPiece(at(drawn.pieces, -1))[0] >= startOfPiece(at(drawn.pieces, 0))[0];
  const curve = rises ? drawn : reversed(drawn);
  const fallback = fallbackOf(curve);
  if (!fallback) return { curve, problems: [] };
  const { nodeId, atXMm, fallbackMm } = fallback;
  const place = { ...owner.place, ...(nodeId === undefined ? {} : { nodeId }) };
  return { problems: [{ kind: "profile-falls-back", name: owner.name, place, atXMm, fallbackMm }] };
}

interface Fallback {
  readonly nodeId: string | undefined;
  readonly atXMm: number;
  readonly fallbackMm: number;
}

/** A straight rise at one x lower than this is no step: a tenth of the nearest anybody sands to. */
const LEAST_STEP_MM = 0.1;

/**
 * Where a curve in (x, z) falls farthest behind the greatest x before it, if by more than the profile may; or an
 * upright step, which is as little single-valued. The turning points inside pieces are looked at too.
 */
function fallbackOf(curve: Curve): Fallback | undefined {
  let greatestX = Number.NEGATIVE_INFINITY;
  let worst: Fallback | undefined;
  for (const piece of curve.pieces) {
    const nodeId = piece.startNodeId ?? piece.endNodeId;
    const start = startOfPiece(piece);
    const end = endOfPiece(piece);
    const isStep =
      piece.kind === "line" &&
      Math.abs(end[0] - start[0]) <= PROFILE_FALLBACK_MM &&
      Math.abs(end[1] - start[1]) >= LEAST_STEP_MM;
    if (isStep && worst === undefined) worst = { nodeId, atXMm: start[0], fallbackMm: 0 };
    for (const t of [0, ...extremeParameters(piece, [1, 0]), 1]) {
      const x = pointOnPiece(piece, t)[0];
      const fallbackMm = greatestX - x;
      if (fallbackMm > Math.max(PROFILE_FALLBACK_MM, worst?.fallbackMm ?? 0))
        worst = { nodeId, atXMm: x, fallbackMm };
      greatestX = Math.max(greatestX, x);
    }
  }
  return worst;
}
