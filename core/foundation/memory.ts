import { keepEqual } from "./keep-equal.ts";

/**
 * What was made the last time, so that what is made of the same things again need not be made again. It changes
 * nothing of what comes out: with `NO_MEMORY` everything is made anew, and is the same.
 */
export interface Memory {
  /** The value, in which all that has not changed since the last time is the very same object. */
  readonly keep: <T>(name: string, value: T) => T;
  /** What was made under this name, if it was of the very same things; else it is made now. */
  readonly recall: <T>(name: string, from: readonly unknown[], make: () => T) => T;
  /** What was kept under this name the last time; undefined where nothing was. */
  readonly last: <T>(name: string) => T | undefined;
  /** What was not asked for since the last turn is forgotten. */
  readonly turn: () => void;
}

/** Remembers nothing. */
export const NO_MEMORY: Memory = {
  keep: (_name, value) => value,
  recall: (_name, _from, make) => make(),
  last: () => undefined,
  turn: () => {},
};

interface Kept {
  readonly from: readonly unknown[];
  readonly value: unknown;
}

/** A memory of its own, empty; it belongs to whoever computes one tray again and again. */
export function newMemory(): Memory {
  let last = new Map<string, Kept>();
  let now = new Map<string, Kept>();
  const known = (name: string) => now.get(name) ?? last.get(name);
  return {
    keep: (name, value) => {
      const kept = keepEqual(known(name)?.value, value);
      now.set(name, { from: [], value: kept });
      return kept;
    },
    recall: <T>(name: string, from: readonly unknown[], make: () => T): T => {
      const before = known(name);
      const isSame =
        before !== undefined &&
        before.from.length === from.length &&
        before.from.every((thing, i) => Object.is(thing, from[i]));
      // What stands under a name was made by the same maker.
      const value = isSame ? (before.value as T) : make();
      now.set(name, { from, value });
      return value;
    },
    // What stands under a name was kept by the same maker.
    last: <T>(name: string) => known(name)?.value as T | undefined,
    turn: () => {
      last = now;
      now = new Map();
    },
  };
}
