import { nodeLabel } from "../../../core/foundation/index.ts";
import type { LineRef, SpaceNode } from "../../../core/project/index.ts";
import { useLengths } from "../../controls/index.ts";
import { useDocument, useView } from "../../stores/index.ts";
import { chosenNodeId, isSameLine, lineOfSelection, selectLine } from "../../tools/index.ts";
import { cellMarks, SheetOfNodes } from "../node-table/index.ts";
import { LengthCell } from "./LengthCell.tsx";
import { NodeDetails } from "./NodeDetails.tsx";
import { SegmentSwitch } from "./NodesTable.tsx";

interface SpaceNodesTableProps {
  readonly itemId: string;
  readonly side: "first" | "second";
  readonly nodes: readonly SpaceNode[];
}

/** The nodes of an edge in space as numbers; the chosen node with all that can be set on it. */
export function SpaceNodesTable({ itemId, side, nodes }: SpaceNodesTableProps) {
  const line = { of: "edge", itemId, side, view: "plan" } as const;
  const { unit } = useLengths();
  const selection = useView((view) => view.selection);
  const chosenLine = lineOfSelection(selection);
  const isOnLine = chosenLine?.of === "edge" && isSameLine({ ...chosenLine, view: "plan" }, line);
  const chosenId = isOnLine ? chosenNodeId(selection) : undefined;
  return (
    <section className="nodes">
      <SheetOfNodes line={line}>
        <table className="figures space" data-testid={`nodes-${side}-edge`}>
          <thead>
            <tr>
              <th scope="col">Node</th>
              <th scope="col">x {unit}</th>
              <th scope="col">y {unit}</th>
              <th scope="col">z {unit}</th>
              <th scope="col">Radius</th>
              <th scope="col">To next</th>
            </tr>
          </thead>
          <tbody>
            {nodes.map((node, index) => (
              <NodeRow
                key={node.id}
                line={line}
                node={node}
                before={nodes[index - 1]}
                isLast={index === nodes.length - 1}
                isChosen={node.id === chosenId}
              />
            ))}
          </tbody>
        </table>
      </SheetOfNodes>
      <NodeDetails line={line} nodeId={chosenId} closed={false} />
    </section>
  );
}

interface NodeRowProps {
  readonly line: Extract<LineRef, { of: "edge" }>;
  readonly node: SpaceNode;
  readonly before: SpaceNode | undefined;
  readonly isLast: boolean;
  readonly isChosen: boolean;
}

function NodeRow({ line, node, before, isLast, isChosen }: NodeRowProps) {
  const label = nodeLabel(node.id);
  const testId = `${line.side}-node-${node.id}`;
  const { dispatch } = useDocument.getState();
  const choose = () => {
    if (!isChosen) useView.getState().select({ ...selectLine(line), nodeId: node.id });
  };
  const move = (view: "plan" | "side", to: readonly [number, number]) =>
    dispatch({ kind: "move-node", line: { ...line, view }, nodeId: node.id, to });
  const round = (radiusMm: number | undefined) =>
    dispatch({ kind: "change-node", line, nodeId: node.id, changes: { radiusMm } });
  const mayRound = !isLast && before?.next === "line" && node.next === "line";
  return (
    <tr data-chosen-row={isChosen || undefined} data-testid={testId}>
      <th scope="row">
        <button type="button" className="plain node-name" aria-pressed={isChosen} onClick={choose}>
          {label}
        </button>
      </th>
      <td {...cellMarks(node.id, "x")}>
        <LengthCell
          label={`x of node ${label}`}
          value={node.x}
          testId={`${testId}-x`}
          onFocus={choose}
          onChange={(x) => move("plan", [x, node.y])}
        />
      </td>
      <td {...cellMarks(node.id, "y")}>
        <LengthCell
          label={`y of node ${label}`}
          value={node.y}
          testId={`${testId}-y`}
          onFocus={choose}
          onChange={(y) => move("plan", [node.x, y])}
        />
      </td>
      <td {...cellMarks(node.id, "z")}>
        <LengthCell
          label={`Height z of node ${label}`}
          value={node.z}
          testId={`${testId}-z`}
          onFocus={choose}
          onChange={(z) => move("side", [node.x, z])}
        />
      </td>
      <td {...cellMarks(node.id, "radius")}>
        {mayRound || node.radiusMm !== undefined ? (
          <LengthCell
            label={`Radius at node ${label}`}
            value={node.radiusMm}
            hint="sharp"
            testId={`${testId}-radius`}
            onFocus={choose}
            onClear={() => round(undefined)}
            onChange={(radiusMm) => round(radiusMm > 0 ? radiusMm : undefined)}
          />
        ) : null}
      </td>
      <td>{isLast ? null : <SegmentSwitch line={line} nodeId={node.id} next={node.next} />}</td>
    </tr>
  );
}
