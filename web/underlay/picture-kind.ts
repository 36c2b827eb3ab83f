/** The kinds of picture that can lie under the drawing. */
export type PictureKind = "png" | "jpeg" | "svg";

/** What a file is by its first bytes, whatever its name says; undefined for anything but PNG, JPEG and SVG. */
export function pictureKind(bytes: Uint8Array): PictureKind | undefined {
  if (startsWith(bytes, [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])) return "png";
  if (startsWith(bytes, [0xff, 0xd8, 0xff])) return "jpeg";
  const text = new TextDecoder().decode(bytes.subarray(0, LOOKED_AT_BYTES));
  return /^\s*(<\?xml[^>]*>|<!--[\s\S]*?-->|<!DOCTYPE[^>]*>|\s)*<svg[\s>]/i.test(text.replace(/^\uFEFF/, ""))
    ? "svg"
    : undefined;
}

/** A drawing program may write this much about itself before the drawing begins. */
const LOOKED_AT_BYTES = 4096;

const startsWith = (bytes: Uint8Array, beginning: readonly number[]): boolean =>
  beginning.every((byte, index) => bytes[index] === byte);

/** The size of a picture whose longest side is no longer than the most that is kept; in whole pixels. */
export function keptSize(
  widthPx: number,
  heightPx: number,
  mostPx: number,
): { readonly widthPx: number; readonly heightPx: number; readonly isSmaller: boolean } {
  const factor = Math.min(1, mostPx / Math.max(widthPx, heightPx));
  const whole = (px: number) => Math.max(1, Math.round(px * factor));
  return { widthPx: whole(widthPx), heightPx: whole(heightPx), isSmaller: factor < 1 };
}
