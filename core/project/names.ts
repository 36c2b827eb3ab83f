import type { Item, Profile } from "./schema.ts";

/** What the builder calls an item; its kind and number where it has no name. */
export const nameOfItem = (item: Item): string =>
  item.name.trim() || `${item.kind === "section" ? "Section" : "Fence"} ${item.number}`;

/** What the builder calls a profile; its id where it has no name. */
export const nameOfProfile = (profile: Profile): string => profile.name.trim() || `Profile ${profile.id}`;
