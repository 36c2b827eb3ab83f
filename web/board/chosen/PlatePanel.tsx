import { nameOfItem, type Plate, type PlateChanges } from "../../../core/project/index.ts";
import { Choice, Select, TextField } from "../../controls/index.ts";
import { codeOfItem } from "../../drawings/index.ts";
import { HelpMark } from "../../help/index.ts";
import { useDocument } from "../../stores/index.ts";
import { ChosenProblems } from "./ChosenProblems.tsx";
import { DeleteButton } from "./DeleteButton.tsx";
import { FollowOffers } from "./FollowOffers.tsx";
import { LabelledCell } from "./LabelledCell.tsx";
import { NodesTable } from "./NodesTable.tsx";
import { WingFields } from "./WingFields.tsx";

/** A plate as numbers: its base, its metal, its wings and its bond to the foam. */
export function PlatePanel({ plate }: { readonly plate: Plate }) {
  const metals = useDocument((state) => state.project.materials.metals);
  const change = (changes: PlateChanges) =>
    useDocument.getState().dispatch({ kind: "change-plate", itemId: plate.id, changes });
  return (
    <>
      <header>
        <h2>
          <span className="code">{codeOfItem(plate)}</span> {nameOfItem(plate)}
        </h2>
        <HelpMark term="plate" />
        <DeleteButton word="Delete plate" commands={[{ kind: "delete-item", itemId: plate.id }]} />
      </header>
      <ChosenProblems belongs={({ itemId }) => itemId === plate.id} />
      <TextField label="Name" value={plate.name} mostLetters={60} onChange={(name) => change({ name })} />
      <Select
        label="Metal"
        value={plate.metalId}
        options={metals.map((metal) => ({ value: metal.id, word: metal.name }))}
        testId="plate-metal"
        onChange={(metalId) => change({ metalId })}
      />
      <LabelledCell
        label="Thickness"
        kind="fine length"
        value={plate.thicknessMm}
        testId="plate-thickness"
        onChange={(thicknessMm) => change({ thicknessMm })}
      />
      <LabelledCell
        label="Lower face of the base, z"
        kind="length"
        value={plate.zMm}
        testId="plate-z"
        onChange={(zMm) => change({ zMm })}
      />
      <NodesTable
        line={{ of: "item", itemId: plate.id }}
        title="Base in plan"
        closed={plate.outline.closed}
      />
      <FollowOffers itemId={plate.id} />
      <WingFields plate={plate} onChange={(wings) => change({ wings })} />
      <h3 className="caption">Bond to the foam</h3>
      <LabelledCell
        label="Bond line"
        kind="fine length"
        value={plate.bond.lineMm}
        testId="bond-line"
        onChange={(lineMm) => change({ bond: { ...plate.bond, lineMm } })}
      />
      <Choice
        label="The step to the skin beside it is taken up by a"
        value={plate.bond.step}
        options={[
          { value: "rebate", word: "rebate" },
          { value: "shim", word: "shim" },
          { value: "ramp", word: "filled ramp" },
        ]}
        testId="bond-step"
        onChange={(step) => change({ bond: { ...plate.bond, step } })}
      />
    </>
  );
}
