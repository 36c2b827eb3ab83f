import { Plus, Trash2 } from "lucide-react";
import { nodeLabel } from "../../../core/foundation/index.ts";
import type { Command, Fence } from "../../../core/project/index.ts";
import { useLengths } from "../../controls/index.ts";
import { useDocument } from "../../stores/index.ts";
import { newId } from "../../tools/index.ts";
import { cellMarks, SheetOfNodes } from "../node-table/index.ts";
import { LengthCell } from "./LengthCell.tsx";

type DepthNodes = Extract<Fence["lowerEdge"], { kind: "depths" }>["nodes"];

interface DepthsTableProps {
  readonly fence: Fence;
  readonly nodes: DepthNodes;
}

/** The lower edge of a fence as depths below its sheet, along its own length. */
export function DepthsTable({ fence, nodes }: DepthsTableProps) {
  const { unit } = useLengths();
  const line = { of: "lower-edge", itemId: fence.id } as const;
  const change = (command: Command) => useDocument.getState().dispatch(command);
  const move = (nodeId: string, to: readonly [number, number]) =>
    change({ kind: "move-node", line, nodeId, to });
  return (
    <section className="nodes">
      <h3 className="caption">Lower edge, depth below the sheet</h3>
      <SheetOfNodes line={line}>
        <table className="figures" data-testid="depths">
          <thead>
            <tr>
              <th scope="col">Node</th>
              <th scope="col">Along {unit}</th>
              <th scope="col">Depth {unit}</th>
              <th scope="col">
                <span className="visually-hidden">Add and delete</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {nodes.map(({ id, alongMm, depthMm }, index) => (
              <tr key={id} data-testid={`depth-${id}`}>
                <th scope="row" className="code">
                  {nodeLabel(id)}
                </th>
                <td {...cellMarks(id, "along")}>
                  <LengthCell
                    label={`Node ${nodeLabel(id)}: along the fence`}
                    value={alongMm}
                    testId={`depth-${id}-along`}
                    onChange={(value) => move(id, [value, depthMm])}
                  />
                </td>
                <td {...cellMarks(id, "depth")}>
                  <LengthCell
                    label={`Node ${nodeLabel(id)}: below the sheet`}
                    value={depthMm}
                    testId={`depth-${id}-depth`}
                    onChange={(value) => move(id, [alongMm, value])}
                  />
                </td>
                <td>
                  <button
                    type="button"
                    className="plain row-deed"
                    title="Add a depth after this one"
                    data-testid={`depth-${id}-add`}
                    onClick={() => change(addAfter(fence, nodes, index))}
                  >
                    <Plus aria-hidden />
                    <span className="visually-hidden">Add a depth after node {nodeLabel(id)}</span>
                  </button>
                  {nodes.length > 1 ? (
                    <button
                      type="button"
                      className="plain row-deed"
                      title="Delete this depth"
                      data-testid={`depth-${id}-delete`}
                      onClick={() => change({ kind: "delete-node", line, nodeId: id })}
                    >
                      <Trash2 aria-hidden />
                      <span className="visually-hidden">Delete the depth at node {nodeLabel(id)}</span>
                    </button>
                  ) : null}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </SheetOfNodes>
    </section>
  );
}

/** So far behind the last depth a further one is put, mm along the fence. */
const STEP_MM = 100;

/** Between two depths the new one lies half way; behind the last it is as deep as that. */
function addAfter(fence: Fence, nodes: DepthNodes, index: number): Command {
  const id = newId(
    "d",
    nodes.map((node) => node.id),
  );
  const node = nodes[index];
  if (node === undefined || nodes[index + 1] !== undefined) {
    const line = { of: "lower-edge", itemId: fence.id } as const;
    return { kind: "split-segment", line, afterNodeId: node?.id ?? "", t: 0.5, newNodeId: id };
  }
  const last = { id, alongMm: node.alongMm + STEP_MM, depthMm: node.depthMm };
  const lowerEdge = { kind: "depths", nodes: [...nodes, last] } as const;
  return { kind: "change-fence", itemId: fence.id, changes: { lowerEdge } };
}
