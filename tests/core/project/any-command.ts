import {
  applyCommand,
  type Command,
  copiesOf,
  cuttingOf,
  type LineRef,
  newFence,
  newOpening,
  newPlate,
  newProfile,
  newSection,
  newTransition,
  type Project,
  type SpaceNode,
  type ThingRef,
} from "../../../core/project/index.ts";
import { plan, rectangle, side } from "./small-projects.ts";

/** Gives numbers from 0 to below 1. */
type Dice = () => number;

/** Dice after Mulberry32 (Tommy Ettinger, 2017, public domain; from memory): the same seed gives the same throws. */
export function diceOf(seed: number): Dice {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** A command of any kind, mostly on what is in the document, so that most of them change something. */
export function anyCommand(project: Project, dice: Dice): Command {
  const kinds = Object.keys(MAKERS) as Command["kind"][];
  return MAKERS[pick(kinds, dice)]({ project, dice });
}

/** The documents that a run of any commands goes through, with the commands between them. */
export function anyRun(
  start: Project,
  count: number,
  dice: Dice,
): { readonly commands: readonly Command[]; readonly projects: readonly Project[] } {
  const commands: Command[] = [];
  const projects = [start];
  let now = start;
  while (commands.length < count) {
    const command = anyCommand(now, dice);
    now = applyCommand(now, command);
    commands.push(command);
    projects.push(now);
  }
  return { commands, projects };
}

interface Bench {
  readonly project: Project;
  readonly dice: Dice;
}
type Maker = (bench: Bench) => Command;

const pick = <T>(list: readonly T[], dice: Dice): T => {
  const chosen = list[Math.floor(dice() * list.length)];
  if (chosen === undefined) throw new Error("There is nothing to pick from.");
  return chosen;
};
const ODD = [0, 0.001, 1e9, Number.NaN, Number.NEGATIVE_INFINITY];
const number = (dice: Dice): number =>
  dice() < 0.05 ? pick(ODD, dice) : Math.round(dice() * 12_000 - 1000) / 10;
const newId = (dice: Dice): string => `x${Math.floor(dice() * 400)}`;
const orNone = (ids: readonly string[], dice: Dice): string => pick([...ids, "none"], dice);
const itemId = ({ project, dice }: Bench): string =>
  orNone(
    project.items.map(({ id }) => id),
    dice,
  );
const openingId = ({ project, dice }: Bench): string =>
  orNone(
    project.openings.map(({ id }) => id),
    dice,
  );
const profileId = ({ project, dice }: Bench): string =>
  orNone(
    project.profiles.map(({ id }) => id),
    dice,
  );

function linesOf(project: Project): readonly LineRef[] {
  return [
    ...project.items.flatMap(({ id, kind }): readonly LineRef[] => {
      if (kind === "fence")
        return [
          { of: "item", itemId: id },
          { of: "lower-edge", itemId: id },
        ];
      if (kind !== "transition") return [{ of: "item", itemId: id }];
      return [
        { of: "edge", itemId: id, side: "first", view: "plan" },
        { of: "edge", itemId: id, side: "second", view: "side" },
      ];
    }),
    ...project.profiles.map(({ id }): LineRef => ({ of: "profile", profileId: id })),
    ...project.openings.map(({ id }): LineRef => ({ of: "opening", openingId: id })),
    { of: "item", itemId: "none" },
  ];
}

/** The ids of the nodes and pieces on a line. */
function nodeIdsOf(project: Project, line: LineRef): readonly string[] {
  const idsOf = (list: readonly { readonly id: string }[] = []) => list.map(({ id }) => id);
  if (line.of === "profile") return idsOf(project.profiles.find(({ id }) => id === line.profileId)?.nodes);
  if (line.of === "opening")
    return idsOf(project.openings.find(({ id }) => id === line.openingId)?.outline.elements);
  const item = project.items.find(({ id }) => id === line.itemId);
  if (item?.kind === "fence")
    return line.of === "lower-edge" ? idsOf(item.lowerEdge.nodes) : idsOf(item.line.elements);
  if (item?.kind === "transition") {
    const edge = line.of === "edge" && line.side === "second" ? item.second : item.first;
    return edge.kind === "free" ? idsOf(edge.nodes) : [];
  }
  return idsOf(item?.outline.elements);
}

function nodeOf({ project, dice }: Bench): { readonly line: LineRef; readonly nodeId: string } {
  const line = pick(linesOf(project), dice);
  return { line, nodeId: orNone(nodeIdsOf(project, line), dice) };
}

const outline = (dice: Dice) => {
  const [x, y] = [number(dice), Math.abs(number(dice))];
  return rectangle(x, x + 200, y, y + 150);
};
const spaceNodes = (dice: Dice): readonly SpaceNode[] =>
  ["n1", "n2"].map((id) => ({ id, x: number(dice), y: number(dice), z: number(dice), next: "line" }));

const NAMES = ["", "Side", "Middle", "Rear piece", "Floor"];
const count = (dice: Dice): number => 1 + Math.floor(dice() * 9);

function thing(bench: Bench): ThingRef {
  return pick<ThingRef>(
    [
      { of: "item", itemId: itemId(bench) },
      { of: "opening", openingId: openingId(bench) },
      { of: "profile", profileId: profileId(bench) },
      { of: "underlay", underlayId: underlayId(bench) },
    ],
    bench.dice,
  );
}
const underlayId = ({ project, dice }: Bench): string =>
  orNone(
    project.underlays.map(({ id }) => id),
    dice,
  );
const noteId = ({ project, dice }: Bench): string =>
  orNone(
    project.notes.map(({ id }) => id),
    dice,
  );

const settings: Maker = ({ project, dice }) => ({
  kind: "change-settings",
  changes: pick(
    [
      { title: pick(NAMES, dice) },
      { symmetry: pick(["mirrored", "none"] as const, dice) },
      { skins: { ...project.skins, lowerMm: number(dice) } },
      { jig: { ...project.jig, leastHeightMm: number(dice) } },
      { jig: { ...project.jig, across: { kind: "typed", atMm: [number(dice), number(dice)] } } as const },
      { stock: project.stock.slice(1) },
      { paper: { ...project.paper, size: pick(["A4", "A3", "roll"] as const, dice) } },
    ],
    dice,
  ),
});

/** One maker for every kind there is; a new kind does not compile until it has its own. */
const MAKERS: { readonly [Kind in Command["kind"]]: Maker } = {
  "add-section": (bench) => ({
    kind: "add-section",
    section: newSection({
      id: newId(bench.dice),
      number: count(bench.dice),
      name: pick(NAMES, bench.dice),
      profileId: profileId(bench),
      elements: outline(bench.dice),
      closed: bench.dice() < 0.9,
    }),
  }),
  "add-fence": ({ dice }) => ({
    kind: "add-fence",
    fence: newFence({
      id: newId(dice),
      number: count(dice),
      name: pick(NAMES, dice),
      elements: outline(dice).slice(0, 2),
    }),
  }),
  "add-transition": ({ dice }) => ({
    kind: "add-transition",
    transition: newTransition({
      id: newId(dice),
      number: count(dice),
      name: pick(NAMES, dice),
      first: { kind: "free", nodes: spaceNodes(dice) },
      second: { kind: "free", nodes: spaceNodes(dice) },
    }),
  }),
  "add-plate": ({ dice }) => ({
    kind: "add-plate",
    plate: newPlate({
      id: newId(dice),
      number: count(dice),
      name: pick(NAMES, dice),
      elements: outline(dice),
      closed: true,
      zMm: number(dice),
    }),
  }),
  "add-opening": ({ dice }) => ({
    kind: "add-opening",
    opening: newOpening({
      id: newId(dice),
      number: count(dice),
      name: pick(NAMES, dice),
      elements: outline(dice),
      closed: true,
    }),
  }),
  "add-profile": ({ dice }) => ({
    kind: "add-profile",
    profile: newProfile({
      id: newId(dice),
      name: pick(NAMES, dice),
      nodes: [side("p", 0, number(dice)), side("q", 1000, number(dice))],
    }),
  }),
  "delete-item": (bench) => ({ kind: "delete-item", itemId: itemId(bench) }),
  "delete-opening": (bench) => ({ kind: "delete-opening", openingId: openingId(bench) }),
  "delete-profile": (bench) => ({ kind: "delete-profile", profileId: profileId(bench) }),
  "change-section": (bench) => ({
    kind: "change-section",
    itemId: itemId(bench),
    changes: pick(
      [{ tiltRad: number(bench.dice) / 1000 }, { name: pick(NAMES, bench.dice) }, { pivotYMm: undefined }],
      bench.dice,
    ),
  }),
  "change-fence": (bench) => ({
    kind: "change-fence",
    itemId: itemId(bench),
    changes: pick([{ seat: "core" }, { seat: "skin" }, { standsFirst: true }] as const, bench.dice),
  }),
  "change-transition": (bench) => ({
    kind: "change-transition",
    itemId: itemId(bench),
    changes: pick(
      [{ coreSide: "below" }, { rulings: "least strain" }, { rulings: undefined }] as const,
      bench.dice,
    ),
  }),
  "change-plate": (bench) => ({
    kind: "change-plate",
    itemId: itemId(bench),
    changes: { zMm: number(bench.dice) },
  }),
  "change-opening": (bench) => ({
    kind: "change-opening",
    openingId: openingId(bench),
    changes: pick([{ cut: "square" }, { cut: "upright" }] as const, bench.dice),
  }),
  "ease-edge": (bench) => ({
    kind: "ease-edge",
    itemId: itemId(bench),
    side: pick(["first", "second"] as const, bench.dice),
    nodes: spaceNodes(bench.dice),
  }),
  "rename-profile": (bench) => ({
    kind: "rename-profile",
    profileId: profileId(bench),
    name: pick(NAMES, bench.dice),
  }),
  "move-node": (bench) => ({
    kind: "move-node",
    ...nodeOf(bench),
    to: [number(bench.dice), number(bench.dice)],
  }),
  "move-nodes": (bench) => ({
    kind: "move-nodes",
    moves: [1, 2, 3].map(() => ({ ...nodeOf(bench), to: [number(bench.dice), number(bench.dice)] })),
  }),
  "change-node": (bench) => ({
    kind: "change-node",
    ...nodeOf(bench),
    changes: pick(
      [
        { next: "curve" },
        { next: "line" },
        { radiusMm: Math.abs(number(bench.dice)) },
        { meets: "corner", tangentInRad: 0.2 },
        { edgeName: "Front" },
      ] as const,
      bench.dice,
    ),
  }),
  "append-node": ({ project, dice }) => ({
    kind: "append-node",
    line: pick(linesOf(project), dice),
    node: pick(
      [
        plan(newId(dice), number(dice), number(dice)),
        side(newId(dice), number(dice), number(dice)),
        { id: newId(dice), x: number(dice), y: number(dice), z: number(dice), next: "line" },
      ] as const,
      dice,
    ),
  }),
  "split-segment": (bench) => {
    const { line, nodeId } = nodeOf(bench);
    return {
      kind: "split-segment",
      line,
      afterNodeId: nodeId,
      t: bench.dice(),
      newNodeId: newId(bench.dice),
    };
  },
  "delete-node": (bench) => ({ kind: "delete-node", ...nodeOf(bench) }),
  "close-outline": (bench) => ({ kind: "close-outline", itemId: itemId(bench) }),
  "follow-edge": (bench) => {
    const [own, other] = [itemId(bench), itemId(bench)];
    const idsOf = (id: string) => nodeIdsOf(bench.project, { of: "item", itemId: id });
    return {
      kind: "follow-edge",
      itemId: own,
      afterNodeId: orNone(idsOf(own), bench.dice),
      beforeNodeId: orNone(idsOf(own), bench.dice),
      edge: {
        itemId: other,
        fromNodeId: orNone(idsOf(other), bench.dice),
        toNodeId: orNone(idsOf(other), bench.dice),
        hand: pick(["right", "left"] as const, bench.dice),
      },
      direction: pick(["along", "against"] as const, bench.dice),
      newId: newId(bench.dice),
    };
  },
  "unfollow-edge": (bench) => {
    const own = itemId(bench);
    const ids = nodeIdsOf(bench.project, { of: "item", itemId: own });
    return { kind: "unfollow-edge", itemId: own, followId: orNone(ids, bench.dice) };
  },
  "add-note": (bench) => ({
    kind: "add-note",
    note: {
      id: newId(bench.dice),
      view: pick(["plan", "side"] as const, bench.dice),
      text: pick(NAMES, bench.dice),
      widthMm: 40,
      pin: { kind: "node", ...nodeOf(bench) },
      leader: { x: number(bench.dice), up: number(bench.dice) },
    },
  }),
  "change-note": (bench) => ({
    kind: "change-note",
    noteId: noteId(bench),
    changes: { text: pick(NAMES, bench.dice) },
  }),
  "delete-note": (bench) => ({ kind: "delete-note", noteId: noteId(bench) }),
  "add-underlay": ({ dice }) => ({
    kind: "add-underlay",
    underlay: {
      id: newId(dice),
      name: pick(NAMES, dice),
      view: "plan",
      picture: "data:image/png;base64,AA==",
      widthPx: 400,
      heightPx: 300,
      origin: { x: number(dice), up: number(dice) },
      mmPerPx: 2,
      turnRad: 0,
      opacity: 0.5,
    },
  }),
  "change-underlay": (bench) => ({
    kind: "change-underlay",
    underlayId: underlayId(bench),
    changes: { opacity: bench.dice() },
  }),
  "delete-underlay": (bench) => ({ kind: "delete-underlay", underlayId: underlayId(bench) }),
  "set-standing": (bench) => ({
    kind: "set-standing",
    things: [thing(bench), thing(bench)],
    standing: pick(["locked", "unlocked", "hidden", "shown"] as const, bench.dice),
  }),
  transform: (bench) => ({
    kind: "transform",
    grips: [nodeOf(bench), { line: nodeOf(bench).line }],
    motion: pick(
      [
        { kind: "move", byMm: { x: number(bench.dice), y: number(bench.dice), z: number(bench.dice) } },
        { kind: "turn", about: { x: 400, y: 200, z: 50 }, angleRad: bench.dice() },
        { kind: "scale", about: { x: 400, y: 200, z: 50 }, factor: 0.5 + bench.dice() },
        { kind: "mirror", across: "station", atMm: number(bench.dice) },
      ] as const,
      bench.dice,
    ),
  }),
  "add-copies": ({ project, dice }) => ({
    kind: "add-copies",
    copies: copiesOf(project, cuttingOf(project, [{ line: pick(linesOf(project), dice) }])),
  }),
  "offset-line": ({ project, dice }) => ({
    kind: "offset-line",
    line: pick(linesOf(project), dice),
    distanceMm: number(dice) / 20,
  }),
  "split-item": (bench) => {
    const own = itemId(bench);
    const ids = nodeIdsOf(bench.project, { of: "item", itemId: own });
    return {
      kind: "split-item",
      itemId: own,
      nodeIds: [orNone(ids, bench.dice), orNone(ids, bench.dice)],
      half: { id: newId(bench.dice), number: count(bench.dice), name: pick(NAMES, bench.dice) },
    };
  },
  "join-items": (bench) => ({ kind: "join-items", firstId: itemId(bench), secondId: itemId(bench) }),
  "change-settings": settings,
};
