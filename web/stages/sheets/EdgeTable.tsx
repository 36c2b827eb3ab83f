import { formatMm } from "../../../core/foundation/index.ts";
import { wordBevel } from "../../../core/joints/index.ts";
import type { Part, PartEdge } from "../../../core/patterns/index.ts";
import { ScrollAcross } from "../../controls/index.ts";
import { HelpMark } from "../../help/index.ts";

const ROLES: Readonly<Record<PartEdge["role"], string>> = {
  free: "free",
  joint: "joint",
  centre: "centre line",
  seam: "seam",
};

/** What an edge meets, and what stands outside the foam there. */
const meetsWords = ({ role, letIn }: PartEdge): string =>
  letIn ? `${letIn.of === "insert" ? "hard insert" : "flange"}, ${formatMm(letIn.widthMm)} mm` : ROLES[role];

interface EdgeTableProps {
  readonly part: Part;
  /** Tells the edge whose row the pointer is on, so that the drawing can show it. */
  readonly onPoint: (edgeId: string | undefined) => void;
}

/** The three lengths of every edge: as drawn, along the bent foam, and on the flat pattern. */
export function EdgeTable({ part, onPoint }: EdgeTableProps) {
  return (
    <ScrollAcross label="Edges">
      <h3>Edges</h3>
      <table className="figures" data-testid="edge-table">
        <thead>
          <tr>
            <th scope="col">Edge</th>
            <th scope="col" className="figure" title="Along the air side, as it is drawn">
              drawn, mm
            </th>
            <th scope="col" className="figure" title="Along the neutral fibre of the bent foam, in space">
              <HelpMark term="neutralFibre">in the foam</HelpMark>, mm
            </th>
            <th scope="col" className="figure" title="On the flat pattern, as it is written to the template">
              flat, mm
            </th>
            <th scope="col" className="figure" title="Off square, from its start to its end">
              bevel
            </th>
            <th scope="col">meets</th>
          </tr>
        </thead>
        <tbody>
          {part.edges.map((edge, index) => (
            <tr
              key={edge.edgeId}
              data-edge={edge.edgeId}
              onPointerEnter={() => onPoint(edge.edgeId)}
              onPointerLeave={() => onPoint(undefined)}
            >
              <td>
                <span className="code edge-number">{index + 1}</span> {edge.name}
              </td>
              <td className="figure">{formatMm(edge.drawnLengthMm)}</td>
              <td className="figure">{formatMm(edge.spaceLengthMm)}</td>
              <td className="figure">{formatMm(edge.flatLengthMm)}</td>
              <td className="figure wordy">{wordBevel(edge.bevelRad, part.kind)}</td>
              <td>{meetsWords(edge)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollAcross>
  );
}
