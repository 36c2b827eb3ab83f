import { PictureLines } from "./PictureLines.tsx";
import { layOutPair } from "./picture-layout.ts";
import type { TrayPicture } from "./tray-picture.ts";

const ROOM = { widthPx: 720, heightPx: 470, marginPx: 12 };

/** A tray in plan above its side view, both at one scale; `words` say what it shows to who cannot see it. */
export function PlanAndSide({ picture, words }: { readonly picture: TrayPicture; readonly words: string }) {
  const layout = layOutPair(picture, ROOM);
  if (!layout) return null;
  return (
    <div className="picture-pair" role="img" aria-label={words}>
      <span className="caption" aria-hidden="true">
        Plan
      </span>
      <PictureView layout={layout.plan} />
      <span className="caption" aria-hidden="true">
        Side
      </span>
      <PictureView layout={layout.side} />
    </div>
  );
}

function PictureView({ layout }: { readonly layout: Parameters<typeof PictureLines>[0]["layout"] }) {
  return (
    <svg
      className="picture"
      viewBox={`0 0 ${layout.widthPx} ${layout.heightPx}`}
      aria-hidden="true"
      focusable="false"
    >
      <PictureLines layout={layout} />
    </svg>
  );
}
