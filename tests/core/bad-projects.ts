import {
  emptyProject,
  type Fence,
  newFence,
  newSection,
  type PlanNode,
  type Profile,
  type Project,
  type Section,
  type SideNode,
} from "../../core/project/index.ts";

/** Something wrong, drawn beside a good section: what must be named, and as what. */
export interface BadCase {
  readonly title: string;
  /** The id of the item, profile or setting that the problem must lead to. */
  readonly leadsTo: string;
  readonly kinds: readonly string[];
  readonly project: Project;
}

/** A good flat section of 600 × 300 mm, S1, with a flat profile. Every bad case adds to it and leaves it alone. */
export function goodProject(): Project {
  const empty = emptyProject({ id: "bad-input", title: "Bad input", issuedOn: "2026-01-01" });
  return {
    ...empty,
    profiles: [profile("level", [side("a", 0, 80), side("b", 600, 80)])],
    items: [section("good", 1, rectangle(0, 600, 100, 400))],
  };
}

/** Everything that a slip of the hand, or a broken file, can put into a project. */
export function badCases(): readonly BadCase[] {
  const good = goodProject();
  const withItem = (item: Section | Fence): Project => ({ ...good, items: [...good.items, item] });
  const withProfile = (id: string, nodes: readonly SideNode[]): Project => ({
    ...withItem(section("bad", 2, rectangle(0, 600, 500, 700), { profileId: id })),
    profiles: [...good.profiles, profile(id, nodes)],
  });
  const bad = (elements: readonly PlanNode[], changes: Partial<Section> = {}) =>
    withItem(section("bad", 2, elements, changes));
  const far = rectangle(0, 600, 500, 700);

  return [
    {
      title: "an open outline",
      leadsTo: "bad",
      kinds: ["outline-open"],
      project: bad(far, { outline: { closed: false, elements: far } }),
    },
    {
      title: "a crossing outline",
      leadsTo: "bad",
      kinds: ["line-crosses-itself"],
      project: bad([plan("a", 0, 500), plan("b", 600, 700), plan("c", 600, 500), plan("d", 0, 700)]),
    },
    {
      title: "fewer than three nodes",
      leadsTo: "bad",
      kinds: ["too-few-nodes"],
      project: bad(far.slice(0, 2)),
    },
    {
      title: "a segment of no length",
      leadsTo: "bad",
      kinds: ["zero-length-segment"],
      project: bad([...far.slice(0, 2), plan("twin", 600, 700), ...far.slice(2)]),
    },
    {
      title: "a radius that does not fit",
      leadsTo: "bad",
      kinds: ["radius-does-not-fit"],
      project: bad(far.map((node, index) => (index === 0 ? { ...node, radiusMm: 5000 } : node))),
    },
    {
      title: "a profile shorter than the outline",
      leadsTo: "bad",
      kinds: ["profile-too-short"],
      project: withProfile("short", [side("a", 0, 80), side("b", 400, 80)]),
    },
    {
      title: "a profile that runs back",
      leadsTo: "falls-back",
      kinds: ["profile-falls-back"],
      project: withProfile("falls-back", [
        side("a", 0, 80),
        side("b", 400, 80),
        side("c", 300, 120),
        side("d", 600, 130),
      ]),
    },
    {
      title: "a fence that leaves its section",
      leadsTo: "bad",
      kinds: ["fence-without-sheet"],
      project: withItem(fence("bad", [plan("a", 100, 250), plan("b", 900, 250)])),
    },
    ...[0, -10, Number.POSITIVE_INFINITY, Number.NaN, 1e9].map((thicknessMm) => ({
      title: `foam of thickness ${thicknessMm}`,
      leadsTo: "bad",
      kinds: ["number-out-of-range"],
      project: bad(far, { core: { foamId: "xps", thicknessMm } }),
    })),
    ...[0, -1250, Number.NaN].map((lengthMm) => ({
      title: `stock of length ${lengthMm}`,
      leadsTo: "stock",
      kinds: ["number-out-of-range"],
      project: {
        ...good,
        stock: [...good.stock, { id: "odd", foamId: "xps", thicknessMm: 25, lengthMm, widthMm: 600 }],
      },
    })),
    ...[Number.NaN, 1e9, -1e9, Number.POSITIVE_INFINITY].map((x) => ({
      title: `a node at x ${x}`,
      leadsTo: "bad",
      kinds: ["number-out-of-range"],
      project: bad(far.map((node, index) => (index === 1 ? { ...node, x } : node))),
    })),
    {
      title: "a profile that is not there",
      leadsTo: "bad",
      kinds: ["unknown-reference"],
      project: bad(far, { profileId: "nowhere" }),
    },
    {
      title: "an outline left of the centre line",
      leadsTo: "bad",
      kinds: ["left-of-centre-line"],
      project: bad(rectangle(0, 600, -700, -500)),
    },
  ];
}

/** A section of 2,000 nodes beside the good one: much, but nothing wrong. */
export function manyNodes(): Project {
  const good = goodProject();
  const nodes = Array.from({ length: 2000 }, (_, index) => {
    const angle = (2 * Math.PI * index) / 2000;
    return plan(`n${index}`, 300 + 250 * Math.cos(angle), 700 + 150 * Math.sin(angle));
  });
  return { ...good, items: [...good.items, section("many", 2, nodes)] };
}

const plan = (id: string, x: number, y: number): PlanNode => ({ kind: "node", id, x, y, next: "line" });
const side = (id: string, x: number, z: number): SideNode => ({ kind: "node", id, x, z, next: "line" });
const profile = (id: string, nodes: readonly SideNode[]): Profile => ({ id, name: `Profile ${id}`, nodes });

function rectangle(fromX: number, toX: number, fromY: number, toY: number): readonly PlanNode[] {
  return [plan("a", fromX, fromY), plan("b", toX, fromY), plan("c", toX, toY), plan("d", fromX, toY)];
}

function section(
  id: string,
  number: number,
  elements: readonly PlanNode[],
  changes: Partial<Section> = {},
): Section {
  const base = newSection({ id, number, name: `The ${id} one`, profileId: "level", elements, closed: true });
  return { ...base, ...changes };
}

const fence = (id: string, elements: readonly PlanNode[]): Fence =>
  newFence({ id, number: 1, name: `The ${id} one`, elements });
