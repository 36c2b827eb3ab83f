import { nameOfItem, type Plate } from "../project/index.ts";

/** A wing as problems name and place it. */
export interface WingOwner {
  readonly name: string;
  readonly place: { readonly itemId: string; readonly wingId: string };
}

/** Wings have no names of their own; they count as they were drawn. */
export const wingName = (plate: Plate, wingId: string): string =>
  `wing ${plate.wings.findIndex(({ id }) => id === wingId) + 1}`;

export const wingOwner = (plate: Plate, wingId: string): WingOwner => ({
  name: `${wingName(plate, wingId)} of ${nameOfItem(plate)}`,
  place: { itemId: plate.id, wingId },
});
