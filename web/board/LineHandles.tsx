import { memo } from "react";
import { useDocument } from "../stores/index.ts";
import { chosenKeys, type DrawingView, lineKey, lineOfSelection } from "../tools/index.ts";
import { useDrawnSelection } from "./drawn-selection.ts";
import { Handles, QuietHandles } from "./Handles.tsx";
import type { Paint } from "./paint.ts";
import { sideKeys } from "./SideDrawing.tsx";
import { useScene } from "./use-scene.ts";
import type { Transform } from "./viewport.ts";

interface LineHandlesProps {
  readonly view: DrawingView;
  readonly transform: Transform;
  readonly paint: Paint;
}

/** The nodes of every line of a view: handles on what is chosen, quiet dots on the rest. */
export const LineHandles = memo(function LineHandles({ view, transform, paint }: LineHandlesProps) {
  const project = useDocument((state) => state.project);
  const selection = useDrawnSelection();
  const scene = useScene();
  const keys = [...chosenKeys(selection), ...sideKeys(project, selection)];
  const nodeLine = lineOfSelection(selection);
  const nodeId = selection?.kind === "item" || selection?.kind === "profile" ? selection.nodeId : undefined;
  return (
    <>
      {scene.lines.map((line) => {
        if (line.view !== view) return null;
        const key = lineKey(line.line);
        const shared = { line, transform, paint };
        if (!keys.includes(key)) return <QuietHandles key={key} {...shared} />;
        const isNodeLine = nodeLine !== undefined && key === lineKey(nodeLine);
        return <Handles key={key} {...shared} nodeId={isNodeLine ? nodeId : undefined} />;
      })}
    </>
  );
});
