import type { Vec2 } from "../../../core/foundation/index.ts";
import {
  applyCommand,
  emptyProject,
  newSection,
  type Project,
  planLineOf,
  resolveLines,
} from "../../../core/project/index.ts";
import { lengthsIn } from "../../../web/lengths/index.ts";
import {
  ALL_SNAPS,
  type DrawingView,
  type Hand,
  type Place,
  type Selection,
  sceneOf,
  type ToolContext,
  type ToolEvent,
  type ToolName,
  takeUp,
} from "../../../web/tools/index.ts";

/** One pixel is 2 mm, as on a board that shows a floor of 2 m. */
const MM_PER_PX = 2;

/** A tool in hand over a document, with all that it did: what a board does, without one. */
export interface Work {
  readonly hand: Hand;
  readonly project: Project;
  readonly selection: Selection | undefined;
  /** Documents that undo would go back to. */
  readonly past: readonly Project[];
  readonly isGestureOpen: boolean;
  /** Height of the surface over a place, as the board would know it. */
  readonly heightOver: ToolContext["heightOver"];
  readonly wingEdges: ToolContext["wingEdges"];
}

export const workWith = (tool: ToolName, project: Project, selection?: Selection): Work => ({
  hand: takeUp(tool),
  project,
  selection,
  past: [],
  isGestureOpen: false,
  heightOver: () => undefined,
  wingEdges: [],
});

export function contextOf(work: Work): ToolContext {
  return {
    project: work.project,
    scene: sceneOf(work.project, resolveLines(work.project)),
    selection: work.selection,
    hairlineXMm: 5000,
    snaps: ALL_SNAPS,
    lengths: lengthsIn("mm"),
    heightOver: work.heightOver,
    wingEdges: work.wingEdges,
  };
}

export function hear(work: Work, ...events: readonly ToolEvent[]): Work {
  return events.reduce(hearOne, work);
}

function hearOne(work: Work, event: ToolEvent): Work {
  const { hand, step } = work.hand.hear(event, contextOf(work));
  const before = work.past.at(-1);
  const isTakenBack = step.gesture === "abandoned" && work.isGestureOpen && before !== undefined;
  const start = isTakenBack ? { project: before, past: work.past.slice(0, -1) } : work;
  const project = step.commands.reduce(applyCommand, start.project);
  const isNewStep = project !== start.project && !(work.isGestureOpen && !isTakenBack);
  return {
    ...work,
    hand,
    project,
    past: isNewStep ? [...start.past, start.project] : start.past,
    selection: step.selection === undefined ? work.selection : (step.selection ?? undefined),
    isGestureOpen: step.gesture === "open",
  };
}

export const place = (at: Vec2, view: DrawingView = "plan", snaps = true): Place => ({
  view,
  at,
  mmPerPx: [MM_PER_PX, MM_PER_PX],
  reachPx: 10,
  snaps,
});

export const press = (at: Vec2, view?: DrawingView): ToolEvent => ({ kind: "press", place: place(at, view) });
export const move = (at: Vec2, view?: DrawingView, snaps = true): ToolEvent => ({
  kind: "move",
  place: place(at, view, snaps),
});
export const release = (at: Vec2, view?: DrawingView): ToolEvent => ({
  kind: "release",
  place: place(at, view),
});
export const click = (at: Vec2, view?: DrawingView): readonly ToolEvent[] => [
  press(at, view),
  release(at, view),
];
export const CANCEL: ToolEvent = { kind: "cancel" };
export const FINISH: ToolEvent = { kind: "finish" };

/** A mirrored tray with nothing drawn. */
export const emptyTray = (): Project => emptyProject({ id: "tray", title: "Tray", issuedOn: "2026-11-25" });

/** A rectangle of 1000 by 300 mm at y = 100, flat at z = 60 from x = −100 to 1100. */
export function trayWithSection(): Project {
  const corners: readonly Vec2[] = [
    [0, 100],
    [1000, 100],
    [1000, 400],
    [0, 400],
  ];
  return applyCommand(emptyTray(), {
    kind: "add-section",
    section: newSection({
      id: "s1",
      number: 1,
      name: "Floor",
      profileId: "p1",
      closed: true,
      elements: corners.map(([x, y], index) => ({ kind: "node", id: `n${index + 1}`, x, y, next: "line" })),
    }),
    profile: {
      id: "p1",
      name: "Flat",
      nodes: [
        { kind: "node", id: "n1", x: -100, z: 60, next: "line" },
        { kind: "node", id: "n2", x: 1100, z: 60, next: "line" },
      ],
    },
  });
}

/** Where the nodes of an item's line in plan lie. */
export function nodesOf(project: Project, itemId: string): readonly Vec2[] {
  const item = project.items.find((other) => other.id === itemId);
  if (!item) return [];
  const { elements } = planLineOf(item);
  return elements.flatMap((element): readonly Vec2[] =>
    element.kind === "node" ? [[element.x, element.y]] : [],
  );
}
