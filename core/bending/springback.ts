/** A layer of a laminated strip: its modulus along the strip and its thickness. */
export interface Layer {
  readonly modulusMPa: number;
  readonly thicknessMm: number;
}

/** The bending stiffness of layers glued on each other, in N mm² for each mm of width: about their common neutral axis. */
export function stiffnessOf(layers: readonly Layer[]): number {
  let from = 0;
  const placed = layers.map((layer) => {
    const middle = from + layer.thicknessMm / 2;
    from += layer.thicknessMm;
    return { ...layer, middle };
  });
  const sum = (of: (layer: (typeof placed)[number]) => number) =>
    placed.reduce((total, layer) => total + of(layer), 0);
  const area = sum(({ modulusMPa, thicknessMm }) => modulusMPa * thicknessMm);
  const axis = sum(({ modulusMPa, thicknessMm, middle }) => modulusMPa * thicknessMm * middle) / area;
  return sum(
    ({ modulusMPa, thicknessMm, middle }) =>
      modulusMPa * (thicknessMm ** 3 / 12 + thicknessMm * (middle - axis) ** 2),
  );
}

/**
 * The share of a bend that layers give back when they are let go: the stiffness of what was bent in, unglued, over that of
 * the glued section (elastic superposition; n equal layers give 1/n², as boat builders print it). Foam relaxes while
 * the resin cures, so it is the most that can come.
 */
export const springbackShare = (bentIn: readonly Layer[], glued: readonly Layer[]): number =>
  bentIn.reduce((sum, layer) => sum + stiffnessOf([layer]), 0) / stiffnessOf(glued);

/** The radius after a bend has given back a share of itself. */
export const radiusAfterMm = (radiusMm: number, share: number): number => radiusMm / (1 - share);

/** The radius to bend to so that a share given back leaves the one that is wanted. */
export const overBendRadiusMm = (radiusMm: number, share: number): number => radiusMm * (1 - share);
