import type { ComponentType } from "react";
import type { StageName } from "../stores/index.ts";
import { DrawStage } from "./draw/DrawStage.tsx";
import { GlueStage } from "./glue/GlueStage.tsx";
import { JigStage } from "./jig/JigStage.tsx";
import { PrintStage } from "./print/PrintStage.tsx";
import { SheetsStage } from "./sheets/SheetsStage.tsx";
import { StockStage } from "./stock/StockStage.tsx";

/** The screen of each stage of the work. */
export const stages: Readonly<Record<StageName, ComponentType>> = {
  draw: DrawStage,
  sheets: SheetsStage,
  stock: StockStage,
  jig: JigStage,
  glue: GlueStage,
  print: PrintStage,
};
