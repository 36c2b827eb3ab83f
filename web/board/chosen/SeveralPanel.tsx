import { Minus } from "lucide-react";
import { sayNode } from "../../../core/foundation/index.ts";
import { type Grip, nameOfItem, nameOfOpening, type Project } from "../../../core/project/index.ts";
import { DeedButton, editDeeds, lineDeeds } from "../../deeds/index.ts";
import { countGrips } from "../../edit/index.ts";
import { useDocument, useView } from "../../stores/index.ts";
import { gripKey, selectGrips } from "../../tools/index.ts";

/** Several things that are chosen: how many of what, and each by name. */
export function SeveralPanel({ grips }: { readonly grips: readonly Grip[] }) {
  const project = useDocument((state) => state.project);
  const { select } = useView.getState();
  const letGo = (key: string) => select(selectGrips(grips.filter((grip) => gripKey(grip) !== key)));
  return (
    <>
      <header>
        <h2 data-testid="several-count">{grips.length} chosen</h2>
      </header>
      <p data-testid="several-kinds">
        {countGrips(project, grips)
          .map(({ words }) => words)
          .join(", ")}
      </p>
      <p className="several-deeds">
        <DeedButton deed={editDeeds.place} testId="several-place" />
        <DeedButton deed={editDeeds.duplicate} testId="several-duplicate" />
        <DeedButton deed={editDeeds.mirror} testId="several-mirror" />
        <DeedButton deed={editDeeds.repeat} testId="several-repeat" />
        <DeedButton deed={editDeeds.join} testId="several-join" />
        <DeedButton deed={editDeeds.split} testId="several-split" />
        <DeedButton deed={lineDeeds.delete} testId="several-delete" />
      </p>
      <ul className="several-list">
        {grips.map((grip) => {
          const name = nameOfGrip(project, grip);
          const key = gripKey(grip);
          return (
            <li key={key}>
              <button type="button" className="plain name" onClick={() => select(selectGrips([grip]))}>
                {name}
              </button>
              <button
                type="button"
                className="plain"
                title={`Take ${name} away from what is chosen`}
                aria-label={`Take ${name} away from what is chosen`}
                onClick={() => letGo(key)}
              >
                <Minus aria-hidden />
              </button>
            </li>
          );
        })}
      </ul>
    </>
  );
}

function nameOfGrip(project: Project, { line, nodeId }: Grip): string {
  const name = nameOfOwner(project, line);
  return nodeId === undefined ? name : `${sayNode(nodeId)} of ${name}`;
}

function nameOfOwner(project: Project, line: Grip["line"]): string {
  if (line.of === "profile")
    return project.profiles.find(({ id }) => id === line.profileId)?.name ?? line.profileId;
  if (line.of === "opening") {
    const opening = project.openings.find(({ id }) => id === line.openingId);
    return opening ? nameOfOpening(opening) : line.openingId;
  }
  const item = project.items.find(({ id }) => id === line.itemId);
  return item ? nameOfItem(item) : line.itemId;
}
