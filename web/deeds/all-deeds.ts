import { accessDeeds } from "./access-deeds.ts";
import { aidDeeds } from "./aid-deeds.ts";
import type { Deed } from "./deed.ts";
import { editDeeds } from "./edit-deeds.ts";
import { exchangeDeeds } from "./exchange-deeds.ts";
import { historyDeeds } from "./history-deeds.ts";
import { lineDeeds, pushDeeds } from "./line-deeds.ts";
import { stageDeeds, stageSteps } from "./stage-deeds.ts";
import { standingDeeds } from "./standing-deeds.ts";
import { stockDeeds } from "./stock-deeds.ts";
import { toolDeeds } from "./tool-deeds.ts";
import { trayDeeds } from "./tray-deeds.ts";
import { viewDeeds } from "./view-deeds.ts";

/** Everything that can be done, once. */
export const allDeeds: readonly Deed[] = [
  ...Object.values(editDeeds),
  ...Object.values(lineDeeds),
  ...pushDeeds,
  ...Object.values(toolDeeds),
  ...Object.values(viewDeeds),
  ...Object.values(standingDeeds),
  ...Object.values(aidDeeds),
  ...Object.values(accessDeeds),
  ...Object.values(exchangeDeeds),
  ...Object.values(trayDeeds),
  ...Object.values(stockDeeds),
  ...Object.values(historyDeeds),
  ...Object.values(stageDeeds),
  ...stageSteps,
];
