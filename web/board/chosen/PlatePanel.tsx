import { nameOfItem, type Plate, type PlateChanges } from "../../../core/project/index.ts";
import { TextField } from "../../controls/index.ts";
import { codeOfItem } from "../../drawings/index.ts";
import { useDocument } from "../../stores/index.ts";
import { ChosenProblems } from "./ChosenProblems.tsx";
import { DeleteButton } from "./DeleteButton.tsx";
import { NodesTable } from "./NodesTable.tsx";

/** A plate as numbers: its base, its metal, its wings and its bond. */
export function PlatePanel({ plate }: { readonly plate: Plate }) {
  const change = (changes: PlateChanges) =>
    useDocument.getState().dispatch({ kind: "change-plate", itemId: plate.id, changes });
  return (
    <>
      <header>
        <h2>
          <span className="code">{codeOfItem(plate)}</span> {nameOfItem(plate)}
        </h2>
        <DeleteButton word="Delete plate" commands={[{ kind: "delete-item", itemId: plate.id }]} />
      </header>
      <ChosenProblems belongs={({ itemId }) => itemId === plate.id} />
      <TextField label="Name" value={plate.name} mostLetters={60} onChange={(name) => change({ name })} />
      <NodesTable
        line={{ of: "item", itemId: plate.id }}
        title="Base in plan"
        closed={plate.outline.closed}
      />
    </>
  );
}
