/** The state of a seeded generator: one word, so that it can be kept with a search and taken up again. */
export type RandomState = Uint32Array;

export const seedRandom = (seed: number): RandomState => Uint32Array.of(seed);

/**
 * The next number from 0 to under 1: a Weyl sequence of 32 bits, mixed by two multiplications (after the finaliser of
 * MurmurHash3, A. Appleby, public domain). Changes the state.
 */
export function nextRandom(state: RandomState): number {
  const word = ((state[0] ?? 0) + 0x9e3779b9) >>> 0;
  state[0] = word;
  let mixed = Math.imul(word ^ (word >>> 16), 0x85ebca6b);
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
  return ((mixed ^ (mixed >>> 16)) >>> 0) / 4294967296;
}
