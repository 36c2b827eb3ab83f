import type { Stroke } from "./pictures.ts";

/** The small line picture of a word; its sentence stands beside it and says the same. */
export function TermPicture({ strokes }: { readonly strokes: readonly Stroke[] }) {
  return (
    <svg className="term-picture" viewBox="0 0 120 64" width={120} height={64} aria-hidden>
      {strokes.map(([pen, path], index) => (
        <path key={index} className={`pen-${pen}`} d={path} />
      ))}
    </svg>
  );
}
