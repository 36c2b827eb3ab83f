import { ON_CENTRE_LINE_MM, type Vec2 } from "../foundation/index.ts";
import type { Grip, NodeMove } from "./command-types.ts";
import { editItem, editOpening, editProfile, planLineOf, withPlanLine } from "./edit-lines.ts";
import { type Motion, moveInPlan, moveInSide, stretchOf, turnedBy } from "./motion.ts";
import { moveNodes } from "./move-nodes.ts";
import { ownerKey } from "./owner-key.ts";
import type { Fence, Item, LineRef, PlanElement, Plate, Project, SideNode, Wing } from "./schema.ts";

/**
 * The document with things moved, turned, scaled or mirrored. Of a whole item or opening every node goes, with its
 * radii, typed tangents, wings and pivot; a fence's lower edge keeps standing under its line. A profile goes only
 * where it is named itself. Pieces that follow an edge stay with that edge. Of a node that is named alone only the
 * place changes.
 */
export function transformThings(project: Project, grips: readonly Grip[], motion: Motion): Project {
  const wholes = wholesOf(project, grips);
  const single = grips.flatMap(({ line, nodeId }) =>
    nodeId === undefined || wholes.has(ownerKey(line)) ? [] : movesOf(project, line, motion, nodeId),
  );
  const lines = [...wholes.values()].flatMap((line) => linesOf(project, line));
  const moved = moveNodes(project, [...single, ...lines.flatMap((line) => movesOf(project, line, motion))]);
  return [...wholes.values()].reduce((done, line) => transformRest(done, line, project, motion), moved);
}

/**
 * How far left of the centre line the things would come to lie, mm; zero where they do not, or where nothing is
 * mirrored. Only what lay on the right is looked at.
 */
export function leftOfCentreMm(project: Project, grips: readonly Grip[], motion: Motion): number {
  if (project.symmetry !== "mirrored") return 0;
  const wholes = wholesOf(project, grips);
  const lines = [
    ...[...wholes.values()].flatMap((line) => linesOf(project, line).map((one): Grip => ({ line: one }))),
    ...grips.filter(({ line, nodeId }) => nodeId !== undefined && !wholes.has(ownerKey(line))),
  ];
  const ys = lines.flatMap(({ line, nodeId }) =>
    placesOf(project, line).flatMap((node) => {
      const isAsked = node.view === "plan" && (nodeId === undefined || node.id === nodeId);
      return isAsked ? [moveInPlan(node.at, motion)[1]] : [];
    }),
  );
  const leastMm = Math.min(0, ...ys);
  return leastMm < -ON_CENTRE_LINE_MM ? -leastMm : 0;
}

/** The named wholes by key. */
function wholesOf(project: Project, grips: readonly Grip[]): ReadonlyMap<string, LineRef> {
  const isThere = (line: LineRef) =>
    line.of === "profile"
      ? project.profiles.some(({ id }) => id === line.profileId)
      : line.of === "opening"
        ? project.openings.some(({ id }) => id === line.openingId)
        : project.items.some(({ id }) => id === line.itemId);
  return new Map(
    grips.flatMap(({ line, nodeId }) =>
      nodeId === undefined && isThere(line) ? [[ownerKey(line), line] as const] : [],
    ),
  );
}

/** The lines of a whole whose nodes go along; a fence's lower edge is seen to with the rest of the fence. */
function linesOf(project: Project, line: LineRef): readonly LineRef[] {
  if (line.of === "profile" || line.of === "opening") return [line];
  const item = project.items.find(({ id }) => id === line.itemId);
  if (item?.kind !== "transition") return [{ of: "item", itemId: line.itemId }];
  return (["first", "second"] as const).flatMap((side) =>
    (["plan", "side"] as const).map((view): LineRef => ({ of: "edge", itemId: item.id, side, view })),
  );
}

interface NodePlace {
  readonly id: string;
  readonly view: "plan" | "side";
  readonly at: Vec2;
}

function placesOf(project: Project, line: LineRef): readonly NodePlace[] {
  if (line.of === "profile")
    return (project.profiles.find(({ id }) => id === line.profileId)?.nodes ?? []).map(inSide);
  if (line.of === "opening")
    return inPlan(project.openings.find(({ id }) => id === line.openingId)?.outline.elements ?? []);
  const item = project.items.find(({ id }) => id === line.itemId);
  if (!item) return [];
  if (line.of === "item") return inPlan(planLineOf(item).elements);
  if (line.of === "lower-edge")
    return item.kind === "fence" && item.lowerEdge.kind === "heights" ? item.lowerEdge.nodes.map(inSide) : [];
  const edge = item.kind === "transition" ? item[line.side] : undefined;
  if (edge?.kind !== "free") return [];
  return edge.nodes.map(({ id, x, y, z }) =>
    line.view === "plan" ? { id, view: "plan", at: [x, y] } : { id, view: "side", at: [x, z] },
  );
}

