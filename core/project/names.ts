import type { Item, Opening, Profile } from "./schema.ts";

/** What the builder calls an item; its kind and number where it has no name. */
export const nameOfItem = (item: Item): string =>
  item.name.trim() || `${KIND_WORDS[item.kind]} ${item.number}`;

const KIND_WORDS: Readonly<Record<Item["kind"], string>> = {
  section: "Section",
  fence: "Fence",
  transition: "Transition",
  plate: "Plate",
};

/** What the builder calls an opening; its number where it has no name. */
export const nameOfOpening = (opening: Opening): string => opening.name.trim() || `Opening ${opening.number}`;

/** What the builder calls a profile; its id where it has no name. */
export const nameOfProfile = (profile: Profile): string => profile.name.trim() || `Profile ${profile.id}`;
