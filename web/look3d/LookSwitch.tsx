import { Box, LayoutGrid } from "lucide-react";
import { useView } from "../stores/index.ts";

/** Two words side by side: the parts laid flat, or the tray in 3D. */
export function LookSwitch() {
  const partsShown = useView((view) => view.partsShown);
  const showParts = useView((view) => view.showParts);
  return (
    <div className="look-switch" role="group" aria-label="How the parts are shown">
      <button
        type="button"
        className="plain"
        aria-pressed={partsShown === "flat"}
        data-testid="show-flat"
        onClick={() => showParts("flat")}
      >
        <LayoutGrid aria-hidden />
        Laid flat
      </button>
      <button
        type="button"
        className="plain"
        aria-pressed={partsShown === "space"}
        title="Look at the tray in 3D"
        data-testid="show-3d"
        onClick={() => showParts("space")}
      >
        <Box aria-hidden />
        In 3D
      </button>
    </div>
  );
}
