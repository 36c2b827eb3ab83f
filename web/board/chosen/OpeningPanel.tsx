import { nameOfItem, nameOfOpening, type Opening, type OpeningChanges } from "../../../core/project/index.ts";
import { Choice, Select, TextField } from "../../controls/index.ts";
import { codeOfItem, codeOfOpening } from "../../drawings/index.ts";
import { HelpMark } from "../../help/index.ts";
import { useDocument } from "../../stores/index.ts";
import { type Circle, circleOf, circleOutline } from "../../tools/index.ts";
import { ChosenProblems } from "./ChosenProblems.tsx";
import { DeleteButton } from "./DeleteButton.tsx";
import { LabelledCell } from "./LabelledCell.tsx";
import { NodesTable } from "./NodesTable.tsx";
import { OpeningWebs } from "./OpeningWebs.tsx";

/** An opening as numbers: its name, how it is cut, and its outline. */
export function OpeningPanel({ opening }: { readonly opening: Opening }) {
  const items = useDocument((state) => state.project.items);
  const sheets = items.filter((item) => item.kind === "section" || item.kind === "transition");
  const change = (changes: OpeningChanges) =>
    useDocument.getState().dispatch({ kind: "change-opening", openingId: opening.id, changes });
  const circle = circleOf(opening.outline);
  return (
    <>
      <header>
        <h2>
          <span className="code">{codeOfOpening(opening)}</span> {nameOfOpening(opening)}
        </h2>
        <HelpMark term="opening" />
        <DeleteButton word="Delete opening" commands={[{ kind: "delete-opening", openingId: opening.id }]} />
      </header>
      <ChosenProblems belongs={({ openingId }) => openingId === opening.id} />
      <TextField label="Name" value={opening.name} mostLetters={60} onChange={(name) => change({ name })} />
      <Choice
        label="Its edge is cut"
        value={opening.cut}
        options={[
          { value: "upright", word: "upright" },
          { value: "square", word: "square to a sheet" },
        ]}
        testId="opening-cut"
        onChange={(cut) =>
          change(
            cut === "upright" ? { cut, itemId: undefined } : { cut, itemId: opening.itemId ?? sheets[0]?.id },
          )
        }
      />
      {opening.cut === "square" ? (
        <Select
          label="The sheet"
          value={opening.itemId ?? ""}
          options={sheets.map((item) => ({
            value: item.id,
            word: `${codeOfItem(item)} ${nameOfItem(item)}`,
          }))}
          testId="opening-sheet"
          onChange={(itemId) => change({ itemId })}
        />
      ) : null}
      <OpeningWebs openingId={opening.id} />
      {circle ? (
        <CircleFields circle={circle} onChange={(next) => change({ outline: circleOutline(next) })} />
      ) : (
        <NodesTable
          line={{ of: "opening", openingId: opening.id }}
          title="Outline in plan"
          closed={opening.outline.closed}
        />
      )}
    </>
  );
}

/** A circle by its centre and radius; half of one keeps to the centre line. */
function CircleFields({
  circle,
  onChange,
}: {
  readonly circle: Circle;
  readonly onChange: (circle: Circle) => void;
}) {
  const [x, y] = circle.centre;
  return (
    <>
      <h3 className="caption">{circle.isHalf ? "Circle about the centre line" : "Circle"}</h3>
      <LabelledCell
        label="Centre x"
        kind="length"
        value={x}
        testId="circle-x"
        onChange={(typed) => onChange({ ...circle, centre: [typed, y] })}
      />
      {circle.isHalf ? null : (
        <LabelledCell
          label="Centre y"
          kind="length"
          value={y}
          testId="circle-y"
          onChange={(typed) => onChange({ ...circle, centre: [x, typed] })}
        />
      )}
      <LabelledCell
        label="Radius"
        kind="length"
        value={circle.radiusMm}
        testId="circle-radius"
        onChange={(radiusMm) => onChange({ ...circle, radiusMm })}
      />
    </>
  );
}
