import type { Lettering } from "./lettering.ts";
import type { TextMark } from "./marks.ts";

/** The text cut to a width, with an ellipsis where something is left out. */
export function shorten(
  text: string,
  face: TextMark["face"],
  heightMm: number,
  fit: { readonly lettering: Lettering; readonly roomMm: number },
): string {
  const { lettering, roomMm } = fit;
  if (lettering.widthMm(text, face, heightMm) <= roomMm) return text;
  let kept = text;
  while (kept.length > 0 && lettering.widthMm(`${kept}…`, face, heightMm) > roomMm) kept = kept.slice(0, -1);
  return kept === "" ? "" : `${kept.trimEnd()}…`;
}
