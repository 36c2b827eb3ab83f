import type { BendFace } from "../bending/index.ts";
import type { FlatPoint } from "../foundation/index.ts";
import type { PackingLoop } from "../packing/index.ts";
import type { EdgeFinish } from "../project/index.ts";

/** A face of the tray: the lower or the upper one of all that lies, or the sides of the fences. */
export type SkinFaceName = "lower face" | "upper face" | "fence sides";

/** One ply over a whole face. */
export interface LaidPly {
  readonly clothId: string;
  readonly clothName: string;
  readonly warpRad: number;
  readonly thicknessMm: number;
  /** What a square metre takes: of cloth, and of mixed resin with what foam or peel ply drinks, without waste. */
  readonly clothKgPerM2: number;
  readonly resinKgPerM2: number;
  /** Of that the resin in the ply itself. */
  readonly inPlyKgPerM2: number;
}

/** Pots that are mixed alike. */
export interface PotCard {
  readonly count: number;
  /** In each pot, kg. Hardener and resin only where the mixing ratio is known. */
  readonly mixedKg: number;
  readonly resinKg?: number;
  readonly hardenerKg?: number;
  readonly pigmentKg: number;
  /** From the first stir, minutes: to be spread by then. */
  readonly useWithinMinutes: number;
}

/** One piece of cloth. */
export interface SkinPatch {
  /** `S2R-L2.1`: part, face and field, ply from the foam; `S2R-L2.1b` where the field takes several pieces. */
  readonly id: string;
  readonly fieldId: string;
  readonly partId: string;
  /** 1 for the ply on the foam; plies of a zone count on from the last of the face. */
  readonly ply: number;
  /** Of a zone of reinforcement. */
  readonly zoneId?: string;
  readonly clothId: string;
  /** How its warp runs in the flat of the face, from +u toward +v. */
  readonly warpRad: number;
  /** On the face laid flat, seen as the part's pattern is; what laps over a joint is carried straight on beyond the edge. */
  readonly outlineMm: readonly FlatPoint[];
  readonly holesMm: readonly (readonly FlatPoint[])[];
  readonly areaMm2: number;
}

/** How the cloths of two parts lap beside their joint, in one ply. */
export interface LapAtJoint {
  readonly jointId: string;
  readonly ply: number;
  /** Cloth of this part runs over the joint. */
  readonly fromPartId: string;
  /** Cloth of that one begins `clearMm` beyond the joint, and lies under the other by `overlapMm`. */
  readonly ontoPartId: string;
  readonly clearMm: number;
  readonly overlapMm: number;
  /** How far the face that it lies on goes on beyond the joint before it ends or meets a fence, at its narrowest. */
  readonly roomMm: number;
  /** Whether there is no room for a whole lap clear of the joint. */
  readonly isTight: boolean;
  /** Whether it lies over the lap of the ply below: there is no room beside that. */
  readonly isStacked: boolean;
}

/** Where two joints end beside each other on a part, cloth that runs over both lies over each other in every ply. */
export interface LapCrossing {
  readonly jointIds: readonly [string, string];
  readonly fromPartIds: readonly [string, string];
  readonly ontoPartId: string;
}

/** A stretch of a part's face that is laid in one go with all its plies. */
export interface SkinField {
  /** `S2R-L2`. */
  readonly id: string;
  readonly partId: string;
  readonly side: BendFace;
  /** Of the face alone, without laps. */
  readonly areaMm2: number;
  /** Too narrow for a roller's stroke: it counts slower. */
  readonly isNarrow: boolean;
  readonly workMinutes: number;
  readonly mixedKg: number;
  readonly patches: readonly SkinPatch[];
}

/** A zone of reinforcement as it is laid, on one hand. */
export interface LaidZone {
  /** `Z1R`: the first zone, right. */
  readonly id: string;
  readonly name: string;
  readonly partId: string;
  /** The field that it is laid with: of those it reaches over, one that is laid last. */
  readonly fieldId: string;
  readonly clothId: string;
  readonly clothName: string;
  readonly stepMm: number;
  /** Of cloth, ply by ply; the first is the largest. */
  readonly plyMm2: readonly number[];
  /** What it adds, and with the plies of the face below it. */
  readonly thicknessMm: number;
  readonly totalThicknessMm: number;
  readonly mixedKg: number;
  readonly massKg: number;
  readonly clothKgPerM2: number;
  /** Fields of earlier sessions that it reaches onto: cured by then. */
  readonly onCured: readonly string[];
  /** Plies of the face that lap under it. */
  readonly overLapsOf: readonly number[];
}

/** One step of a session: what is done, and why there and so. */
export interface SkinStep {
  readonly title: string;
  readonly why: string;
  /** The patches that it lays. */
  readonly patchIds: readonly string[];
}

/** What is laid wet on wet in one go. */
export interface SkinSession {
  /** `lower face 1`. */
  readonly id: string;
  readonly fieldIds: readonly string[];
  readonly areaMm2: number;
  /** From the first resin on the foam to the last peel ply, minutes. */
  readonly workMinutes: number;
  /** How long resin that is spread can be worked in this shop, minutes: what is laid first gels then. */
  readonly filmMinutes: number;
  readonly mixedKg: number;
  readonly cards: readonly PotCard[];
  /** Fields of later sessions beside it: along them peel ply goes down. */
  readonly joinedLater: readonly string[];
  /** In the order of the work. */
  readonly steps: readonly SkinStep[];
}

