import type { Result } from "../foundation/index.ts";
import type { Project } from "../project/index.ts";

/** What a number of a starter may be, both ends included; in the number's own unit. */
export interface StarterRange {
  readonly least: number;
  readonly most: number;
}

/** Reads a number of the same starter by its name. */
export type NumberOf<Name extends string> = (name: Name) => number;

/** One number that a starter asks for: its word, its unit as it is typed, and what it may be. */
export interface StarterNumber<Name extends string = string> {
  readonly name: Name;
  readonly word: string;
  /** Lengths are asked for in mm, angles in degrees, as a builder types them. */
  readonly unit: "mm" | "°";
  readonly usual: number;
  /** What it does to the tray, in a few words. */
  readonly explains: string;
  /** May depend on numbers that stand before this one, never on later ones. */
  readonly range: (numberOf: NumberOf<Name>) => StarterRange;
}

/** What every document needs besides its shape; nothing of it follows from the numbers. */
export interface StarterStart {
  readonly id: string;
  /** yyyy-mm-dd. */
  readonly issuedOn: string;
}

export const StarterNames = ["rear-ramp", "two-tunnels", "front-lip", "practice-piece"] as const;
export type StarterName = (typeof StarterNames)[number];

/** The numbers that were typed, by name; one that is missing is out of its range. */
export type TypedNumbers = Readonly<Record<string, number>>;

/** A tray that begins from a few numbers instead of an empty sheet. */
export interface Starter {
  readonly name: StarterName;
  readonly word: string;
  /** What is made, in one sentence. */
  readonly explains: string;
  /** At most eight, in the order in which their ranges depend on each other. */
  readonly numbers: readonly StarterNumber[];
  /** An ordinary document, or a problem for every number that is out of its range. */
  readonly make: (typed: TypedNumbers, start: StarterStart) => Result<Project>;
}
