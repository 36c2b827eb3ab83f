import { sceneFor } from "../hand/index.ts";
import { useDocument } from "../stores/index.ts";
import type { DrawingView } from "../tools/index.ts";
import { planExtent, sideExtent } from "./extents.ts";
import type { Extent } from "./viewport.ts";

/** Where a new picture is laid under a view: as large as what is drawn there. */
export function boxForPicture(view: DrawingView): Extent {
  const scene = sceneFor(useDocument.getState().project);
  return view === "plan" ? planExtent(scene) : sideExtent(scene);
}
