import { memo, useMemo } from "react";
import { standingOf, thingOfLine } from "../../core/project/index.ts";
import { useDrawnSelection, useScene } from "../hand/index.ts";
import { useDocument } from "../stores/index.ts";
import { chosenNodesByLine, type DrawingView, lineKey, ownerKey } from "../tools/index.ts";
import { chosenOwners } from "./chosen-owners.ts";
import { Handles, QuietHandles } from "./Handles.tsx";
import type { Paint } from "./paint.ts";
import type { Transform } from "./viewport.ts";

interface LineHandlesProps {
  readonly view: DrawingView;
  readonly transform: Transform;
  readonly paint: Paint;
}

const NONE: readonly string[] = [];

/** The nodes of every line of a view: handles on what is chosen and not locked, quiet dots on the rest. */
export const LineHandles = memo(function LineHandles({ view, transform, paint }: LineHandlesProps) {
  const project = useDocument((state) => state.project);
  const selection = useDrawnSelection();
  const scene = useScene();
  const owners = chosenOwners(project, selection);
  const chosenNodes = useMemo(() => chosenNodesByLine(selection), [selection]);
  return (
    <>
      {scene.lines.map((line) => {
        if (line.view !== view) return null;
        const key = lineKey(line.line);
        const shared = { line, transform, paint };
        const { locked } = standingOf(project, thingOfLine(line.line));
        if (locked || !owners.includes(ownerKey(line.line))) return <QuietHandles key={key} {...shared} />;
        return <Handles key={key} {...shared} nodeIds={chosenNodes.get(key) ?? NONE} />;
      })}
    </>
  );
});
