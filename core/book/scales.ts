/** Scales of ISO 5455, one to so many. */
const SCALES = [1, 2, 5, 10, 20, 50, 100];

/** The largest standard scale at which a drawing of this size fits the room: one to how many. */
export function standardScale(
  size: { readonly widthMm: number; readonly heightMm: number },
  room: { readonly widthMm: number; readonly heightMm: number },
): number {
  const fits = (n: number) => size.widthMm / n <= room.widthMm && size.heightMm / n <= room.heightMm;
  return SCALES.find(fits) ?? Math.ceil(Math.max(size.widthMm / room.widthMm, size.heightMm / room.heightMm));
}
