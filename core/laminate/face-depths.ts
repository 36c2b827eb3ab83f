/** Offsets of every face from the drawn surface along the inward normal (from the air into the tray), mm. */
export interface FaceDepths {
  readonly airMm: number;
  readonly coreLowerMm: number;
  readonly neutralMm: number;
  readonly coreUpperMm: number;
  readonly upperMm: number;
}

/**
 * Where the faces lie for a core of `thicknessMm` between nominal skins. From the air inward: lower skin, core,
 * upper skin (design §2 *Reference surface*). With `drawnFace` "air" the air side is at 0; with "neutral" the
 * middle of the core is.
 */
export function faceDepths(
  drawnFace: "air" | "neutral",
  skins: { readonly lowerMm: number; readonly upperMm: number },
  thicknessMm: number,
): FaceDepths {
  const neutralMm = drawnFace === "air" ? skins.lowerMm + thicknessMm / 2 : 0;
  return {
    airMm: neutralMm - thicknessMm / 2 - skins.lowerMm,
    coreLowerMm: neutralMm - thicknessMm / 2,
    neutralMm,
    coreUpperMm: neutralMm + thicknessMm / 2,
    upperMm: neutralMm + thicknessMm / 2 + skins.upperMm,
  };
}
