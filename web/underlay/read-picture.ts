import { formatNumber } from "../../core/foundation/index.ts";
import { keptSize, type PictureKind, pictureKind } from "./picture-kind.ts";

/** A picture as a project keeps it. */
export interface KeptPicture {
  readonly picture: string;
  readonly widthPx: number;
  readonly heightPx: number;
  /** The size it had in the file, where it was made smaller. */
  readonly wasPx?: readonly [number, number];
}

export type PictureReading =
  | { readonly ok: true; readonly value: KeptPicture }
  | { readonly ok: false; readonly words: string };

/** The longest side that is kept: enough to draw over, and small enough for a project file. */
export const LONGEST_SIDE_PX = 2400;
/** A file that a home computer can hold in memory as a picture. */
const MOST_FILE_BYTES = 60_000_000;
/** An SVG is kept as it is, and every copy of the project carries it. */
const MOST_SVG_BYTES = 3_000_000;
/** A picture that stays larger as PNG is kept as JPEG. */
const MOST_PNG_BYTES = 3_000_000;
const JPEG_QUALITY = 0.88;
/** An SVG that says no size is drawn as wide as this. */
const UNSIZED_PX = 1000;

/**
 * A picture file made ready to be kept in a project: PNG and JPEG brought to at most 2400 pixels and written anew,
 * which leaves out what a camera adds (place, time, owner); an SVG as it is, only ever shown as an image.
 */
export async function readPicture(file: File): Promise<PictureReading> {
  if (file.size === 0) return refuse(`${file.name} is empty.`);
  if (file.size > MOST_FILE_BYTES)
    return refuse(
      `${file.name} has ${megabytes(file.size)} MB; the most is ${megabytes(MOST_FILE_BYTES)} MB. Make it smaller and try again.`,
    );
  try {
    const bytes = new Uint8Array(await file.arrayBuffer());
    const kind = pictureKind(bytes);
    if (kind === undefined)
      return refuse(`${file.name} is no PNG, JPEG or SVG picture. Save it as one of these and try again.`);
    return await (kind === "svg" ? readSvg(file.name, bytes) : readPixels(file, kind));
  } catch {
    return refuse(`${file.name} is broken or cut off and cannot be shown. Get it anew and try again.`);
  }
}

async function readPixels(file: File, kind: Exclude<PictureKind, "svg">): Promise<PictureReading> {
  const bitmap = await createImageBitmap(file);
  try {
    const { widthPx, heightPx, isSmaller } = keptSize(bitmap.width, bitmap.height, LONGEST_SIDE_PX);
    const blob = await writePixels(bitmap, [widthPx, heightPx], kind);
    const was = isSmaller ? { wasPx: [bitmap.width, bitmap.height] as const } : {};
    return { ok: true, value: { picture: await dataUrl(blob), widthPx, heightPx, ...was } };
  } finally {
    bitmap.close();
  }
}

async function writePixels(
  bitmap: ImageBitmap,
  [widthPx, heightPx]: readonly [number, number],
  kind: "png" | "jpeg",
): Promise<Blob> {
  const canvas = new OffscreenCanvas(widthPx, heightPx);
  const context = canvas.getContext("2d");
  if (!context) throw new Error("The browser gives no canvas.");
  context.imageSmoothingQuality = "high";
  context.drawImage(bitmap, 0, 0, widthPx, heightPx);
  if (kind === "png") {
    const png = await canvas.convertToBlob({ type: "image/png" });
    if (png.size <= MOST_PNG_BYTES) return png;
    // What was clear is white in a JPEG.
    context.globalCompositeOperation = "destination-over";
    context.fillStyle = "#fff";
    context.fillRect(0, 0, widthPx, heightPx);
  }
  return canvas.convertToBlob({ type: "image/jpeg", quality: JPEG_QUALITY });
}

async function readSvg(name: string, bytes: Uint8Array<ArrayBuffer>): Promise<PictureReading> {
  if (bytes.length > MOST_SVG_BYTES)
    return refuse(
      `${name} has ${megabytes(bytes.length)} MB; an SVG may have ${megabytes(MOST_SVG_BYTES)} MB. Save it as PNG and try again.`,
    );
  const picture = await dataUrl(new Blob([bytes], { type: "image/svg+xml" }));
  const image = await loadImage(picture);
  const widthPx = image.naturalWidth || UNSIZED_PX;
  const heightPx = image.naturalHeight || UNSIZED_PX;
  return { ok: true, value: { picture, widthPx, heightPx } };
}

/** The picture as an image element; fails where the browser cannot show it. Nothing in it is run or fetched. */
export async function loadImage(picture: string): Promise<HTMLImageElement> {
  const image = new Image();
  image.src = picture;
  await image.decode();
  return image;
}

const dataUrl = (blob: Blob): Promise<string> =>
  new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(String(reader.result));
    reader.onerror = () => reject(reader.error);
    reader.readAsDataURL(blob);
  });

const megabytes = (bytes: number): string => formatNumber(bytes / 1e6, bytes < 1e7 ? 1 : 0);

const refuse = (words: string): PictureReading => ({ ok: false, words });
