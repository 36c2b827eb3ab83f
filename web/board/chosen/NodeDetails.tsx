import { Plus, Trash2 } from "lucide-react";
import { nodeLabel, toDegrees, toRadians } from "../../../core/foundation/index.ts";
import type { LineRef, NodeChanges, PlanNode, SideNode } from "../../../core/project/index.ts";
import { Choice, TextField } from "../../controls/index.ts";
import { useDocument, useView } from "../../stores/index.ts";
import { elementsOfLine, newId, selectLine, takenIds } from "../../tools/index.ts";
import { dispatchAll } from "../dispatch-all.ts";
import { NumberCell } from "./NumberCell.tsx";

interface NodeDetailsProps {
  readonly line: LineRef;
  readonly nodeId: string | undefined;
  readonly closed: boolean;
}

/** What else can be set on the chosen node: how its segments meet, typed tangents, the name of its edge. */
export function NodeDetails({ line, nodeId, closed }: NodeDetailsProps) {
  const elements = useDocument((state) => elementsOfLine(state.project, line));
  const index = elements.findIndex((element) => element.id === nodeId);
  const node = elements[index];
  if (node?.kind !== "node") return null;
  const before = elements[index - 1] ?? (closed ? elements.at(-1) : undefined);
  const leavesCurve = node.next === "curve" && (closed || index < elements.length - 1);
  const arrivesCurve = before?.next === "curve";
  // An edge in space has no single angle that a direction could be typed as.
  const hasTangents = line.of !== "edge";
  const change = (changes: NodeChanges) =>
    useDocument.getState().dispatch({ kind: "change-node", line, nodeId: node.id, changes });
  return (
    <div className="node-details" data-testid="node-details">
      <h4>Node {nodeLabel(node.id)}</h4>
      {leavesCurve || arrivesCurve ? (
        <Meets node={node} isBetweenCurves={leavesCurve && arrivesCurve} change={change} />
      ) : null}
      {arrivesCurve && hasTangents ? (
        <Tangent
          label="Direction where the curve arrives"
          testId="tangent-in"
          valueRad={node.tangentInRad}
          onChange={(tangentInRad) => change({ tangentInRad })}
        />
      ) : null}
      {leavesCurve && hasTangents ? (
        <Tangent
          label="Direction where the curve leaves"
          testId="tangent-out"
          valueRad={node.tangentOutRad}
          onChange={(tangentOutRad) => change({ tangentOutRad })}
        />
      ) : null}
      {line.of === "item" ? (
        <TextField
          label="Name of the edge to the next"
          value={node.edgeName ?? ""}
          mostLetters={60}
          onChange={(edgeName) => change({ edgeName: edgeName === "" ? undefined : edgeName })}
        />
      ) : null}
      <Deeds line={line} node={node} />
    </div>
  );
}

type MeetsWord = "smooth" | "corner";

function Meets({
  node,
  isBetweenCurves,
  change,
}: {
  readonly node: PlanNode | SideNode;
  readonly isBetweenCurves: boolean;
  readonly change: (changes: NodeChanges) => void;
}) {
  const value: MeetsWord = node.meets ?? (isBetweenCurves ? "smooth" : "corner");
  return (
    <Choice<MeetsWord>
      label="The segments meet"
      value={value}
      options={[
        { value: "smooth", word: "smoothly" },
        { value: "corner", word: "in a corner" },
      ]}
      onChange={(meets) => change({ meets })}
    />
  );
}

function Tangent({
  label,
  testId,
  valueRad,
  onChange,
}: {
  readonly label: string;
  readonly testId: string;
  readonly valueRad: number | undefined;
  readonly onChange: (valueRad: number | undefined) => void;
}) {
  return (
    <div className="field">
      <span>{label}</span>
      <span className="entry">
        <NumberCell
          label={`${label} in degrees; 0 is rearward`}
          value={valueRad === undefined ? undefined : toDegrees(valueRad)}
          hint="free"
          testId={testId}
          onClear={() => onChange(undefined)}
          onChange={(valueDeg) => onChange(toRadians(valueDeg))}
        />
        <span className="unit">°</span>
      </span>
    </div>
  );
}

function Deeds({ line, node }: { readonly line: LineRef; readonly node: PlanNode | SideNode }) {
  const split = () => {
    const newNodeId = newId("n", takenIds(useDocument.getState().project, line));
    dispatchAll([{ kind: "split-segment", line, afterNodeId: node.id, t: 0.5, newNodeId }]);
    useView.getState().select({ ...selectLine(line), nodeId: newNodeId });
  };
  const remove = () => {
    dispatchAll([{ kind: "delete-node", line, nodeId: node.id }]);
    useView.getState().select(selectLine(line));
  };
  return (
    <div className="deeds">
      <button
        type="button"
        title="Put a node into the segment to the next (I)"
        data-testid="insert-node"
        onClick={split}
      >
        <Plus aria-hidden />
        Add node after
      </button>
      <button type="button" title="Delete this node (Delete)" data-testid="delete-node" onClick={remove}>
        <Trash2 aria-hidden />
        Delete node
      </button>
    </div>
  );
}
