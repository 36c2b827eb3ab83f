import type { ComponentType } from "react";
import type { StageName } from "../stores/index.ts";
import { DrawStage } from "./draw/DrawStage.tsx";

/** A stage of the work: its word on the strip, what it is for, and its screen. */
export interface StageEntry {
  readonly word: string;
  readonly explains: string;
  readonly Stage: ComponentType;
}

export const stages: Readonly<Record<StageName, StageEntry>> = {
  draw: { word: "Draw", explains: "Draw the tray in plan and side view", Stage: DrawStage },
  sheets: { word: "Sheets", explains: "Every part laid flat, with its lengths and marks", Stage: DrawStage },
  stock: { word: "Stock", explains: "Foam, skins, sheets in store and how they are cut", Stage: DrawStage },
  jig: { word: "Jig", explains: "The supports that hold the shape", Stage: DrawStage },
  glue: { word: "Glue", explains: "What is glued to what, in which order", Stage: DrawStage },
  print: { word: "Print", explains: "Templates and the build book on paper", Stage: DrawStage },
};
