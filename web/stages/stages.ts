import { type ComponentType, lazy } from "react";
import type { StageName } from "../stores/index.ts";
import { DrawStage } from "./draw/DrawStage.tsx";

/** The screen of each stage of the work. The board is there at once; the others are fetched when first gone to. */
export const stages: Readonly<Record<StageName, ComponentType>> = {
  draw: DrawStage,
  sheets: lazy(async () => ({ default: (await import("./sheets/SheetsStage.tsx")).SheetsStage })),
  stock: lazy(async () => ({ default: (await import("./stock/StockStage.tsx")).StockStage })),
  jig: lazy(async () => ({ default: (await import("./jig/JigStage.tsx")).JigStage })),
  glue: lazy(async () => ({ default: (await import("./glue/GlueStage.tsx")).GlueStage })),
  skin: lazy(async () => ({ default: (await import("./skin/SkinStage.tsx")).SkinStage })),
  buy: lazy(async () => ({ default: (await import("./buy/BuyStage.tsx")).BuyStage })),
  print: lazy(async () => ({ default: (await import("./print/PrintStage.tsx")).PrintStage })),
};
