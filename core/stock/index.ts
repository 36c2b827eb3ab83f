export { cutOrder } from "./cut-order.ts";
export { changePiece, type PieceChange } from "./edit-layout.ts";
export { gatherGroups, type Pieces } from "./gather-groups.ts";
export { judgeLayout } from "./laid-group.ts";
export {
  acceptedPlan,
  isAboutLayout,
  laidPlan,
  layoutSetting,
  lockedProblem,
  type StockPlan,
  toAccepted,
} from "./lay-on-stock.ts";
export { layoutRank } from "./layout-rank.ts";
export { seenLengthMm } from "./seen-length.ts";
export type { LaidGroup, LaidPiece, LaidStockSheet, StockCut, StockFigures, StockGroup } from "./types.ts";
