import { memo } from "react";
import { useDocument } from "../stores/index.ts";
import {
  chosenNodeId,
  type DrawingView,
  inView,
  isSameLine,
  lineKey,
  lineOfSelection,
  ownerKey,
} from "../tools/index.ts";
import { chosenOwners } from "./chosen-owners.ts";
import { useDrawnSelection } from "./drawn-selection.ts";
import { Handles, QuietHandles } from "./Handles.tsx";
import type { Paint } from "./paint.ts";
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
  const owners = chosenOwners(project, selection);
  const nodeLine = lineOfSelection(selection);
  const nodeId = chosenNodeId(selection);
  return (
    <>
      {scene.lines.map((line) => {
        if (line.view !== view) return null;
        const key = lineKey(line.line);
        const shared = { line, transform, paint };
        if (!owners.includes(ownerKey(line.line))) return <QuietHandles key={key} {...shared} />;
        const isNodeLine = nodeLine !== undefined && isSameLine(line.line, inView(nodeLine, view));
        return <Handles key={key} {...shared} nodeId={isNodeLine ? nodeId : undefined} />;
      })}
    </>
  );
});
