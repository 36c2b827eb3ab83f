import type { PackingLoop } from "../packing/index.ts";
import type { LaidPly, PotCard } from "../skins/index.ts";

/** A strip as it lies on a panel: turned by the angle about its own origin, which then comes to x, y; x along the panel. */
export interface PanelPiece {
  readonly stripId: string;
  readonly partId: string;
  readonly angleRad: number;
  readonly x: number;
  readonly y: number;
  /** What is sawn off, on the mid-plane and as wide as its wider face. */
  readonly linesMm: readonly PackingLoop[];
}

/** One face of a panel as it is laid. */
export interface PanelFace {
  readonly face: "first" | "second";
  /** From the first resin on the foam to the peel ply, for the stated hands. */
  readonly workMinutes: number;
  readonly mixedKg: number;
  /** None where the resin cannot be used in this shop or on this foam. */
  readonly cards: readonly PotCard[];
}

/** One step of making a panel: what is done, and why so. */
export interface PanelStep {
  /** Laminating a panel, cutting it up, or bonding what was cut. */
  readonly part: "lay-up" | "cut" | "bond";
  readonly title: string;
  readonly why: string;
}

/** A flat sheet of foam that is skinned on both faces, and what is cut from it when it has cured. */
export interface Panel {
  /** `panel A`. */
  readonly id: string;
  readonly foamId: string;
  readonly foamName: string;
  readonly foamMm: number;
  /** The foam sheet that it is cut from. */
  readonly stockId: string;
  /** As it is laminated, before its edges are trimmed by `edgeMm` all round. */
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly edgeMm: number;
  /** On each face, from the foam outward. */
  readonly plies: readonly LaidPly[];
  readonly skinMm: number;
  /** Foam and both skins, as reckoned. */
  readonly thicknessMm: number;
  readonly pieces: readonly PanelPiece[];
  /** Of one face of all its pieces together, mm²; what is sawn, and what of it is sealed, mm. */
  readonly pieceMm2: number;
  readonly sawMm: number;
  readonly sealMm: number;
  readonly faces: readonly [PanelFace, PanelFace];
  /** Cloth of both faces as it is cut, mm², each cloth once. */
  readonly cloths: readonly { readonly clothId: string; readonly name: string; readonly areaMm2: number }[];
  readonly peelPlyMm2: number;
  /** To be mixed for both faces, waste included; what both skins weigh, and the foam, kg. */
  readonly mixedKg: number;
  readonly skinKg: number;
  readonly foamKg: number;
  /** Before a face bears being turned over, and the panel being sawn, hours. */
  readonly curedHours: number;
  readonly steps: readonly PanelStep[];
}

/** A fence as it is bonded onto the finished skin. */
export interface PanelBond {
  readonly partId: string;
  readonly jointIds: readonly string[];
  readonly lengthMm: number;
  /** The strip of skin that is abraded for it, fillets and tape included. */
  readonly abradeMm: number;
  /** Thickened resin under the edge, and in both fillets. */
  readonly resinKg: number;
  readonly filletKg: number;
  readonly filletMm: number;
  /** Glass tape over both fillets: none where there are none. */
  readonly tapeMm2: number;
  readonly tapeWidthMm: number;
  readonly tapeName: string;
  /** Cloth and resin of it. */
  readonly tapeKg: number;
  /** All that is mixed, waste included. */
  readonly mixedKg: number;
  readonly workMinutes: number;
}

/** A piece of the work for a calendar. */
export interface PanelTask {
  readonly id: string;
  readonly kind: "laminate" | "cut" | "bond";
  readonly title: string;
  /** Ids of tasks of panels that are done and cured before. */
  readonly after: readonly string[];
  readonly workMinutes: number;
  readonly cureHours: number;
}

/** The panels of a tray, the fences that are bonded on of them, and their work. */
export interface PanelPlan {
  readonly panels: readonly Panel[];
  readonly bonds: readonly PanelBond[];
  readonly bondCards: readonly PotCard[];
  readonly bondSteps: readonly PanelStep[];
  readonly tasks: readonly PanelTask[];
}

/** Where no fence is cut from a panel. */
export const NO_PANELS: PanelPlan = { panels: [], bonds: [], bondCards: [], bondSteps: [], tasks: [] };
