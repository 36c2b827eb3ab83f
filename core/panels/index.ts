export { CURED_GLASS_CAUTION } from "./panel-steps.ts";
export { planPanels } from "./plan-panels.ts";
export {
  NO_PANELS,
  type Panel,
  type PanelBond,
  type PanelFace,
  type PanelPiece,
  type PanelPlan,
  type PanelStep,
  type PanelTask,
} from "./types.ts";
export { cutFromPanelWords, panelWords } from "./word-panel.ts";
