import { useId, useState } from "react";
import { type Note, type NoteChanges, nameOfNote } from "../../core/project/index.ts";
import { NumberField } from "../controls/index.ts";
import { useDocument, useView } from "../stores/index.ts";
import "./notes.css";

/** A note with its words, its width, and what it is pinned to. */
export function NotePanel({ note }: { readonly note: Note }) {
  const id = useId();
  const [draft, setDraft] = useState<string>();
  const change = (changes: NoteChanges) =>
    useDocument.getState().dispatch({ kind: "change-note", noteId: note.id, changes });
  const take = () => {
    const text = draft?.trim();
    setDraft(undefined);
    if (text && text !== note.text) change({ text });
  };
  return (
    <>
      <header>
        <h2>{nameOfNote(note)}</h2>
        <button
          type="button"
          className="plain"
          data-testid="delete-chosen"
          onClick={() => {
            useDocument.getState().dispatch({ kind: "delete-note", noteId: note.id });
            useView.getState().select(undefined);
          }}
        >
          Delete
        </button>
      </header>
      <p className="pencil">
        {note.pin.kind === "node"
          ? "Pinned to a node: it goes where the node goes."
          : "Pinned to a place of the drawing."}
      </p>
      <label htmlFor={id}>Words</label>
      <textarea
        id={id}
        className="note-text"
        rows={4}
        maxLength={500}
        value={draft ?? note.text}
        data-draft={draft !== undefined || undefined}
        data-testid="note-text"
        onChange={(event) => setDraft(event.currentTarget.value)}
        onBlur={take}
      />
      <NumberField
        label="Width of its lines"
        unit="mm"
        value={note.widthMm}
        onChange={(widthMm) => change({ widthMm })}
      />
    </>
  );
}
