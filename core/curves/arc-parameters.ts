import type { ArcPiece } from "./types.ts";

/** The parameters at which an arc passes angles, ascending, each counted at every turn that lies on the arc. */
export function arcParametersAt(piece: ArcPiece, anglesRad: readonly number[]): number[] {
  const turnRad = 2 * Math.PI;
  const direction = Math.sign(piece.sweepRad);
  return anglesRad
    .flatMap((angleRad) => {
      const onward = (angleRad - piece.startRad) * direction;
      const first = onward - turnRad * Math.floor(onward / turnRad);
      return [first, first + turnRad];
    })
    .map((fromStartRad) => fromStartRad / Math.abs(piece.sweepRad))
    .filter((t) => t <= 1)
    .sort((a, b) => a - b);
}
