import { createContext, createElement, type ReactNode, useContext } from "react";
import { createStore, type StoreApi, type UseBoundStore, useStore } from "zustand";

/** While the hand drags and no answer comes, what is shown a moment later waits no longer than this, ms. */
const LATEST_MS = 120;

/** After a frame the screen has it before anything else is worked on, ms. */
const SETTLE_MS = 8;

const IsLater = createContext(false);

/**
 * Panels of numbers, dimensions and the cross-section: while the hand drags, what is drawn inside sees document and
 * design a moment late, so that the dragged line and the shelf come first. At all other times it sees them at once.
 */
export function AMomentLater({ children }: { readonly children: ReactNode }) {
  return createElement(IsLater, { value: true }, children);
}

/** How a store's copy for `AMomentLater` follows it. */
export interface Following<State> {
  /** The hand drags: the copy may wait. */
  readonly mayWait: () => boolean;
  /** Whether a change is what is waited for: the copies follow as soon as it has been painted. */
  readonly isAnswer: (now: State, before: State) => boolean;
}

const copies: (() => void)[] = [];
let waiting: ReturnType<typeof setTimeout> | undefined;

/** A store as components read it: a moment late inside `AMomentLater`, else as it is. */
export function readLater<State>(
  store: UseBoundStore<StoreApi<State>>,
  following: Following<State>,
): UseBoundStore<StoreApi<State>> {
  const late = copyBehind(store, following);
  const read = <Chosen>(choose?: (state: State) => Chosen) =>
    // biome-ignore lint/style/noNonNullAssertion: a store is read whole where nothing is chosen from it
    useStore(useContext(IsLater) ? late : store, choose!);
  return Object.assign(read, store);
}

/** A copy that follows its store; all copies follow together, so that they always belong to each other. */
export function copyBehind<State>(store: StoreApi<State>, following: Following<State>): StoreApi<State> {
  const late = createStore(() => store.getState());
  copies.push(() => late.setState(store.getState(), true));
  store.subscribe((now, before) => {
    if (!following.mayWait()) catchUp();
    else if (following.isAnswer(now, before)) afterPaint(catchUp);
    else waiting ??= setTimeout(catchUp, LATEST_MS);
  });
  return late;
}

function catchUp(): void {
  clearTimeout(waiting);
  waiting = undefined;
  for (const copy of copies) copy();
}

function afterPaint(act: () => void): void {
  requestAnimationFrame(() => setTimeout(act, SETTLE_MS));
}