const inSide = ({ id, x, z }: SideNode): NodePlace => ({ id, view: "side", at: [x, z] });
const inPlan = (elements: readonly PlanElement[]): readonly NodePlace[] =>
  elements.flatMap((element): readonly NodePlace[] =>
    element.kind === "node" ? [{ id: element.id, view: "plan", at: [element.x, element.y] }] : [],
  );

function movesOf(project: Project, line: LineRef, motion: Motion, nodeId?: string): readonly NodeMove[] {
  const inX = xOfEdgeInPlan(project, line, motion);
  return placesOf(project, line).flatMap(({ id, view, at }): readonly NodeMove[] => {
    if (nodeId !== undefined && id !== nodeId) return [];
    if (view === "plan") return [{ line, nodeId: id, to: moveInPlan(at, motion) }];
    const [x, z] = moveInSide(at, motion);
    return [{ line, nodeId: id, to: [inX?.(id) ?? x, z] }];
  });
}

/** Where the nodes of a free edge come to lie in x: what the plan says, which the side view follows. */
function xOfEdgeInPlan(
  project: Project,
  line: LineRef,
  motion: Motion,
): ((nodeId: string) => number | undefined) | undefined {
  if (line.of !== "edge") return undefined;
  const places = placesOf(project, { ...line, view: "plan" });
  const xs = new Map(places.map(({ id, at }) => [id, moveInPlan(at, motion)[0]]));
  return (nodeId) => xs.get(nodeId);
}

/** What goes with the nodes of a whole: radii, tangents, lower edge, wings, pivot and heights. */
function transformRest(done: Project, line: LineRef, before: Project, motion: Motion): Project {
  if (line.of === "profile")
    return withBendsOfProfile(
      editProfile(done, line.profileId, (profile) => {
        const nodes = mapKept(profile.nodes, (node) => withOwnAngles(node, motion, sideDirection));
        return nodes === profile.nodes ? profile : { ...profile, nodes };
      }),
      line.profileId,
      motion,
    );
  if (line.of === "opening")
    return editOpening(done, line.openingId, (opening) => {
      const elements = mapKept(opening.outline.elements, (element) => withAngles(element, motion));
      return elements === opening.outline.elements
        ? opening
        : { ...opening, outline: { ...opening.outline, elements } };
    });
  const old = before.items.find(({ id }) => id === line.itemId);
  return old === undefined ? done : editItem(done, line.itemId, (item) => transformItem(item, old, motion));
}

/** The bends that sections have chosen a method for go with their profile. */
function withBendsOfProfile(done: Project, profileId: string, motion: Motion): Project {
  const items = mapKept(done.items, (item): Item => {
    if (item.kind !== "section" || item.profileId !== profileId || !item.bends) return item;
    const bends = item.bends.map((bend) => ({ ...bend, atMm: moveInSide([bend.atMm, 0], motion)[0] }));
    return { ...item, bends };
  });
  return items === done.items ? done : { ...done, items };
}

function transformItem(item: Item, old: Item, motion: Motion): Item {
  const line = planLineOf(item);
  const elements = mapKept(line.elements, (element) => withAngles(element, motion));
  const angled = elements === line.elements ? item : withPlanLine(item, { ...line, elements });
  switch (angled.kind) {
    case "section":
      return {
        ...angled,
        ...(angled.pivotYMm === undefined ? {} : { pivotYMm: moveInPlan([0, angled.pivotYMm], motion)[1] }),
        ...(motion.kind === "mirror" ? { headingRad: 0 - angled.headingRad } : {}),
        ...(motion.kind === "mirror" && motion.across === "lengthwise"
          ? { tiltRad: 0 - angled.tiltRad }
          : {}),
      };
    case "fence":
      return {
        ...angled,
        lowerEdge: lowerEdgeOf(angled, old.kind === "fence" ? old : angled, motion),
        ...(angled.bends && {
          bends: angled.bends.map((bend) => ({ ...bend, atMm: bend.atMm * stretchOf(motion) })),
        }),
      };
    case "plate":
      return transformPlate(angled, motion);
    case "transition":
      return motion.kind === "scale" ? withScaledRadii(angled, stretchOf(motion)) : angled;
  }
}

/** The lower edge of a fence whose line has changed: under the same shares of its extent in x as before. */
export const lowerEdgeUnderLine = (fence: Fence, old: Fence): Fence["lowerEdge"] =>
  lowerEdgeOf(fence, old, { kind: "turn", about: { x: 0, y: 0 }, angleRad: 0 });

