import { formatAngle } from "../foundation/index.ts";

/**
 * The bevel of an edge off square in words, from its start to its end, with the face that is longer: `square`,
 * `7.5°, air face longer`, `0.4° to 0.9°, upper face longer`. Positive bevels leave the air face longer, on a fence
 * the outboard one.
 */
export function wordBevel(
  [start, end]: readonly [number, number],
  kind: "section" | "fence" | "transition",
): string {
  const [first, last] = [formatAngle(Math.abs(start)), formatAngle(Math.abs(end))];
  const none = formatAngle(0);
  if (first === none && last === none) return "square";
  const [positive, negative] = kind === "fence" ? ["outboard", "inboard"] : ["air", "upper"];
  const face = start + end > 0 ? positive : negative;
  return `${first === last ? first : `${first} to ${last}`}, ${face} face longer`;
}
