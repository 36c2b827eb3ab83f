import { create } from "zustand";
import type { Design, Shapes, Work } from "../../core/design.ts";
import type { PartOutline } from "../../core/patterns/index.ts";
import type { Project } from "../../core/project/index.ts";
import { latestWins } from "../worker/index.ts";
import { readLater } from "./a-moment-later.ts";
import { isInGesture, useDocument } from "./document-store.ts";

/** What follows from the document, as the worker last computed it. Never edited, never saved. */
export interface DesignStore {
  readonly design: Design | undefined;
  /** Of a newer document than the design's: flat outlines of what was edited, until its own design is there. */
  readonly outlinesAhead: readonly PartOutline[];
  readonly isComputing: boolean;
  /** Our own mistake in the core, in its own words; absent while all is well. */
  readonly failure: string | undefined;
}

const live = create<DesignStore>()(() => ({
  design: undefined,
  outlinesAhead: [],
  isComputing: false,
  failure: undefined,
}));

export const useDesign = readLater(live, {
  mayWait: isInGesture,
  isAnswer: (now, before) => now.design !== before.design || now.outlinesAhead !== before.outlinesAhead,
});

/** The core as it computes a design: the flat outlines of what was edited, then the tray's shapes, then the work on them. */
export interface DesignCore {
  readonly outlines: (project: Project) => Promise<readonly PartOutline[]>;
  readonly shape: () => Promise<Shapes>;
  readonly plan: () => Promise<Work>;
}

/** While the drawing is dragged the whole tray is shaped this often at most, ms. */
const SHAPE_EVERY_MS = 150;
/** The work on the bench is planned when the hand lets go, or has rested for so long, ms: meanwhile nothing else is answered. */
const REST_MS = 600;

/**
 * Computes the design now and again after every change of the document, also inside gestures. One computation
 * runs at a time; while it runs only the newest document waits. What each step gives is shown as soon as it is there;
 * the next step is left off for a while when a newer document waits. Of a document that has taken the place of another nothing is
 * shown until it is computed itself. Returns what stops it.
 */
export function followDocument(core: DesignCore): () => void {
  const rest = newRest();
  let shapedAtMs = Number.NEGATIVE_INFINITY;
  /** Plans the work on the tray as it was shaped last. */
  const plan = async (shapes: Shapes, isOfBefore: () => boolean): Promise<Design | undefined> => {
    const work = await core.plan();
    return isOfBefore() ? undefined : { ...shapes, ...work };
  };
  const compute = async (asked: Question, isOld: () => boolean): Promise<Design | undefined> => {
    const { generation } = useDocument.getState();
    const isOfBefore = () => useDocument.getState().generation !== generation;
    if (asked.shapes) return plan(asked.shapes, isOfBefore);
    const outlinesAhead = await core.outlines(asked.project);
    if (isOfBefore()) return undefined;
    if (outlinesAhead.length > 0) {
      useDesign.setState({ outlinesAhead });
      if (isOld() && performance.now() - shapedAtMs < SHAPE_EVERY_MS) return undefined;
    }
    const shapes = await core.shape();
    if (isOfBefore()) return undefined;
    shapedAtMs = performance.now();
    showShapes(shapes);
    if (!isInGesture()) return plan(shapes, isOfBefore);
    if (!isOld()) rest.begin(() => request({ shapes }));
    return undefined;
  };
  const request = latestWins(compute, {
    onResult: (design, isLast) => useDesign.setState({ design, isComputing: !isLast, failure: undefined }),
    onFailure: (error, isLast) =>
      useDesign.setState({ outlinesAhead: [], isComputing: !isLast, failure: String(error) }),
  });
  const ask = (project: Project) => {
    rest.end();
    useDesign.setState({ isComputing: true });
    request({ project: withoutPictures(project) });
  };
  ask(useDocument.getState().project);
  const stop = useDocument.subscribe((state, previous) => {
    const isAnother = state.generation !== previous.generation;
    if (isAnother) useDesign.setState({ design: undefined, outlinesAhead: [] });
    if (isAnother || state.project !== previous.project) ask(state.project);
    else if (!isInGesture()) rest.cutShort();
  });
  return () => {
    rest.end();
    stop();
  };
}

/** What is asked of the core: a document's tray, or the work on shapes that it has. */
type Question =
  | { readonly project: Project; readonly shapes?: undefined }
  | { readonly project?: undefined; readonly shapes: Shapes };

/** A wait that does not keep a newer document waiting: it ends in what was to follow, at once when it is cut short, or in nothing. */
function newRest() {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let follow = () => {};
  const end = () => {
    clearTimeout(timer);
    follow = () => {};
  };
  const cutShort = () => {
    const next = follow;
    end();
    next();
  };
  const begin = (next: () => void) => {
    end();
    follow = next;
    timer = setTimeout(cutShort, REST_MS);
  };
  return { begin, cutShort, end };
}

/** New shapes among the work of before, until that follows. */
function showShapes({ problems, ...shown }: Shapes): void {
  const { design } = useDesign.getState();
  useDesign.setState({ outlinesAhead: [], ...(design && { design: { ...design, ...shown } }) });
}

/** What is computed does not look into the pictures under the drawing: they are not copied to the worker. */
const withoutPictures = (project: Project): Project =>
  project.underlays.length === 0
    ? project
    : { ...project, underlays: project.underlays.map((underlay) => ({ ...underlay, picture: "" })) };
