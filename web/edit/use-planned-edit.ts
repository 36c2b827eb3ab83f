import { useMemo } from "react";
import { useLengths } from "../controls/index.ts";
import { useDrawnSelection } from "../hand/index.ts";
import { useDocument } from "../stores/index.ts";
import { gripsOf } from "../tools/index.ts";
import type { EditTask } from "./edit-store.ts";
import { type PlannedEdit, planEdit } from "./plan-edit.ts";

/** What a task comes to, with the drawing and what is chosen as they are now. */
export function usePlannedEdit(task: EditTask): PlannedEdit {
  const project = useDocument((state) => state.project);
  const selection = useDrawnSelection();
  const lengths = useLengths();
  return useMemo(
    () => planEdit(project, gripsOf(selection), task, lengths),
    [project, selection, task, lengths],
  );
}
