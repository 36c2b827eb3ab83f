/** A wedge under this is not worth a bevel: a knife's line is as wide. */
const SQUARE_WEDGE_MM = 0.2;

/** The bevel to cut at a fence's seat, rad: 0 where square leaves a wedge of no more than a knife's line. */
export const seatBevelRad = (bevelRad: number, thicknessMm: number): number =>
  thicknessMm * Math.tan(Math.abs(bevelRad)) <= SQUARE_WEDGE_MM ? 0 : bevelRad;
