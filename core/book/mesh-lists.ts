export type Pair = readonly [number, number];
export type Triple = readonly [number, number, number];

/** The numbers of a typed list two by two. */
export const pairsOf = (flat: ArrayLike<number>): readonly Pair[] =>
  Array.from(
    { length: Math.floor(flat.length / 2) },
    (_, i): Pair => [flat[2 * i] ?? 0, flat[2 * i + 1] ?? 0],
  );

/** The numbers of a typed list three by three. */
export const triplesOf = (flat: ArrayLike<number>): readonly Triple[] =>
  Array.from(
    { length: Math.floor(flat.length / 3) },
    (_, i): Triple => [flat[3 * i] ?? 0, flat[3 * i + 1] ?? 0, flat[3 * i + 2] ?? 0],
  );
