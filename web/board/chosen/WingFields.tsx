import { Plus, Trash2 } from "lucide-react";
import { useState } from "react";
import {
  nodeLabel,
  ON_CENTRE_LINE_MM,
  sayEdge,
  toDegrees,
  toRadians,
} from "../../../core/foundation/index.ts";
import { metalOf, type Plate, type Project, type Wing } from "../../../core/project/index.ts";
import { Select, useLengths } from "../../controls/index.ts";
import type { Lengths } from "../../lengths/index.ts";
import { useDocument, useView } from "../../stores/index.ts";
import { newId } from "../../tools/index.ts";
import { LabelledCell } from "./LabelledCell.tsx";

interface WingFieldsProps {
  readonly plate: Plate;
  readonly onChange: (wings: readonly Wing[]) => void;
}

/** The wings of a plate, each bent along one straight edge of its base, and the offer to add one. */
export function WingFields({ plate, onChange }: WingFieldsProps) {
  const change = (wing: Wing) => onChange(plate.wings.map((other) => (other.id === wing.id ? wing : other)));
  return (
    <section className="wings">
      <h3 className="caption">Wings</h3>
      {plate.wings.map((wing, index) => (
        <OneWing
          key={wing.id}
          wing={wing}
          number={index + 1}
          onChange={change}
          onDelete={() => onChange(plate.wings.filter(({ id }) => id !== wing.id))}
        />
      ))}
      <AddWing plate={plate} onChange={onChange} />
    </section>
  );
}

interface OneWingProps {
  readonly wing: Wing;
  readonly number: number;
  readonly onChange: (wing: Wing) => void;
  readonly onDelete: () => void;
}

function OneWing({ wing, number, onChange, onDelete }: OneWingProps) {
  const cell = (name: NumberName, label: string) => (
    <LabelledCell
      label={label}
      kind={name === "insideRadiusMm" ? "fine length" : "length"}
      value={wing[name]}
      testId={`${wing.id}-${name}`}
      onChange={(value) => onChange({ ...wing, [name]: value })}
    />
  );
  const angle = (name: AngleName, label: string) => (
    <LabelledCell
      label={label}
      kind="angle"
      value={toDegrees(wing[name])}
      testId={`${wing.id}-${name}`}
      onChange={(value) => onChange({ ...wing, [name]: toRadians(value) })}
    />
  );
  const { deductionMm: _, ...withoutDeduction } = wing;
  return (
    <div className="wing" data-testid={`wing-${wing.id}`}>
      <header>
        <h4>
          Wing {number} on {sayEdge(wing.edgeId)}
        </h4>
        <button
          type="button"
          className="plain row-deed"
          title="Take this wing away"
          data-testid={`${wing.id}-delete`}
          onClick={onDelete}
        >
          <Trash2 aria-hidden />
          <span className="visually-hidden">Take wing {number} away</span>
        </button>
      </header>
      {angle("angleRad", "Bent up by")}
      {cell("lengthMm", "Length from the corner")}
      {cell("insideRadiusMm", "Inside radius")}
      {cell("startInsetMm", "Begins later by")}
      {cell("endInsetMm", "Ends earlier by")}
      {angle("startTaperRad", "Its start leans in by")}
      {angle("endTaperRad", "Its end leans in by")}
      <LabelledCell
        label="Measured deduction"
        kind="fine length"
        hint="by K factor"
        value={wing.deductionMm}
        testId={`${wing.id}-deductionMm`}
        onClear={() => onChange(withoutDeduction)}
        onChange={(deductionMm) => onChange({ ...wing, deductionMm })}
      />
    </div>
  );
}

type NumberName = "lengthMm" | "insideRadiusMm" | "startInsetMm" | "endInsetMm";
type AngleName = "angleRad" | "startTaperRad" | "endTaperRad";

/** A wing goes on any straight edge that has none: on the chosen one, else on one of a list. */
function AddWing({ plate, onChange }: WingFieldsProps) {
  const project = useDocument((state) => state.project);
  const selection = useView((view) => view.selection);
  const [listed, setListed] = useState("");
  const lengths = useLengths();
  const edges = edgesForWings(plate, project.symmetry === "mirrored", lengths);
  const chosen = selection?.kind === "item" ? edges.find(({ id }) => id === selection.edgeId) : undefined;
  const edgeId = chosen?.id ?? edges.find(({ id }) => id === listed)?.id ?? edges[0]?.id;
  if (edgeId === undefined) return <p className="pencil">Every straight edge of the base has a wing.</p>;
  return (
    <>
      {chosen ? null : (
        <Select
          label="On"
          value={edgeId}
          options={edges.map(({ id, word }) => ({ value: id, word }))}
          testId="wing-edge"
          onChange={setListed}
        />
      )}
      <div className="deeds">
        <button
          type="button"
          title={`Bend a wing up along ${sayEdge(edgeId)}`}
          data-testid="add-wing"
          onClick={() => onChange([...plate.wings, newWing(project, plate, edgeId)])}
        >
          <Plus aria-hidden />
          {chosen ? "Add a wing here" : "Add a wing"}
        </button>
      </div>
    </>
  );
}

/** Straight edges without a wing; one on the centre line is none, since the base goes on in its image. */
function edgesForWings(
  { outline, wings }: Plate,
  isMirrored: boolean,
  { show, unit }: Lengths,
): readonly { readonly id: string; readonly word: string }[] {
  const { elements } = outline;
  return elements.flatMap((element, index) => {
    const next = elements[index + 1] ?? elements[0];
    const isStraight = element.kind === "node" && element.next === "line" && next?.kind === "node";
    if (!isStraight || wings.some(({ edgeId }) => edgeId === element.id)) return [];
    const isOnCentreLine = Math.max(Math.abs(element.y), Math.abs(next.y)) <= ON_CENTRE_LINE_MM;
    if (isMirrored && isOnCentreLine) return [];
    const lengthMm = Math.hypot(next.x - element.x, next.y - element.y);
    const ends = `node ${nodeLabel(element.id)} to ${nodeLabel(next.id)}`;
    return [{ id: element.id, word: element.edgeName ?? `${ends}, ${show(lengthMm)} ${unit}` }];
  });
}

/** Long enough for a row of rivets with their edge distance. */
const NEW_WING_MM = 30;

/** A wing as it is first added: straight up, as tightly bent as its metal takes, as long as its edge. */
function newWing(project: Project, plate: Plate, edgeId: string): Wing {
  const ratio = metalOf(project, plate.metalId)?.leastRadiusRatio ?? 1;
  return {
    id: newId(
      "w",
      plate.wings.map(({ id }) => id),
    ),
    edgeId,
    angleRad: Math.PI / 2,
    insideRadiusMm: ratio * plate.thicknessMm,
    lengthMm: NEW_WING_MM,
    startInsetMm: 0,
    endInsetMm: 0,
    startTaperRad: 0,
    endTaperRad: 0,
  };
}
