import { standingOf } from "../../../core/project/index.ts";
import { useDesign, useDocument, useView } from "../../stores/index.ts";
import { crossSection, depthOfCut } from "../cross-section.ts";
import { extentOfTray } from "../extent-of-tray.ts";
import { type Layout, sectionTransform } from "../viewport.ts";
import { FenceTip } from "./FenceTip.tsx";
import "../shaping/shaping.css";
import "./cut-handles.css";

interface CutHandlesProps {
  readonly layout: Layout;
  readonly heightFactor: number;
}

/** Handles on the cross-section: the lower tip of each fence that the hairline cuts, on the drawn side. */
export function CutHandles({ layout, heightFactor }: CutHandlesProps) {
  const design = useDesign((state) => state.design);
  const project = useDocument((state) => state.project);
  const xMm = useView((view) => view.hairlineXMm);
  const tool = useView((view) => view.tool);
  const box = layout.section;
  if (!box || !design || tool !== "select") return null;
  const transform = sectionTransform(box, extentOfTray(design), heightFactor);
  const cut = crossSection(design, xMm);
  return (
    <div
      className="cut-handles"
      style={{ left: box.leftPx, top: box.topPx, width: box.widthPx, height: box.heightPx }}
    >
      {cut.fences.map((fence) => {
        const depthMm = fence.hand === "left" ? undefined : depthOfCut(cut, fence);
        if (depthMm === undefined || standingOf(project, { of: "item", itemId: fence.itemId }).locked)
          return null;
        return (
          <FenceTip
            key={`${fence.itemId}/${Math.round(fence.yMm)}`}
            fence={fence}
            depthMm={depthMm}
            xMm={xMm}
            transform={transform}
            box={box}
          />
        );
      })}
    </div>
  );
}
