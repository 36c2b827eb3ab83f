import { PictureLines } from "./PictureLines.tsx";
import { layOutPlan } from "./picture-layout.ts";
import type { TrayPicture } from "./tray-picture.ts";

const ROOM = { widthPx: 176, heightPx: 112, marginPx: 6 };

/** A tray in plan, small enough to stand beside its name; blank paper where nothing is drawn. */
export function PlanThumbnail({ picture }: { readonly picture: TrayPicture | undefined }) {
  const layout = picture && layOutPlan(picture, ROOM);
  const { widthPx, heightPx } = layout ?? ROOM;
  return (
    <svg className="picture" viewBox={`0 0 ${widthPx} ${heightPx}`} aria-hidden="true" focusable="false">
      {layout ? <PictureLines layout={layout} /> : null}
    </svg>
  );
}
