import {
  type ClothPly,
  clothPlies,
  coreOf,
  type Fence,
  laminateOf,
  measuredPanelMm,
  type Project,
} from "../project/index.ts";
import { mixOf } from "./mix-of.ts";
import { pliesOfFace } from "./plies-of-face.ts";
import { plyFigures } from "./ply.ts";

/** A flat panel that fences are cut from: foam between two equal skins. */
export interface PanelMake {
  readonly foamMm: number;
  /** On each face, from the foam outward. */
  readonly plies: readonly ClothPly[];
  /** Foam and both skins as they are reckoned. */
  readonly reckonedMm: number;
  /** The same as it was measured when it had cured, else as reckoned. */
  readonly thicknessMm: number;
}

/** What of a project a panel follows from. */
export const PANEL_GROUND = ["core", "laminate", "materials", "skins"] as const;
export type PanelGround = Pick<Project, (typeof PANEL_GROUND)[number]>;

/**
 * The panel that a fence is cut from: its own plies on each face, else those of the lower face. Real thickness: that of the
 * laminate (or what the builder measured), not the skin that the drawing allows for, for it is there before the fence is cut.
 */
export function panelMake(project: PanelGround, fence: Fence): PanelMake {
  const foamMm = coreOf(project, fence).thicknessMm;
  const own = fence.panel?.plies;
  const plies = own ? clothPlies(own, project.materials) : pliesOfFace(project, "lower");
  const mix = mixOf(laminateOf(project));
  const skinMm = plies.reduce((sum, { cloth }) => sum + plyFigures(cloth.arealKgPerM2, mix).thicknessMm, 0);
  const reckonedMm = foamMm + 2 * skinMm;
  return { foamMm, plies, reckonedMm, thicknessMm: measuredPanelMm(project, fence) ?? reckonedMm };
}
