import { useSyncExternalStore } from "react";
import { useEdit } from "../edit/index.ts";
import { useFiles } from "../files/index.ts";
import { followHand } from "../hand/index.ts";
import { useDesign, useDocument, useLaying, usePreferences, useView } from "../stores/index.ts";
import type { Deed } from "./deed.ts";

/** Whether a deed would do something now. */
export const isPossibleNow = (deed: Deed): boolean => deed.isPossible?.() ?? true;

/** The word of a deed as things stand now. */
export const wordNowOf = (deed: Deed): string => deed.wordNow?.() ?? deed.word;

/** Whether a deed would do something, and its word; both, and what it is about, again whenever a store has changed. */
export function usePossible(deed: Deed): { readonly isPossible: boolean; readonly word: string } {
  const isPossible = useSyncExternalStore(followStores, () => isPossibleNow(deed));
  const word = useSyncExternalStore(followStores, () => wordNowOf(deed));
  useSyncExternalStore(followStores, () => deed.about?.());
  return { isPossible, word };
}

function followStores(onChange: () => void): () => void {
  const stores = [useDocument, useEdit, useView, usePreferences, useDesign, useFiles, useLaying];
  const ends = [followHand(onChange), ...stores.map((store) => store.subscribe(onChange))];
  return () => {
    for (const end of ends) end();
  };
}
