import type { Project } from "../../../core/project/index.ts";

/** A bare project of 10 mm foam from 1250 × 600 stock, for tests that need settings and nothing drawn. */
export function plainProject(changes: Partial<Project> = {}): Project {
  return {
    format: "traywright",
    version: 1,
    id: "plain",
    title: "Plain",
    titleBlock: { owner: "", creator: "", approver: "", issuedOn: "2026-01-01", revision: "A" },
    symmetry: "mirrored",
    drawnFace: "air",
    core: { foamId: "xps", thicknessMm: 10 },
    skins: { lowerMm: 0.8, upperMm: 0.8 },
    profiles: [],
    items: [],
    materials: {
      foams: [
        {
          id: "xps",
          name: "XPS 32",
          densityKgPerM3: 32,
          leastBendRatio: 60,
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
          openMinutes: 20,
          clampHours: 6,
          loadHours: 24,
          gapLimitMm: 1,
          spreadKgPerM2: 0.15,
          hazard: "isocyanate",
          origins: {},
        },
      ],
      boards: [
        {
          id: "mdf12",
          name: "MDF 12",
          thicknessMm: 12,
          lengthMm: 1220,
          widthMm: 610,
          densityKgPerM3: 750,
          origins: {},
        },
      ],
    },
    stock: [{ id: "xps10", foamId: "xps", thicknessMm: 10, lengthMm: 1250, widthMm: 600 }],
    cutting: {
      tool: "knife",
      kerfMm: 0,
      bladeSide: "waste",
      trimMm: 0,
      stockEdgeMm: 0,
      seamStaggerMm: 100,
    },
    marking: { intervalMm: 100, toleranceMm: 0.5 },
    jig: {
      attitude: "upright",
      boardId: "mdf12",
      across: { kind: "spacing", spacingMm: 300 },
      along: { kind: "none" },
      leastHeightMm: 80,
      proudLimitMm: 1,
    },
    glue: { glueId: "pu", gapMm: 0.3, pinSpacingMm: 100, pinSpacingCurvedMm: 50 },
    paper: {
      size: "A4",
      rollWidthMm: 914,
      marginMm: 6.35,
      overlapMm: 10,
      correctionX: 1,
      correctionY: 1,
    },
    ...changes,
  };
}
