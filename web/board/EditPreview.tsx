import { useMemo } from "react";
import { Line } from "react-konva";
import { applyCommand, type Project } from "../../core/project/index.ts";
import { useLengths } from "../controls/index.ts";
import { planEdit, useEdit } from "../edit/index.ts";
import { sceneFor, useDrawnSelection } from "../hand/index.ts";
import { useDocument } from "../stores/index.ts";
import { type DrawingView, gripsOf, lineKey, ownerKey, type SceneLine } from "../tools/index.ts";
import { linePx, pointsOfLine } from "./draw-line.ts";
import type { Paint } from "./paint.ts";
import { dashes, pens } from "./pens.ts";
import type { Transform } from "./viewport.ts";

/** What is asked for in numbers, in pencil, before it is taken. */
export function EditPreview({
  view,
  transform,
  paint,
}: {
  readonly view: DrawingView;
  readonly transform: Transform;
  readonly paint: Paint;
}) {
  const task = useEdit((state) => state.task);
  const project = useDocument((state) => state.project);
  const selection = useDrawnSelection();
  const lengths = useLengths();
  const lines = useMemo(() => {
    const planned = task && planEdit(project, gripsOf(selection), task, lengths);
    return planned?.ok ? changedLines(project, planned.commands.reduce(applyCommand, project)) : [];
  }, [task, project, selection, lengths]);
  return lines.map((line) =>
    line.view === view ? (
      <Line
        key={lineKey(line.line)}
        points={linePx(transform, pointsOfLine(line))}
        stroke={paint.pencil}
        strokeWidth={pens.outline}
        dash={[...dashes.draft]}
      />
    ) : null,
  );
}

/** The lines of everything that differs between two documents, as they run in the later one. */
function changedLines(before: Project, after: Project): readonly SceneLine[] {
  const old = new Set<unknown>([...before.items, ...before.openings, ...before.profiles]);
  const keys = new Set([
    ...after.items.flatMap((item) => (old.has(item) ? [] : [`item/${item.id}`])),
    ...after.openings.flatMap((opening) => (old.has(opening) ? [] : [`opening/${opening.id}`])),
    ...after.profiles.flatMap((profile) => (old.has(profile) ? [] : [`profile/${profile.id}`])),
  ]);
  return sceneFor(after).lines.filter(({ line }) => keys.has(ownerKey(line)));
}
