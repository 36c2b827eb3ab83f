import type { PanelTask } from "../panels/index.ts";
import { taskOf, toMinutes } from "./task-of.ts";
import type { Task } from "./types.ts";

/** Panels as tasks: what is made on the bench, and what is bonded onto the finished skin. */
export interface PanelTasks {
  readonly making: readonly Task[];
  readonly bonding: readonly Task[];
}

/**
 * Panels on a bench of their own: they wait for nothing but their templates and foam, so that they cure while the tray is
 * glued. A face that is laid is not interrupted, nor a fence that is bonded on.
 */
export function panelTasks(panels: readonly PanelTask[], hands: number): PanelTasks {
  const own = panels.map((panel) => ({ panel, task: panelTask(panel, panels, hands) }));
  const isBond = ({ panel }: (typeof own)[number]) => panel.kind === "bond";
  return {
    making: own.filter((one) => !isBond(one)).map(({ task }) => task),
    bonding: own.filter(isBond).map(({ task }) => task),
  };
}

function panelTask(panel: PanelTask, all: readonly PanelTask[], hands: number): Task {
  const waits = panel.after.flatMap((id) =>
    all
      .filter((other) => other.id === id)
      .map((other) => ({ taskId: other.id, waitMinutes: toMinutes(other.cureHours) })),
  );
  return taskOf({
    id: panel.id,
    kind: "panel",
    title: panel.title,
    hands,
    workMinutes: panel.workMinutes,
    cureHours: panel.cureHours,
    after: waits.length > 0 ? waits : [{ taskId: "templates", waitMinutes: 0 }],
    pauses: panel.kind === "cut" ? "any time" : "never",
  });
}
