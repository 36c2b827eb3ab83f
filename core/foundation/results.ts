import type { Problem } from "./problems.ts";

/** What a whole operation gives: its value, or the problems that prevented it. */
export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** What a stage gives: everything that could be made, and everything that could not. It never gives up whole. */
export interface Outcome<T> {
  readonly items: readonly T[];
  readonly problems: readonly Problem[];
}

export const succeed = <T>(value: T): Result<T> => ({ ok: true, value });
export const fail = (...problems: readonly Problem[]): Result<never> => ({ ok: false, problems });
