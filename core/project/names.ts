import type { Item, Note, Opening, Profile, Underlay } from "./schema.ts";

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

/** What the builder calls a picture under the drawing. */
export const nameOfUnderlay = (underlay: Underlay): string =>
  underlay.name.trim() || `Picture ${underlay.id}`;

/** A note by how it begins. */
export function nameOfNote(note: Note): string {
  const text = note.text.trim().replace(/\s+/g, " ");
  if (text === "") return "An empty note";
  return `Note “${text.length > NOTE_BEGINNING ? `${text.slice(0, NOTE_BEGINNING).trimEnd()}…` : text}”`;
}

/** As many letters of a note as tell it from the others. */
const NOTE_BEGINNING = 24;
