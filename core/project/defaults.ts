import { distance2, type Vec2 } from "../foundation/index.ts";
import {
  DEFAULT_BOARDS,
  DEFAULT_CLOTHS,
  DEFAULT_FOAMS,
  DEFAULT_GLUES,
  DEFAULT_METALS,
  DEFAULT_RESINS,
  DEFAULT_STOCK,
} from "./materials.ts";
import {
  CURRENT_VERSION,
  type Fence,
  type Opening,
  type PlanElement,
  type Plate,
  type Profile,
  type Project,
  type Section,
  type SideNode,
  type Transition,
  type TransitionEdge,
} from "./schema.ts";

/** Left standing on a closer's last joint where nothing else is typed, mm (common practice). */
export const CLOSER_SPARE_MM = 8;

/** Depth of a fence that is drawn without a lower edge. */
const NEW_FENCE_DEPTH_MM = 40;

/**
 * A project with nothing drawn: mirrored, the air side drawn, 10 mm XPS, every setting at its default.
 * Sources: paper margin published (weak); rib spacing published (weak); what foam bears under a washer published (an XPS
 * maker's 25 psi and design factor of 3 for standing loads); the stiffness of the skins from memory, on the careful side;
 * the rest common practice.
 */
export function emptyProject(start: {
  readonly id: string;
  readonly title: string;
  readonly issuedOn: string;
}): Project {
  return {
    format: "traywright",
    version: CURRENT_VERSION,
    id: start.id,
    title: start.title,
    titleBlock: { owner: "", creator: "", approver: "", issuedOn: start.issuedOn, revision: "A" },
    symmetry: "mirrored",
    drawnFace: "air",
    core: { foamId: "xps", thicknessMm: 10 },
    skins: { lowerMm: 0.8, upperMm: 0.8 },
    profiles: [],
    items: [],
    openings: [],
    notes: [],
    underlays: [],
    openingSettings: { webMm: 30 },
    materials: {
      foams: DEFAULT_FOAMS,
      cloths: DEFAULT_CLOTHS,
      resins: DEFAULT_RESINS,
      glues: DEFAULT_GLUES,
      boards: DEFAULT_BOARDS,
      metals: DEFAULT_METALS,
    },
    stock: DEFAULT_STOCK,
    laying: { clearanceMm: 3, rotation: "free", currency: "€" },
    layouts: [],
    cutting: {
      tool: "knife",
      kerfMm: 0,
      bladeSide: "waste",
      trimMm: 0,
      stockEdgeMm: 5,
      seamStaggerMm: 100,
    },
    bending: {
      slotKerfMm: 3,
      slotWebMm: 3,
      slotSide: "closing",
      slotFilling: "glued",
      fillingKgPerM3: 1100,
      sagittaMm: 1,
      skinModulusMPa: 15_000,
      holdBy: "sandbags",
      sandbagKg: 5,
      strapN: 200,
      washerMm: 40,
      crushMPa: 0.06,
      pinN: 0,
    },
    marking: { intervalMm: 100, toleranceMm: 0.5 },
    jig: {
      attitude: "inverted",
      boardId: "ply-12",
      across: { kind: "automatic" },
      along: { kind: "none" },
      leastHeightMm: 60,
      proudLimitMm: 1,
      // Under a whole hand's 30 N 10 mm of XPS would want a rib every 70 mm: here it is touched, not leaned on.
      lie: { pushN: 10 },
    },
    glue: { glueId: "pu-glue", gapMm: 0, pinSpacingMm: 100, pinSpacingCurvedMm: 50 },
    joints: { toleranceMm: 0.5, joined: [], cuts: [] },
    paper: {
      size: "A4",
      rollWidthMm: 610,
      marginMm: 6.35,
      overlapMm: 10,
      correctionX: 1,
      correctionY: 1,
    },
  };
}

/** A section as it is first drawn: no tilt, no heading, the tray's own foam. */
export function newSection(start: {
  readonly id: string;
  readonly number: number;
  readonly name: string;
  readonly profileId: string;
  readonly elements: readonly PlanElement[];
  readonly closed: boolean;
}): Section {
  return {
    kind: "section",
    id: start.id,
    number: start.number,
    name: start.name,
    outline: { closed: start.closed, elements: start.elements },
    profileId: start.profileId,
    headingRad: 0,
    tiltRad: 0,
  };
}

/** A fence as it is first drawn: 40 mm deep all along, its upper edge on the foam, added after the sheets. */
export function newFence(start: {
  readonly id: string;
  readonly number: number;
  readonly name: string;
  readonly elements: readonly PlanElement[];
}): Fence {
  return {
    kind: "fence",
    id: start.id,
    number: start.number,
    name: start.name,
    line: { closed: false, elements: start.elements },
    lowerEdge: {
      kind: "depths",
      nodes: [
        { id: "d1", alongMm: 0, depthMm: NEW_FENCE_DEPTH_MM },
        { id: "d2", alongMm: chordSumMm(start.elements), depthMm: NEW_FENCE_DEPTH_MM },
      ],
    },
    seat: "core",
    standsFirst: false,
  };
}

/** A transition as it is first drawn: between two edges, the core above it, the tray's own foam. */
export function newTransition(start: {
  readonly id: string;
  readonly number: number;
  readonly name: string;
  readonly first: TransitionEdge;
  readonly second: TransitionEdge;
}): Transition {
  return { kind: "transition", ...start };
}

/** A plate as it is first drawn: a flat base without wings, bonded with 0.5 mm of adhesive (common practice). */
export function newPlate(start: {
  readonly id: string;
  readonly number: number;
  readonly name: string;
  readonly elements: readonly PlanElement[];
  readonly closed: boolean;
  readonly zMm: number;
}): Plate {
  return {
    kind: "plate",
    id: start.id,
    number: start.number,
    name: start.name,
    outline: { closed: start.closed, elements: start.elements },
    zMm: start.zMm,
    metalId: DEFAULT_METALS[0]?.id ?? "",
    thicknessMm: 1.5,
    wings: [],
    bond: { lineMm: 0.5, step: "ramp" },
  };
}

/** An opening as it is first drawn: plumb through everything that it crosses. */
export function newOpening(start: {
  readonly id: string;
  readonly number: number;
  readonly name: string;
  readonly elements: readonly PlanElement[];
  readonly closed: boolean;
}): Opening {
  return {
    id: start.id,
    number: start.number,
    name: start.name,
    outline: { closed: start.closed, elements: start.elements },
    cut: "upright",
  };
}

/** A profile of the side view. */
export function newProfile(start: {
  readonly id: string;
  readonly name: string;
  readonly nodes: readonly SideNode[];
}): Profile {
  return { id: start.id, name: start.name, nodes: start.nodes };
}

function chordSumMm(elements: readonly PlanElement[]): number {
  let sum = 0;
  let before: Vec2 | undefined;
  for (const element of elements) {
    if (element.kind !== "node") continue;
    const here: Vec2 = [element.x, element.y];
    if (before) sum += distance2(before, here);
    before = here;
  }
  return sum;
}
