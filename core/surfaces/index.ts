export { areaInSpace } from "./area-in-space.ts";
export { type BendLine, bendLine, placesAtMiddle } from "./bend-line.ts";
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
export type { EaseLimits } from "./ease-step.ts";
export { type Easing, easeTransition } from "./ease-transition.ts";
export { type EdgeSpot, flatOnEdges, inwardAt, placeOnTrace, spotOnEdge } from "./edge-spots.ts";
export { faceHeightAt, faceOver, facePointAt, sheetContains } from "./face-height.ts";
export { facePast, pastLine, type RunningPast } from "./face-past.ts";
export { heightOnCurve } from "./fence-lower-edge.ts";
export { type Fibre, type FibreStretch, fibreOf } from "./fibre.ts";
export { polygonsContain } from "./inside-polygons.ts";
export {
  edgeLengthsInSpace,
  fenceAreaInSpace,
  fenceEdgeLengthInSpace,
  type LengthsInSpace,
} from "./measure-in-space.ts";
export { transitionAreaInSpace, transitionEdgeInSpace } from "./measure-transition.ts";
export { PANEL_EDGE_MM, PANEL_SOURCE, type PanelSource, panelBar, panelRoom } from "./panel-bar.ts";
export { partIdOf } from "./part-id.ts";
export { bordersOf } from "./region-islands.ts";
export { seatBevelRad } from "./seat-bevel.ts";
export { bendSamples } from "./section-checks.ts";
export type {
  BorderPiece,
  Chart,
  ChartPiece,
  CornerFold,
  CylinderChart,
  DrawnRuling,
  EdgeRole,
  EdgeTrace,
  EndPlane,
  FenceSheet,
  Hand,
  LyingSheet,
  RegionEdge,
  RegionLoop,
  RuledChart,
  SeatStation,
  SectionSheet,
  Sheet,
  SheetCommon,
  TransitionSheet,
  UprightChart,
} from "./types.ts";
export { wedgeOver } from "./wedge-over.ts";
