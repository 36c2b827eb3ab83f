/** A bend is shown in steps of this turn at most, rad: with a radius of 1 m the chord lies 0.15 mm off the arc. */
export const STEP_RAD = 0.035;

/** Stations from one place to another of a bend that turns so far between them, both ends among them. */
export function turnSteps(from: number, to: number, turnRad: number): readonly number[] {
  const steps = Math.max(2, Math.ceil(Math.abs(turnRad) / STEP_RAD));
  return Array.from({ length: steps + 1 }, (_, k) => from + ((to - from) * k) / steps);
}
