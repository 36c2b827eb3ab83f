import type { Fence } from "../../../core/project/index.ts";
import { useDocument } from "../../stores/index.ts";
import { NumberCell } from "./NumberCell.tsx";

type DepthNodes = Extract<Fence["lowerEdge"], { kind: "depths" }>["nodes"];

/** The lower edge of a fence as depths below its sheet, along its own length. */
export function DepthsTable({ fence, nodes }: { readonly fence: Fence; readonly nodes: DepthNodes }) {
  const move = (nodeId: string, to: readonly [number, number]) =>
    useDocument
      .getState()
      .dispatch({ kind: "move-node", line: { of: "lower-edge", itemId: fence.id }, nodeId, to });
  return (
    <section className="nodes">
      <h3 className="caption">Lower edge, depth below the sheet</h3>
      <table className="figures" data-testid="depths">
        <thead>
          <tr>
            <th scope="col">Along mm</th>
            <th scope="col">Depth mm</th>
          </tr>
        </thead>
        <tbody>
          {nodes.map(({ id, alongMm, depthMm }) => (
            <tr key={id}>
              <td>
                <NumberCell
                  label="Along the fence in mm"
                  value={alongMm}
                  testId={`depth-${id}-along`}
                  onChange={(value) => move(id, [value, depthMm])}
                />
              </td>
              <td>
                <NumberCell
                  label="Depth below the sheet in mm"
                  value={depthMm}
                  testId={`depth-${id}-depth`}
                  onChange={(value) => move(id, [alongMm, value])}
                />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
