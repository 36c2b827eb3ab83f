import { useMemo } from "react";
import type { Project } from "../../core/project/index.ts";
import { useDocument } from "../stores/index.ts";
import type { Scene } from "../tools/index.ts";
import { sceneByItem } from "./scene-by-item.ts";
import { sceneWithoutHidden } from "./without-hidden.ts";

const scenes = new WeakMap<Project, Scene>();

/** The scene of a document, computed once for each. */
export function sceneFor(project: Project): Scene {
  const known = scenes.get(project);
  if (known) return known;
  const scene = sceneWithoutHidden(sceneByItem(project), project);
  scenes.set(project, scene);
  return scene;
}

/** The scene of the document as it stands. */
export function useScene(): Scene {
  const project = useDocument((state) => state.project);
  return useMemo(() => sceneFor(project), [project]);
}
