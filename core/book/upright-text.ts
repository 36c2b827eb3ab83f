import { paper, type TextMark } from "./marks.ts";

/**
 * The text turned so that it reads from below or from the right (ISO 129-1; from memory): one that would stand
 * on its head turns about its own middle and keeps its place.
 */
export function uprightText(mark: TextMark): TextMark {
  const turn = Math.atan2(Math.sin(mark.turnRad), Math.cos(mark.turnRad));
  if (turn > -Math.PI / 2 + 0.01 && turn <= Math.PI / 2 + 0.01) return { ...mark, turnRad: turn };
  const anchors = { start: "end", middle: "middle", end: "start" } as const;
  return {
    ...mark,
    at: paper(mark.at.x - Math.sin(turn) * mark.heightMm, mark.at.y + Math.cos(turn) * mark.heightMm),
    anchor: anchors[mark.anchor],
    turnRad: turn > 0 ? turn - Math.PI : turn + Math.PI,
  };
}
