/** An upright rectangle about a label, mm or px; `bottom` is the smaller height. */
export interface LabelBox {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
}

/**
 * Moves a label's box by whole steps until it overlaps none that stand already; where it stands clear, it stays. A step
 * has a length.
 */
export function stepClear(
  box: LabelBox,
  step: { readonly x: number; readonly y: number },
  standing: readonly LabelBox[],
): LabelBox {
  let moved = box;
  while (standing.some((other) => overlaps(other, moved))) moved = shift(moved, step);
  return moved;
}

const overlaps = (a: LabelBox, b: LabelBox): boolean =>
  a.left < b.right && b.left < a.right && a.bottom < b.top && b.bottom < a.top;

const shift = (
  { left, bottom, right, top }: LabelBox,
  { x, y }: { readonly x: number; readonly y: number },
): LabelBox => ({ left: left + x, bottom: bottom + y, right: right + x, top: top + y });
