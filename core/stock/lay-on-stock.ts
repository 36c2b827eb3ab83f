import { type Memory, NO_MEMORY, type Problem, type ProblemPlace } from "../foundation/index.ts";
import { allRibs } from "../jig/index.ts";
import { type Layout, type LayoutFault, type PackingProblem, packWithin } from "../packing/index.ts";
import type { AcceptedLayout, Project } from "../project/index.ts";
import { type GroupSketch, gatherGroups, type Pieces, sketchGroups } from "./gather-groups.ts";
import { judgeLayout, unlaidGroup } from "./laid-group.ts";
import type { LaidGroup, StockGroup } from "./types.ts";

/** Which piece lies on which sheet, and what is wrong with that. */
export interface StockPlan {
  readonly groups: readonly LaidGroup[];
  readonly problems: readonly Problem[];
}

/** Seed and length of a run that nobody watches: the same on every machine, a few seconds for a whole tray. */
const SEED = 1;
const SWEEPS = 1500;

/**
 * Every group with the layout that the builder accepted for it; nothing is searched here. A layout that was made for
 * other pieces or other stock is out of date: it is said, and not shown in place of a true one. Problems:
 * layout-out-of-date, pieces-collide, piece-off-sheet, piece-without-stock.
 */
export function acceptedPlan(pieces: Pieces, project: Project, memory: Memory = NO_MEMORY): StockPlan {
  const from = [
    ...pieces.strips,
    pieces.panels,
    ...allRibs(pieces.jig),
    ...GATHERING_GROUND.map((field) => project[field]),
  ];
  return joined(
    sketchGroups(pieces, project).map((sketch) =>
      project.layouts.some(({ groupId }) => groupId === sketch.id)
        ? acceptedGroup(memory.recall(`stock of ${sketch.id}`, from, sketch.gather), project)
        : { laid: unlaidSketch(sketch), problems: [] },
    ),
  );
}

/**
 * The same, and groups that have no accepted layout of their own are laid now, from a fixed seed with a fixed number of
 * steps. For runs without a builder: it takes seconds.
 */
export function laidPlan(pieces: Pieces, project: Project): StockPlan {
  return joined(
    gatherGroups(pieces, project).map((group) => {
      const accepted = acceptedGroup(group, project);
      if (accepted.laid.standing === "accepted") return accepted;
      const layout = packWithin(lockedProblem(group, project), SEED, { kind: "sweeps", sweeps: SWEEPS });
      if (layout === undefined) return accepted;
      const own = judged(group, layout, "laid here", new Set());
      return { laid: own.laid, problems: [...accepted.problems, ...own.problems] };
    }),
  );
}

/** What a group made ready follows from, besides strips and ribs. */
const GATHERING_GROUND = ["stock", "laying", "cutting", "materials", "jig"] as const;

const unlaidSketch = ({ id, name, pieceIds }: GroupSketch): LaidGroup =>
  unlaidGroup({ id, name, pieceIds }, "not laid");

const joined = (groups: readonly LaidWithProblems[]): StockPlan => ({
  groups: groups.map(({ laid }) => laid),
  problems: groups.flatMap(({ problems }) => problems),
});

interface LaidWithProblems {
  readonly laid: LaidGroup;
  readonly problems: readonly Problem[];
}

function acceptedGroup(group: StockGroup, project: Project): LaidWithProblems {
  const layout = project.layouts.find(({ groupId }) => groupId === group.id);
  if (layout === undefined) return { laid: unlaidGroup(sketched(group), "not laid"), problems: [] };
  if (layout.fingerprint !== group.fingerprint) {
    const problem: Problem = {
      kind: "layout-out-of-date",
      place: { setting: layoutSetting(group.id) },
      name: group.name,
    };
    return { laid: unlaidGroup(sketched(group), "out of date"), problems: [problem] };
  }
  const locked = new Set(
    layout.pieces.flatMap(({ pieceId, locked: isLocked }) => (isLocked ? [pieceId] : [])),
  );
  return judged(group, layoutOfAccepted(group, layout), "accepted", locked);
}

