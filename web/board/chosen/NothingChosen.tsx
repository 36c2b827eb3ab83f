import {
  nameOfItem,
  nameOfNote,
  nameOfOpening,
  nameOfProfile,
  nameOfUnderlay,
  standingOf,
  type ThingRef,
} from "../../../core/project/index.ts";
import { codeOfItem, codeOfOpening } from "../../drawings/index.ts";
import { StandingSwitches } from "../../standing/index.ts";
import { type Selection, useDocument, useView } from "../../stores/index.ts";

/** Everything that can be chosen, by name; what is drawn can be locked and hidden from here. */
export function NothingChosen() {
  const project = useDocument((state) => state.project);
  const { items, openings, profiles, notes, underlays } = project;
  if (items.length === 0 && underlays.length === 0 && notes.length === 0) {
    return (
      <p>
        Nothing is drawn yet. Draw the outline of a section in the plan.{" "}
        <button type="button" onClick={() => useView.getState().setTool("section")}>
          Draw a section
        </button>
      </p>
    );
  }
  return (
    <>
      <p className="pencil">Nothing is chosen. Click a line on the board, or choose it here.</p>
      <ul className="things">
        {items.map((item) => (
          <Thing
            key={item.id}
            id={item.id}
            thing={{ of: "item", itemId: item.id }}
            code={codeOfItem(item)}
            name={nameOfItem(item)}
            selection={{ kind: "item", itemId: item.id }}
          />
        ))}
        {openings.map((opening) => (
          <Thing
            key={opening.id}
            id={opening.id}
            thing={{ of: "opening", openingId: opening.id }}
            code={codeOfOpening(opening)}
            name={nameOfOpening(opening)}
            selection={{ kind: "opening", openingId: opening.id }}
          />
        ))}
        {profiles.map((profile) => (
          <Thing
            key={profile.id}
            id={profile.id}
            thing={{ of: "profile", profileId: profile.id }}
            kind="profile"
            name={nameOfProfile(profile)}
            selection={{ kind: "profile", profileId: profile.id }}
          />
        ))}
        {notes.map((note) => (
          <li key={note.id}>
            <button
              type="button"
              className="plain"
              data-testid={`choose-${note.id}`}
              onClick={() => useView.getState().select({ kind: "note", noteId: note.id })}
            >
              {nameOfNote(note)}
            </button>
          </li>
        ))}
        {underlays.map((underlay) => (
          <Thing
            key={underlay.id}
            id={underlay.id}
            thing={{ of: "underlay", underlayId: underlay.id }}
            kind="picture"
            name={nameOfUnderlay(underlay)}
            selection={{ kind: "underlay", underlayId: underlay.id }}
          />
        ))}
      </ul>
    </>
  );
}

interface ThingProps {
  readonly id: string;
  readonly thing: ThingRef;
  readonly name: string;
  readonly selection: Selection;
  /** The letter and number of what is made, or the word for what is not. */
  readonly code?: string;
  readonly kind?: string;
}

function Thing({ id, thing, name, selection, code, kind }: ThingProps) {
  const project = useDocument((state) => state.project);
  const { hidden } = standingOf(project, thing);
  return (
    <li className="with-standing" data-hidden={hidden || undefined}>
      <button
        type="button"
        className="plain"
        data-testid={`choose-${id}`}
        onClick={() => useView.getState().select(selection)}
      >
        {code === undefined ? <span className="pencil">{kind}</span> : <span className="code">{code}</span>}
        {name}
      </button>
      <StandingSwitches thing={thing} name={name} look="icons" />
    </li>
  );
}
