import { useMemo } from "react";
import { standingOf, thingOfLine } from "../../../core/project/index.ts";
import { useDrawnSelection, useScene } from "../../hand/index.ts";
import { useDocument, useView } from "../../stores/index.ts";
import { lineOfSelection, shapeGripsOf } from "../../tools/index.ts";
import type { Layout, Transform } from "../viewport.ts";
import { RadiusGrip } from "./RadiusGrip.tsx";
import { SegmentSwitch } from "./SegmentSwitch.tsx";
import { TangentHandle } from "./TangentHandle.tsx";
import "./shaping.css";

interface ShapeLayerProps {
  readonly layout: Layout;
  readonly plan: Transform;
  readonly side: Transform;
}

/** What the chosen edge or node is shaped by, on the board itself: straight or curved, a radius, a direction. */
export function ShapeLayer({ layout, plan, side }: ShapeLayerProps) {
  const project = useDocument((state) => state.project);
  const selection = useDrawnSelection();
  const scene = useScene();
  const tool = useView((view) => view.tool);
  const grips = useMemo(() => shapeGripsOf({ project, scene, selection }), [project, scene, selection]);
  const ref = lineOfSelection(selection);
  if (tool !== "select" || !ref || standingOf(project, thingOfLine(ref)).locked) return null;
  const views = [
    { view: "plan", box: layout.plan, transform: plan },
    { view: "side", box: layout.side, transform: side },
  ] as const;
  return (
    <div className="shaping" data-testid="shaping">
      {views.map(({ view, box, transform }) => {
        const isHere = (grip: { readonly view: string }) => grip.view === view;
        const shared = { transform, box };
        return (
          <div key={view}>
            {grips.segment && isHere(grips.segment) ? (
              <SegmentSwitch grip={grips.segment} {...shared} />
            ) : null}
            {grips.corners.filter(isHere).map((grip) => (
              <RadiusGrip key={grip.nodeId} grip={grip} {...shared} />
            ))}
            {grips.tangents.filter(isHere).map((grip) => (
              <TangentHandle key={`${grip.nodeId}/${grip.end}`} grip={grip} {...shared} />
            ))}
          </div>
        );
      })}
    </div>
  );
}
