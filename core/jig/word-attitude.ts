import type { Project } from "../project/index.ts";
import type { FenceSheet, Sheet } from "../surfaces/index.ts";

/**
 * What it means for this tray to be built upright or upside down, in sentences: what lies on the ribs, which face is
 * laminated first, when its fences come, and what the other face needs.
 */
export function wordAttitude(
  attitude: Project["jig"]["attitude"],
  sheets: readonly Sheet[],
  jig: Project["jig"],
): readonly string[] {
  const fences = sheets.filter((sheet) => sheet.kind === "fence");
  return [...wordFaces(attitude), ...wordFences(attitude, fences), wordCradle(attitude, jig)];
}

const wordFaces = (attitude: Project["jig"]["attitude"]): readonly string[] =>
  attitude === "upright"
    ? [
        "The ribs stand under the air face, with the car's ground below the baseboard.",
        "The upper face is laminated first, on the jig.",
      ]
    : [
        "The tray lies upside down: the ribs stand under its upper face, and what faces the ground looks up.",
        "The air face is laminated first, on the jig, where it can be seen and smoothed.",
      ];

function wordFences(attitude: Project["jig"]["attitude"], fences: readonly FenceSheet[]): readonly string[] {
  const named = (own: readonly FenceSheet[]) => own.map(({ id }) => id).join(", ");
  const onSkin = fences.filter(({ seatOn }) => seatOn === "skin");
  const onCore = fences.filter(({ seatOn }) => seatOn === "core");
  const last = onSkin.length > 0 ? [`${named(onSkin)}: bonded on the cured skin, last.`] : [];
  if (attitude === "inverted") {
    return onCore.length > 0
      ? [`${named(onCore)}: set on top once the sheets are glued; no rib is notched for them.`, ...last]
      : last;
  }
  const first = onCore.filter(({ standsFirst }) => standsFirst);
  const later = onCore.filter(({ standsFirst }) => !standsFirst);
  return [
    ...(first.length > 0
      ? [
          `${named(first)}: stand in the jig before the sheets, braced and blocked to the heights of their table; ribs are notched for them.`,
        ]
      : []),
    ...(later.length > 0 ? [`${named(later)}: come on after the tray is turned over.`] : []),
    ...last,
  ];
}

function wordCradle(attitude: Project["jig"]["attitude"], { making }: Project["jig"]): string {
  const waiting = attitude === "upright" ? "air face" : "upper face";
  return making?.cradle === undefined
    ? `The ${waiting} lies on the ribs and cannot be laminated there. Without a cradle the tray leaves its jig with one skin on, and gives back part of its bends.`
    : `The ${waiting} lies on the ribs and cannot be laminated there: the tray is turned over into the cradle for it.`;
}
