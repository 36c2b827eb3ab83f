import { frontLip } from "./front-lip.ts";
import { practicePiece } from "./practice-piece.ts";
import { rearRamp } from "./rear-ramp.ts";
import { twoTunnels } from "./two-tunnels.ts";
import type { Starter, StarterName, TypedNumbers } from "./types.ts";

/** All starters, the plainest first. */
export const STARTERS: readonly Starter[] = [rearRamp, twoTunnels, frontLip, practicePiece];

/** The starter with a name; undefined for none. */
export const starterOf = (name: StarterName): Starter | undefined =>
  STARTERS.find((starter) => starter.name === name);

/** The numbers that a starter begins with. */
export const usualNumbers = (starter: Starter): TypedNumbers =>
  Object.fromEntries(starter.numbers.map(({ name, usual }) => [name, usual]));
