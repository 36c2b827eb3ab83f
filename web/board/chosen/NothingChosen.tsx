import { nameOfItem, nameOfOpening } from "../../../core/project/index.ts";
import { codeOfItem, codeOfOpening } from "../../drawings/index.ts";
import { useDocument, useView } from "../../stores/index.ts";

/** Everything that can be chosen, by name. */
export function NothingChosen() {
  const project = useDocument((state) => state.project);
  const { select, setTool } = useView.getState();
  if (project.items.length === 0) {
    return (
      <p>
        Nothing is drawn yet. Draw the outline of a section in the plan.{" "}
        <button type="button" onClick={() => setTool("section")}>
          Draw a section
        </button>
      </p>
    );
  }
  return (
    <>
      <p className="pencil">Nothing is chosen. Click a line on the board, or choose it here.</p>
      <ul className="things">
        {project.items.map((item) => (
          <li key={item.id}>
            <button
              type="button"
              className="plain"
              data-testid={`choose-${item.id}`}
              onClick={() => select({ kind: "item", itemId: item.id })}
            >
              <span className="code">{codeOfItem(item)}</span>
              {nameOfItem(item)}
            </button>
          </li>
        ))}
        {project.openings.map((opening) => (
          <li key={opening.id}>
            <button
              type="button"
              className="plain"
              data-testid={`choose-${opening.id}`}
              onClick={() => select({ kind: "opening", openingId: opening.id })}
            >
              <span className="code">{codeOfOpening(opening)}</span>
              {nameOfOpening(opening)}
            </button>
          </li>
        ))}
        {project.profiles.map((profile) => (
          <li key={profile.id}>
            <button
              type="button"
              className="plain"
              data-testid={`choose-${profile.id}`}
              onClick={() => select({ kind: "profile", profileId: profile.id })}
            >
              <span className="pencil">profile</span>
              {profile.name}
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}
