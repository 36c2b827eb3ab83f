import { useMemo } from "react";
import { useDesign, useView } from "../stores/index.ts";
import type { Selection } from "../tools/index.ts";

/** What is chosen, as something drawn: a part that was chosen on the shelf stands for the item it is made of. */
export function drawnSelection(): Selection | undefined {
  return asDrawn(useView.getState().selection, useDesign.getState().design?.parts);
}

/** What is chosen, as something drawn; a component that uses it is drawn again when it changes. */
export function useDrawnSelection(): Selection | undefined {
  const selection = useView((view) => view.selection);
  const itemId = useDesign((state) => itemOfPart(selection, state.design?.parts));
  return useMemo(() => (itemId === undefined ? selection : { kind: "item", itemId }), [selection, itemId]);
}

type Parts = readonly { readonly id: string; readonly itemId: string }[];

function asDrawn(selection: Selection | undefined, parts: Parts | undefined): Selection | undefined {
  const itemId = itemOfPart(selection, parts);
  return itemId === undefined ? selection : { kind: "item", itemId };
}

const itemOfPart = (selection: Selection | undefined, parts: Parts | undefined): string | undefined =>
  selection?.kind === "part" ? parts?.find((part) => part.id === selection.partId)?.itemId : undefined;