const sketched = ({ id, name, problem }: StockGroup) => ({
  id,
  name,
  pieceIds: problem.pieces.map((piece) => piece.id),
});

/** An accepted layout as the packing knows it; pieces that it leaves out are named as without a place. */
function layoutOfAccepted({ problem }: StockGroup, { sheets, pieces }: AcceptedLayout): Layout {
  const placed = new Set(pieces.map(({ pieceId }) => pieceId));
  return {
    sheets: sheets.map(({ stockId, lengthMm, widthMm }) => ({
      sizeId: stockId,
      lengthMm,
      widthMm,
      usedMm: lengthMm,
    })),
    placements: pieces.map(({ pieceId, sheet, angleRad, x, y }) => ({ pieceId, sheet, angleRad, x, y })),
    unplaced: problem.pieces.flatMap(({ id }) =>
      placed.has(id) ? [] : [{ pieceId: id, why: "stock-full" as const }],
    ),
  };
}

function judged(
  group: StockGroup,
  layout: Layout,
  standing: "accepted" | "laid here",
  locked: ReadonlySet<string>,
): LaidWithProblems {
  const { laid, faults } = judgeLayout(group, layout, standing, locked);
  const place = { setting: layoutSetting(group.id) };
  const left = laid.unplaced.map(
    (name): Problem => ({ kind: "piece-without-stock", place, name, stockName: group.name }),
  );
  return { laid, problems: [...left, ...faults.flatMap((fault) => problemOf(fault, group))] };
}

function problemOf(fault: LayoutFault, group: StockGroup): readonly Problem[] {
  const place = { setting: layoutSetting(group.id) };
  switch (fault.kind) {
    case "overlap":
    case "too-near": {
      const [name, otherName] = fault.pieceIds;
      const gapMm = fault.kind === "too-near" ? fault.gapMm : 0;
      return [
        { kind: "pieces-collide", place, name, otherName, gapMm, clearanceMm: group.problem.clearanceMm },
      ];
    }
    case "off-sheet":
      return [{ kind: "piece-off-sheet", place, name: fault.pieceId, stockName: group.name }];
    case "angle-not-allowed":
    case "twice":
      return [{ kind: "layout-out-of-date", place, name: group.name }];
    case "missing":
    case "unknown":
      return [];
  }
}

/** Where the layout of a group is shown. */
export const layoutSetting = (groupId: string): string => `layouts.${groupId}`;

/** Whether a problem is one of a layout. */
export const isAboutLayout = ({ setting }: ProblemPlace): boolean => setting?.startsWith("layouts.") ?? false;

/** What a new search is given: the group's pieces, those that the builder locked held where they lie. */
export function lockedProblem({ id, problem }: StockGroup, project: Project): PackingProblem {
  const layout = project.layouts.find(({ groupId }) => groupId === id);
  const locks = new Map(
    layout?.pieces.flatMap((piece) => (piece.locked ? [[piece.pieceId, piece] as const] : [])),
  );
  return {
    ...problem,
    pieces: problem.pieces.map((piece) => {
      const lock = locks.get(piece.id);
      if (lock === undefined) return piece;
      const { sheet, angleRad, x, y } = lock;
      return { ...piece, lockedAt: { sheet, angleRad, x, y } };
    }),
  };
}

/** A found layout in the form in which it is accepted into the document; locks stay. */
export function toAccepted(group: StockGroup, layout: Layout, project: Project): AcceptedLayout {
  const before = project.layouts.find(({ groupId }) => groupId === group.id);
  const locked = new Set(
    before?.pieces.flatMap(({ pieceId, locked: isLocked }) => (isLocked ? [pieceId] : [])),
  );
  return {
    groupId: group.id,
    fingerprint: group.fingerprint,
    sheets: layout.sheets.map(({ sizeId, lengthMm, widthMm }) => ({
      stockId: sizeId ?? "",
      lengthMm,
      widthMm,
    })),
    pieces: layout.placements.map((placement) =>
      locked.has(placement.pieceId) ? { ...placement, locked: true } : placement,
    ),
  };
}
