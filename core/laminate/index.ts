export { dewPointCelsius } from "./dew-point.ts";
export { type FaceDepths, faceDepths } from "./face-depths.ts";
export { mixOf } from "./mix-of.ts";
export { PANEL_GROUND, type PanelGround, type PanelMake, panelMake } from "./panel-make.ts";
export { pliesOfFace } from "./plies-of-face.ts";
export {
  fibreMassShare,
  fibreVolumeShare,
  type LaminateMix,
  laminateKgPerM3,
  type PlyFigures,
  plyFigures,
} from "./ply.ts";
export { filmMinutes, potLifeMinutes, type ResinTimes, solidHours } from "./resin-times.ts";
