import type { Panel, PanelBond, PanelTask } from "./types.ts";

/** Minutes of one pair of hands (common practice): to cut and make ready a sheet of foam, and to saw, sand and seal. */
const MINUTES = { ready: 20, readyPerM2: 12, turn: 10, sawPerM: 12, sealPerM: 4, clean: 20 } as const;

/**
 * Panels as tasks for a calendar: each face is laid in one go on the cured one before; the fences are sawn and sealed when the
 * second has cured; they are bonded on together, which waits besides for the finished skin. None where a panel cannot be laid.
 */
export function panelTasks(
  panels: readonly Panel[],
  bonds: readonly PanelBond[],
  hands: number,
): readonly PanelTask[] {
  if (panels.some(({ faces }) => faces.some(({ cards }) => cards.length === 0))) return [];
  const making = panels.flatMap((panel) => tasksOf(panel, hands));
  const cuts = making.filter(({ kind }) => kind === "cut").map(({ id }) => id);
  const cureHours = Math.max(0, ...panels.map(({ curedHours }) => curedHours));
  if (bonds.length === 0) return making;
  return [
    ...making,
    {
      id: "panel bond",
      kind: "bond",
      title: `Bond ${bonds.map(({ partId }) => partId).join(", ")} onto the finished skin`,
      after: cuts,
      workMinutes: bonds.reduce<number>((sum, one) => sum + one.workMinutes, MINUTES.clean),
      cureHours,
    },
  ];
}

function tasksOf(panel: Panel, hands: number): readonly PanelTask[] {
  const { id, lengthMm, widthMm, faces, sawMm, sealMm, curedHours, pieces } = panel;
  const readyMinutes = (MINUTES.ready + ((lengthMm * widthMm) / 1e6) * MINUTES.readyPerM2) / hands;
  const [first, second] = faces;
  const cutMinutes = ((sawMm / 1000) * MINUTES.sawPerM + (sealMm / 1000) * MINUTES.sealPerM) / hands;
  return [
    {
      id: `${id} first face`,
      kind: "laminate",
      title: `Laminate ${id} on the bench, first face`,
      after: [],
      workMinutes: readyMinutes + first.workMinutes + MINUTES.clean,
      cureHours: curedHours,
    },
    {
      id: `${id} second face`,
      kind: "laminate",
      title: `Turn ${id} over and laminate its second face`,
      after: [`${id} first face`],
      workMinutes: MINUTES.turn + second.workMinutes + MINUTES.clean,
      cureHours: curedHours,
    },
    {
      id: `${id} cut`,
      kind: "cut",
      title: `Saw ${pieces.map(({ stripId }) => stripId).join(", ")} from ${id}, seal the edges`,
      after: [`${id} second face`],
      workMinutes: cutMinutes + MINUTES.ready / hands,
      cureHours: curedHours,
    },
  ];
}
