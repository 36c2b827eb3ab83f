import { useMemo } from "react";
import type { Design } from "../../core/design.ts";
import { useDesign, useView } from "../stores/index.ts";
import type { Selection } from "../tools/index.ts";

/** What is chosen, as something drawn: a part that was chosen on the shelf stands for the item it is made of. */
export function drawnSelection(): Selection | undefined {
  return asDrawn(useView.getState().selection, useDesign.getState().design);
}

/** What is chosen, as something drawn; a component that uses it is drawn again when it changes. */
export function useDrawnSelection(): Selection | undefined {
  const selection = useView((view) => view.selection);
  const itemId = useDesign((state) => itemOfChosenPart(selection, state.design));
  return useMemo(() => (itemId === undefined ? selection : { kind: "item", itemId }), [selection, itemId]);
}

type Made = Pick<Design, "parts" | "plates"> | undefined;

function asDrawn(selection: Selection | undefined, design: Made): Selection | undefined {
  const itemId = itemOfChosenPart(selection, design);
  return itemId === undefined ? selection : { kind: "item", itemId };
}

const itemOfChosenPart = (selection: Selection | undefined, design: Made): string | undefined =>
  selection?.kind === "part" ? itemOfPart(design, selection.partId) : undefined;

/** The item that a part of foam or metal is made of. */
export function itemOfPart(design: Made, partId: string): string | undefined {
  const foam = design?.parts.find((part) => part.id === partId);
  const metal = design?.plates.find((plate) => plate.parts.some((part) => part.id === partId));
  return (foam ?? metal)?.itemId;
}
