export { areaInSpace } from "./area-in-space.ts";
export { buildSheets } from "./build-sheets.ts";
export {
  bendAtPlace,
  type ChartPlace,
  chartPointAt,
  heightAtPlace,
  normalAtPlace,
  placeOfXi,
  spacePointAt,
  turnAtPlace,
  uAtPlace,
  xiOfPlan,
  xiRange,
} from "./cylinder-chart.ts";
export { faceHeightAt, faceOver, facePointAt, sheetContains } from "./face-height.ts";
export { heightOnCurve } from "./fence-lower-edge.ts";
export { polygonsContain } from "./inside-polygons.ts";
export {
  edgeLengthsInSpace,
  fenceAreaInSpace,
  fenceEdgeLengthInSpace,
  type LengthsInSpace,
} from "./measure-in-space.ts";
export { partIdOf } from "./part-id.ts";
export { seatBevelRad } from "./seat-bevel.ts";
export { bendSamples } from "./section-checks.ts";
export type {
  Chart,
  ChartPiece,
  CornerFold,
  CylinderChart,
  EdgeRole,
  EndPlane,
  FenceSheet,
  Hand,
  RegionEdge,
  RegionLoop,
  SeatStation,
  SectionSheet,
  Sheet,
  SheetCommon,
  UprightChart,
} from "./types.ts";
export { wedgeOver } from "./wedge-over.ts";
