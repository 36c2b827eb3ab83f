import type { PictureLayout } from "./picture-layout.ts";
import "./picture.css";

/** One view of a small picture: its datum, its sheets, what is cut out of them and the lines on them. */
export function PictureLines({ layout }: { readonly layout: PictureLayout }) {
  return (
    <>
      {layout.lines.map(({ kind, path }, index) => (
        <path key={index} className={`picture-${kind}`} d={path} />
      ))}
      <path className="picture-datum" d={layout.datum} />
    </>
  );
}
