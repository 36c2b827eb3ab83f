import type { NoteChanges, UnderlayChanges } from "./command-types.ts";
import { replaceOne } from "./edit-lines.ts";
import type { Note, Project, Underlay } from "./schema.ts";
import { withChanges } from "./with-changes.ts";

/** The document with a note more; the same document where its id is taken. */
export const addNote = (project: Project, note: Note): Project =>
  project.notes.some(({ id }) => id === note.id) ? project : { ...project, notes: [...project.notes, note] };

/** The document with one note changed. */
export const changeNote = (project: Project, noteId: string, changes: NoteChanges): Project =>
  withNotes(
    project,
    replaceOne(
      project.notes,
      ({ id }) => id === noteId,
      (note) => withChanges(note, changes, []),
    ),
  );

/** The document without one of its notes. */
export const deleteNote = (project: Project, noteId: string): Project =>
  withNotes(project, without(project.notes, noteId));

/** The document with a picture more under the drawing; the same document where its id is taken. */
export const addUnderlay = (project: Project, underlay: Underlay): Project =>
  project.underlays.some(({ id }) => id === underlay.id)
    ? project
    : { ...project, underlays: [...project.underlays, underlay] };

/** The document with one picture under the drawing changed. */
export const changeUnderlay = (project: Project, underlayId: string, changes: UnderlayChanges): Project =>
  withUnderlays(
    project,
    replaceOne(
      project.underlays,
      ({ id }) => id === underlayId,
      (underlay) => withChanges(underlay, changes, []),
    ),
  );

/** The document without one of the pictures under the drawing. */
export const deleteUnderlay = (project: Project, underlayId: string): Project =>
  withUnderlays(project, without(project.underlays, underlayId));

const withNotes = (project: Project, notes: readonly Note[]): Project =>
  notes === project.notes ? project : { ...project, notes };

const withUnderlays = (project: Project, underlays: readonly Underlay[]): Project =>
  underlays === project.underlays ? project : { ...project, underlays };

/** The list without what has the id; the same list where nothing has it. */
function without<Thing extends { readonly id: string }>(
  list: readonly Thing[],
  takenId: string,
): readonly Thing[] {
  const kept = list.filter(({ id }) => id !== takenId);
  return kept.length === list.length ? list : kept;
}
