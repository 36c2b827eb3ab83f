import { create } from "zustand";
import type { Design } from "../../core/design.ts";
import type { Project } from "../../core/project/index.ts";
import { latestWins } from "../worker/index.ts";
import { useDocument } from "./document-store.ts";
import { keepUnchanged } from "./keep-unchanged.ts";

/** What follows from the document, as the worker last computed it. Never edited, never saved. */
export interface DesignStore {
  readonly design: Design | undefined;
  readonly isComputing: boolean;
  /** Our own mistake in the core, in its own words; absent while all is well. */
  readonly failure: string | undefined;
}

export const useDesign = create<DesignStore>()(() => ({
  design: undefined,
  isComputing: false,
  failure: undefined,
}));

/**
 * Computes the design now and again after every change of the document, also inside gestures. One computation
 * runs at a time; while it runs only the newest document waits. Returns what stops it.
 */
export function followDocument(compute: (project: Project) => Promise<Design>): () => void {
  const request = latestWins(compute, {
    onResult: (design, isLast) =>
      useDesign.setState((before) => ({
        design: keepUnchanged(before.design, design),
        isComputing: !isLast,
        failure: undefined,
      })),
    onFailure: (error, isLast) => useDesign.setState({ isComputing: !isLast, failure: String(error) }),
  });
  const ask = (project: Project) => {
    useDesign.setState({ isComputing: true });
    request(withoutPictures(project));
  };
  ask(useDocument.getState().project);
  return useDocument.subscribe((state, previous) => {
    if (state.project !== previous.project) ask(state.project);
  });
}

/** What is computed does not look into the pictures under the drawing: they are not copied to the worker. */
const withoutPictures = (project: Project): Project =>
  project.underlays.length === 0
    ? project
    : { ...project, underlays: project.underlays.map((underlay) => ({ ...underlay, picture: "" })) };
