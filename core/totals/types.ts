import type { Seam, Strip } from "../cutting/index.ts";
import type { Jig } from "../jig/index.ts";
import type { Joint } from "../joints/index.ts";
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
