import type { Command, Project } from "../../core/project/index.ts";

/** Stand-in until core/project has history, defaults and commands; goes away with them. */
export interface History {
  readonly past: readonly Project[];
  readonly present: Project;
  readonly future: readonly Project[];
}
export const historyOf = (present: Project): History => ({ past: [], present, future: [] });
export const pushHistory = (history: History, present: Project): History => ({
  past: [...history.past, history.present],
  present,
  future: [],
});
export const undoHistory = (history: History): History => {
  const present = history.past.at(-1);
  if (present === undefined) return history;
  return { past: history.past.slice(0, -1), present, future: [history.present, ...history.future] };
};
export const redoHistory = (history: History): History => {
  const [present, ...future] = history.future;
  if (present === undefined) return history;
  return { past: [...history.past, history.present], present, future };
};
export function applyCommand(project: Project, command: Command): Project {
  if (command.kind === "change-settings") return { ...project, ...command.changes };
  if (command.kind === "add-section") {
    const profiles = command.profile ? [...project.profiles, command.profile] : project.profiles;
    return { ...project, profiles, items: [...project.items, command.section] };
  }
  return project;
}
export const nameOfCommand = (command: Command): string => command.kind;
export function emptyProject(): Project {
  return {
    format: "traywright",
    version: 1,
    id: "new-tray",
    title: "New tray",
    titleBlock: { owner: "", creator: "", approver: "", issuedOn: "2026-01-01", revision: "A" },
    symmetry: "mirrored",
    drawnFace: "air",
    core: { foamId: "xps", thicknessMm: 10 },
    skins: { lowerMm: 0.6, upperMm: 0.6 },
    profiles: [],
    items: [],
    materials: {
      foams: [
        {
          id: "xps",
          name: "XPS 300",
          densityKgPerM3: 33,
          leastBendRatio: 30,
          modulusMPa: 15,
          mostCelsius: 75,
          hotWire: "allowed",
          origins: {},
        },
      ],
      cloths: [],
      resins: [],
      glues: [
        {
          id: "pu",
          name: "PU glue",
          openMinutes: 15,
          clampHours: 4,
          loadHours: 24,
          gapLimitMm: 1,
          spreadKgPerM2: 0.25,
          hazard: "isocyanate",
          origins: {},
        },
      ],
      boards: [
        { id: "mdf", name: "MDF 12", thicknessMm: 12, lengthMm: 2440, widthMm: 1220, densityKgPerM3: 750, origins: {} },
      ],
    },
    stock: [{ id: "xps-10", foamId: "xps", thicknessMm: 10, lengthMm: 1250, widthMm: 600 }],
    cutting: { tool: "knife", kerfMm: 0.4, bladeSide: "waste", trimMm: 10, stockEdgeMm: 5, seamStaggerMm: 100 },
    marking: { intervalMm: 100, toleranceMm: 0.5 },
    jig: {
      attitude: "upright",
      boardId: "mdf",
      across: { kind: "spacing", spacingMm: 250 },
      along: { kind: "none" },
      leastHeightMm: 60,
      proudLimitMm: 0.5,
    },
    glue: { glueId: "pu", gapMm: 0.3, pinSpacingMm: 150, pinSpacingCurvedMm: 75 },
    paper: { size: "A4", rollWidthMm: 914, marginMm: 10, overlapMm: 10, correctionX: 1, correctionY: 1 },
  };
}
