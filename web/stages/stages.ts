import type { ComponentType } from "react";
import type { StageName } from "../stores/index.ts";
import { DrawStage } from "./draw/DrawStage.tsx";
import { GlueStage } from "./glue/GlueStage.tsx";
import { JigStage } from "./jig/JigStage.tsx";
import { PrintStage } from "./print/PrintStage.tsx";
import { SheetsStage } from "./sheets/SheetsStage.tsx";
import { StockStage } from "./stock/StockStage.tsx";

/** A stage of the work: its word on the strip, what it is for, and its screen. */
export interface StageEntry {
  readonly word: string;
  readonly explains: string;
  readonly Stage: ComponentType;
}

export const stages: Readonly<Record<StageName, StageEntry>> = {
  draw: { word: "Draw", explains: "Draw the tray in plan and side view", Stage: DrawStage },
  sheets: {
    word: "Sheets",
    explains: "Every part laid flat, with its lengths and marks",
    Stage: SheetsStage,
  },
  stock: { word: "Stock", explains: "Foam, skins, sheets in store and how they are cut", Stage: StockStage },
  jig: { word: "Jig", explains: "The supports that hold the shape", Stage: JigStage },
  glue: { word: "Glue", explains: "What is glued to what, in which order", Stage: GlueStage },
  print: { word: "Print", explains: "Templates and the build book on paper", Stage: PrintStage },
};
