import { nameOfOpening, type Opening, type OpeningChanges } from "../../../core/project/index.ts";
import { TextField } from "../../controls/index.ts";
import { codeOfOpening } from "../../drawings/index.ts";
import { useDocument } from "../../stores/index.ts";
import { ChosenProblems } from "./ChosenProblems.tsx";
import { DeleteButton } from "./DeleteButton.tsx";
import { NodesTable } from "./NodesTable.tsx";

/** An opening as numbers: its name, how it is cut, and its outline. */
export function OpeningPanel({ opening }: { readonly opening: Opening }) {
  const change = (changes: OpeningChanges) =>
    useDocument.getState().dispatch({ kind: "change-opening", openingId: opening.id, changes });
  return (
    <>
      <header>
        <h2>
          <span className="code">{codeOfOpening(opening)}</span> {nameOfOpening(opening)}
        </h2>
        <DeleteButton word="Delete opening" commands={[{ kind: "delete-opening", openingId: opening.id }]} />
      </header>
      <ChosenProblems belongs={({ openingId }) => openingId === opening.id} />
      <TextField label="Name" value={opening.name} mostLetters={60} onChange={(name) => change({ name })} />
      <NodesTable
        line={{ of: "opening", openingId: opening.id }}
        title="Outline in plan"
        closed={opening.outline.closed}
      />
    </>
  );
}
