import type { SpacePoint } from "../foundation/index.ts";

/** From where a picture is taken, far away: turned from the left-hand side of the car toward its front, and up. */
export interface Eye {
  readonly towardFrontRad: number;
  readonly upRad: number;
}

/** A point of a picture, mm of the car: x to the right (front to the left), y up, `nearer` toward the eye. */
export interface SeenPoint {
  readonly x: number;
  readonly y: number;
  readonly nearer: number;
}

/** The way from space into a picture: a parallel view (ISO 5456-3: axonometric), lengths as they are. */
export function seeFrom({ towardFrontRad, upRad }: Eye): (p: SpacePoint) => SeenPoint {
  const [sa, ca] = [Math.sin(towardFrontRad), Math.cos(towardFrontRad)];
  const [se, ce] = [Math.sin(upRad), Math.cos(upRad)];
  return ({ x, y, z }) => ({
    x: x * ca - y * sa,
    y: x * se * sa + y * se * ca + z * ce,
    nearer: -x * sa * ce - y * ca * ce + z * se,
  });
}