/** The lower edge stands under the same shares of its line's extent in x as before, at the same heights. */
function lowerEdgeOf(fence: Fence, old: Fence, motion: Motion): Fence["lowerEdge"] {
  const edge = fence.lowerEdge;
  if (edge.kind === "depths") {
    const factor = stretchOf(motion);
    if (factor === 1) return edge;
    return { ...edge, nodes: edge.nodes.map((node) => ({ ...node, alongMm: node.alongMm * factor })) };
  }
  const byMm = motion.kind === "move" ? motion.byMm.z : 0;
  const ends = endsInX(old);
  const newEnds = endsInX(fence);
  if (!ends || !newEnds) return edge;
  const span = ends[1] - ends[0];
  const toX = (x: number) =>
    motion.kind === "move"
      ? x + newEnds[0] - ends[0]
      : span === 0
        ? x + newEnds[0] - ends[0]
        : newEnds[0] + ((x - ends[0]) * (newEnds[1] - newEnds[0])) / span;
  const isTurnedBack = (newEnds[1] - newEnds[0]) * span < 0;
  const stretch = span === 0 ? 1 : Math.abs((newEnds[1] - newEnds[0]) / span);
  return {
    ...edge,
    nodes: edge.nodes.map((node) =>
      withSideAngles({ ...node, x: toX(node.x), z: node.z + byMm }, isTurnedBack, stretch),
    ),
  };
}

function endsInX(fence: Fence): readonly [number, number] | undefined {
  const { elements } = fence.line;
  const [first, last] = [elements[0], elements.at(-1)];
  return first?.kind === "node" && last?.kind === "node" ? [first.x, last.x] : undefined;
}

/** Typed directions of a lower edge that is turned back in x or drawn out along it. */
function withSideAngles(node: SideNode, isTurnedBack: boolean, stretch: number): SideNode {
  if (!isTurnedBack && Math.abs(stretch - 1) < 1e-12) return node;
  const { knotSpacingMm, ...rest } = node;
  return changedAngles(rest, (angleRad) =>
    Math.atan2(Math.sin(angleRad), Math.cos(angleRad) * stretch * (isTurnedBack ? -1 : 1)),
  );
}

function transformPlate(plate: Plate, motion: Motion): Plate {
  const factor = stretchOf(motion);
  const byMm = motion.kind === "move" ? motion.byMm.z : 0;
  const isMirrored = motion.kind === "mirror";
  if (factor === 1 && byMm === 0 && !isMirrored) return plate;
  const wings = plate.wings.map((wing) => {
    const sized: Wing = {
      ...wing,
      lengthMm: wing.lengthMm * factor,
      startInsetMm: wing.startInsetMm * factor,
      endInsetMm: wing.endInsetMm * factor,
    };
    // An outline runs counter-clockwise however it was drawn: a mirrored edge runs the other way.
    return isMirrored
      ? {
          ...sized,
          startInsetMm: sized.endInsetMm,
          endInsetMm: sized.startInsetMm,
          startTaperRad: sized.endTaperRad,
          endTaperRad: sized.startTaperRad,
        }
      : sized;
  });
  return { ...plate, zMm: plate.zMm + byMm, wings };
}

function withScaledRadii(item: Extract<Item, { kind: "transition" }>, factor: number): Item {
  const scaled = (edge: typeof item.first): typeof item.first =>
    edge.kind === "free"
      ? {
          ...edge,
          nodes: edge.nodes.map((node) =>
            node.radiusMm === undefined ? node : { ...node, radiusMm: node.radiusMm * factor },
          ),
        }
      : edge;
  return { ...item, first: scaled(item.first), second: scaled(item.second) };
}

const withAngles = (element: PlanElement, motion: Motion): PlanElement =>
  element.kind === "node" ? withOwnAngles(element, motion, turnedBy) : element;

/** Directions of the side view change only where it is mirrored in x. */
const sideDirection = (angleRad: number, motion: Motion): number =>
  motion.kind === "mirror" && motion.across === "station" ? Math.PI - angleRad : angleRad;

interface Angled {
  readonly radiusMm?: number;
  readonly tangentInRad?: number;
  readonly tangentOutRad?: number;
}

function withOwnAngles<T extends Angled>(
  node: T,
  motion: Motion,
  turn: (angleRad: number, motion: Motion) => number,
): T {
  const factor = stretchOf(motion);
  const sized =
    factor === 1 || node.radiusMm === undefined ? node : { ...node, radiusMm: node.radiusMm * factor };
  return motion.kind === "move" || motion.kind === "scale"
    ? sized
    : changedAngles(sized, (angleRad) => turn(angleRad, motion));
}

/** Typed directions within a turn either way, as they can be typed. */
function changedAngles<T extends Angled>(node: T, change: (angleRad: number) => number): T {
  if (node.tangentInRad === undefined && node.tangentOutRad === undefined) return node;
  const within = (angleRad: number) => {
    const changed = change(angleRad);
    return Math.atan2(Math.sin(changed), Math.cos(changed));
  };
  return {
    ...node,
    ...(node.tangentInRad === undefined ? {} : { tangentInRad: within(node.tangentInRad) }),
    ...(node.tangentOutRad === undefined ? {} : { tangentOutRad: within(node.tangentOutRad) }),
  };
}

function mapKept<T>(list: readonly T[], change: (entry: T) => T): readonly T[] {
  const changed = list.map(change);
  return changed.some((entry, index) => entry !== list[index]) ? changed : list;
}
