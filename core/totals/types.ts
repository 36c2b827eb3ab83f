import type { Seam, Strip } from "../cutting/index.ts";
import type { SpacePoint } from "../foundation/index.ts";
import type { Jig } from "../jig/index.ts";
import type { Joint } from "../joints/index.ts";
import type { PanelPlan } from "../panels/index.ts";
import type { Part } from "../patterns/index.ts";
import type { FoldedPlate } from "../plates/index.ts";

/** What the totals are taken of. */
export interface Tray {
  readonly parts: readonly Part[];
  readonly strips: readonly Strip[];
  readonly seams: readonly Seam[];
  readonly joints: readonly Joint[];
  readonly jig: Jig;
  readonly plates: readonly FoldedPlate[];
  readonly panels: PanelPlan;
}

/** What the tray adds up to. Masses are of bare foam and metal; skins and mounts come with their own stages. */
export interface Totals {
  readonly partCount: number;
  readonly stripCount: number;
  readonly foamAreaMm2: number;
  readonly foamMassKg: number;
  /** Folded metal plates, on all hands. */
  readonly metalMassKg: number;
  /** Glue that stays in joints and relief slots. */
  readonly glueMassKg: number;
  readonly jointLengthMm: number;
  /** Least number of stock sheets by area, each kind of stock. */
  readonly stock: readonly {
    readonly stockId: string;
    readonly name: string;
    readonly areaMm2: number;
    readonly sheetsAtLeast: number;
  }[];
  readonly ribBoardAreaMm2: number;
  readonly ribBoardsAtLeast: number;
  readonly ribBoardMassKg: number;
  /** Hands-on time for marking, cutting, jig and glue-up at the rates of common practice, hours. */
  readonly handsOnHours: number;
}

/** A mass at little, likely and much resin, kg. */
export interface Spread {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

/** What a part weighs, and where its centre of mass lies in the car. */
export interface PartWeight {
  readonly partId: string;
  /** What is left of it under flanges. */
  readonly foamKg: number;
  /** Strips along its edges in place of foam. */
  readonly insertKg: number;
  readonly skinKg: Spread;
  readonly massKg: Spread;
  readonly centre: SpacePoint;
}

/** What the tray weighs by part and all in, without mounts. */
export interface Weight {
  readonly parts: readonly PartWeight[];
  /** Glue, fillets and metal. */
  readonly otherKg: number;
  readonly massKg: Spread;
  readonly centre: SpacePoint;
}

/** Of no tray. */
export const NO_WEIGHT: Weight = {
  parts: [],
  otherKg: 0,
  massKg: { low: 0, likely: 0, high: 0 },
  centre: { x: 0, y: 0, z: 0 },
};
