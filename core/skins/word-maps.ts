import type { PatchMap } from "./map-types.ts";

const SIDES: Readonly<Record<string, string>> = {
  L: "lower face",
  U: "upper face",
  I: "inboard side",
  O: "outboard side",
};

/** What a picture of patches shows, and from where. */
export function mapWords({ id, frame, face, front }: PatchMap): string {
  if (frame === "plan")
    return face === "lower face"
      ? "The lower face seen from below, front to the left: the right half of the car lies below the centre line."
      : "The upper face seen from above, front to the left: the right half of the car lies above the centre line.";
  const [, part = id, side = ""] = /^(.*)-([A-Z])\d*$/.exec(id) ?? [];
  return `${part}, ${SIDES[side] ?? face}, front to the ${front}`;
}
