import type { Project, Settings } from "../../../core/project/index.ts";
import { useDocument } from "../../stores/index.ts";

/** The settings of the document, and how a stage changes them. */
export function useSettings(): {
  readonly project: Project;
  readonly change: (changes: Partial<Settings>) => void;
} {
  const project = useDocument((state) => state.project);
  const dispatch = useDocument((state) => state.dispatch);
  return { project, change: (changes) => dispatch({ kind: "change-settings", changes }) };
}