export interface SkinFace {
  readonly face: SkinFaceName;
  readonly areaMm2: number;
  readonly partIds: readonly string[];
  readonly plies: readonly LaidPly[];
  readonly thicknessMm: number;
  /** The skin that the geometry allows for, mm. */
  readonly allowedMm: number;
  readonly fibreVolumeShare: number;
  /** To be mixed, waste included; what stays on the tray, kg. */
  readonly mixedKg: number;
  readonly massKg: number;
  readonly fields: readonly SkinField[];
  readonly zones: readonly LaidZone[];
  readonly laps: readonly LapAtJoint[];
  readonly crossings: readonly LapCrossing[];
  readonly corners: readonly OutsideCorner[];
  /** None where it is too cold to lay any. */
  readonly sessions: readonly SkinSession[];
  /** Length of the seams between sessions, where cloth laps onto cured cloth. */
  readonly sessionSeamMm: number;
}

/** A fillet of thickened resin along an inside corner, laid in the session that glasses over it. */
export interface Fillet {
  readonly jointId: string;
  readonly side: BendFace;
  /** A fence that was glued on before the skins, one that is bonded on after, or two sheets. */
  readonly between: "glued fence" | "skinned fence" | "sheets";
  readonly radiusMm: number;
  readonly lengthMm: number;
  readonly volumeMm3: number;
  readonly massKg: number;
}

/** An outside corner at a joint: rounded so that cloth lies down on it, the made face then lies `offMm` inside the drawn edge. */
export interface OutsideCorner {
  readonly jointId: string;
  readonly foldRad: number;
  readonly radiusMm: number;
  readonly offMm: number;
}

/** All free edges of one finish. */
export interface FinishedEdges {
  readonly finish: EdgeFinish;
  readonly lengthMm: number;
  /** Of the flange or the insert; 0 for the others. */
  readonly widthMm: number;
  /** A chamfer runs so many times the foam's thickness. */
  readonly chamferRun: number;
  /** Foam that a flange takes away once it is cut. */
  readonly foamAwayMm3: number;
  /** Of the foam that has such edges, ascending. */
  readonly thicknessesMm: readonly number[];
  readonly areOnFences: boolean;
  readonly areOnSheets: boolean;
}

/** A piece of work for a calendar: what must be done before, how long whose hands are at it, and what has to cure. */
export interface SkinTask {
  /** Its own among all tasks of the skins, and the same as long as the session is. */
  readonly id: string;
  readonly kind: "ready" | "session" | "turn over";
  readonly title: string;
  /** Ids of tasks of the skins that are done and cured before; those without any follow the last of the glue-up. */
  readonly after: readonly string[];
  /** By the stated pairs of hands together, in one go. */
  readonly workMinutes: number;
  readonly hands: number;
  /** At the shop's temperature, before what comes after it may begin; no hands are needed meanwhile. */
  readonly cureHours: number;
}

/** How the faces are skinned. */
export interface SkinPlan {
  readonly faces: readonly SkinFace[];
  /** In an order that works. */
  readonly tasks: readonly SkinTask[];
  /** Cloth by kind as its patches are cut, without offcuts, mm². */
  readonly cloths: readonly { readonly clothId: string; readonly name: string; readonly areaMm2: number }[];
  readonly peelPlyMm2: number;
  readonly fillets: readonly Fillet[];
  readonly edges: readonly FinishedEdges[];
  /** Resin of cloth and foam; fillets have their own mass. */
  readonly mixedKg: number;
  /** What stays on the tray, fillets included. */
  readonly massKg: number;
  /** Before a face is solid enough to be turned over, hours. */
  readonly solidHours: number;
}

/** A patch on its cloth: turned by the angle about its own origin, which then comes to x, y; x along the roll. */
export interface LaidPatch {
  readonly patchId: string;
  readonly angleRad: number;
  readonly x: number;
  readonly y: number;
  /** Its outline and holes there, outer side of the cloth up. */
  readonly linesMm: readonly PackingLoop[];
}

/** A length that is cut off a roll, and what is cut of it. */
export interface LaidClothLength {
  readonly lengthMm: number;
  readonly pieces: readonly LaidPatch[];
}

/** All patches of a cloth on its roll. */
export interface LaidCloth {
  readonly clothId: string;
  readonly name: string;
  readonly widthMm: number;
  /** What is taken off the roll, all lengths together. */
  readonly rollMm: number;
  /** Of that neither patch nor lap. */
  readonly wasteShare: number;
  readonly lengths: readonly LaidClothLength[];
  /** Patches that do not fit the roll. */
  readonly unplaced: readonly string[];
}

/** Where nothing is skinned. */
export const NO_SKINS: SkinPlan = {
  faces: [],
  tasks: [],
  cloths: [],
  peelPlyMm2: 0,
  fillets: [],
  edges: [],
  mixedKg: 0,
  massKg: 0,
  solidHours: 0,
};
