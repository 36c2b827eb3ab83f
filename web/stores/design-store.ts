import { create } from "zustand";
import type { Design, Shapes, Work } from "../../core/design.ts";
import type { Project } from "../../core/project/index.ts";
import { latestWins } from "../worker/index.ts";
import { useDocument } from "./document-store.ts";

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

/** The core as it computes a design: first what the shelf shows, then the work that follows from it. */
export interface DesignCore {
  readonly shape: (project: Project) => Promise<Shapes>;
  readonly plan: () => Promise<Work>;
}

/** While the drawing is dragged the work on the bench is planned this often at most, ms. */
const PLAN_EVERY_MS = 250;

/**
 * Computes the design now and again after every change of the document, also inside gestures. One computation
 * runs at a time; while it runs only the newest document waits. The shapes are shown as soon as they are there; the
 * work that follows from them waits while newer shapes do. Of a document that has taken the place of another nothing is
 * shown until it is computed itself. Returns what stops it.
 */
export function followDocument(core: DesignCore): () => void {
  let plannedAtMs = Number.NEGATIVE_INFINITY;
  const compute = async (project: Project, isOld: () => boolean): Promise<Design | undefined> => {
    const { generation } = useDocument.getState();
    const isOfBefore = () => useDocument.getState().generation !== generation;
    const shapes = await core.shape(project);
    if (isOfBefore()) return undefined;
    showShapes(shapes);
    if (isOld() && performance.now() - plannedAtMs < PLAN_EVERY_MS) return undefined;
    const work = await core.plan();
    if (isOfBefore()) return undefined;
    plannedAtMs = performance.now();
    return { ...shapes, ...work };
  };
  const request = latestWins(compute, {
    onResult: (design, isLast) => useDesign.setState({ design, isComputing: !isLast, failure: undefined }),
    onFailure: (error, isLast) => useDesign.setState({ isComputing: !isLast, failure: String(error) }),
  });
  const ask = (project: Project) => {
    useDesign.setState({ isComputing: true });
    request(withoutPictures(project));
  };
  ask(useDocument.getState().project);
  return useDocument.subscribe((state, previous) => {
    const isAnother = state.generation !== previous.generation;
    if (isAnother) useDesign.setState({ design: undefined });
    if (isAnother || state.project !== previous.project) ask(state.project);
  });
}

/** New shapes among the work of before, until that follows. */
function showShapes({ problems, ...shown }: Shapes): void {
  const { design } = useDesign.getState();
  if (design) useDesign.setState({ design: { ...design, ...shown } });
}

/** What is computed does not look into the pictures under the drawing: they are not copied to the worker. */
const withoutPictures = (project: Project): Project =>
  project.underlays.length === 0
    ? project
    : { ...project, underlays: project.underlays.map((underlay) => ({ ...underlay, picture: "" })) };
