import { memo, useEffect, useRef } from "react";
import { nodeLabel, sayNode, type Vec2 } from "../../../core/foundation/index.ts";
import type { FollowPiece, LineRef, PlanElement, PlanNode, SideNode } from "../../../core/project/index.ts";
import { useLengths } from "../../controls/index.ts";
import { useDocument, useView } from "../../stores/index.ts";
import {
  chosenNodeId,
  elementsOfLine,
  isSameLine,
  lineKey,
  lineOfSelection,
  moveNodeCommands,
  selectLine,
} from "../../tools/index.ts";
import { dispatchAll } from "../dispatch-all.ts";
import { cellMarks, SheetOfNodes } from "../node-table/index.ts";
import { LengthCell } from "./LengthCell.tsx";
import { NodeDetails } from "./NodeDetails.tsx";

interface NodesTableProps {
  readonly line: LineRef;
  readonly title: string;
  readonly closed: boolean;
}

/** The nodes of a line as numbers; the chosen node with all that can be set on it. */
export function NodesTable({ line, title, closed }: NodesTableProps) {
  const { unit } = useLengths();
  const elements = useDocument((state) => elementsOfLine(state.project, line));
  const selection = useView((view) => view.selection);
  const selectedLine = lineOfSelection(selection);
  const isOnLine = selectedLine !== undefined && isSameLine(selectedLine, line);
  const chosenId = isOnLine ? chosenNodeId(selection) : undefined;
  const up = line.of === "item" || line.of === "opening" ? "y" : "z";
  const { from, to } = rowsShown(elements, chosenId);
  return (
    <section className="nodes">
      <h3 className="caption">{title}</h3>
      <SheetOfNodes line={line}>
        <table className="figures" data-testid={`nodes-${lineKey(line).replaceAll("/", "-")}`}>
          <thead>
            <tr>
              <th scope="col">Node</th>
              <th scope="col">x {unit}</th>
              <th scope="col">
                {up} {unit}
              </th>
              <th scope="col">Radius</th>
              <th scope="col">To next</th>
            </tr>
          </thead>
          <tbody>
            {elements.slice(from, to).map((element, offset) => {
              const index = from + offset;
              const before = elements[index - 1] ?? (closed ? elements.at(-1) : undefined);
              const isLast = index === elements.length - 1 && !closed;
              return element.kind === "follow" ? (
                <FollowRow key={element.id} line={line} follow={element} />
              ) : (
                <NodeRow
                  key={element.id}
                  {...{ line, isLast, up }}
                  node={element}
                  before={before}
                  isChosen={element.id === chosenId}
                />
              );
            })}
          </tbody>
        </table>
      </SheetOfNodes>
      {to - from < elements.length ? (
        <p className="pencil">
          {from + 1} to {to} of {elements.length}; N and P go on to the others.
        </p>
      ) : null}
      <NodeDetails line={line} nodeId={chosenId} closed={closed} />
    </section>
  );
}

/** More rows than this make the page slow to type into; the rows around the chosen node are shown. */
const MOST_ROWS = 100;

function rowsShown(
  elements: readonly (PlanElement | SideNode)[],
  chosenId: string | undefined,
): { readonly from: number; readonly to: number } {
  const index = elements.findIndex((element) => element.id === chosenId);
  const from = Math.floor(Math.max(0, index) / MOST_ROWS) * MOST_ROWS;
  return { from, to: Math.min(elements.length, from + MOST_ROWS) };
}

/** Where a node lies in its view. */
export const placeOf = (node: PlanNode | SideNode): Vec2 =>
  "y" in node ? [node.x, node.y] : [node.x, node.z];

interface NodeRowProps {
  readonly line: LineRef;
  readonly node: PlanNode | SideNode;
  readonly before: PlanElement | SideNode | undefined;
  readonly isLast: boolean;
  readonly isChosen: boolean;
  readonly up: "y" | "z";
}

const isSameRow = (one: NodeRowProps, other: NodeRowProps): boolean =>
  lineKey(one.line) === lineKey(other.line) &&
  one.node === other.node &&
  one.before === other.before &&
  one.isLast === other.isLast &&
  one.isChosen === other.isChosen;

/** A row is drawn again only when its own node, or the one before, has changed. */
const NodeRow = memo(function NodeRow({ line, node, before, isLast, isChosen, up }: NodeRowProps) {
  const at = placeOf(node);
  const label = nodeLabel(node.id);
  const choose = () => {
    if (!isChosen) useView.getState().select({ ...selectLine(line), nodeId: node.id });
  };
  const move = (to: Vec2) => dispatchAll(moveNodeCommands(useDocument.getState().project, line, node.id, to));
  const change = (changes: { readonly radiusMm?: number | undefined }) =>
    useDocument.getState().dispatch({ kind: "change-node", line, nodeId: node.id, changes });
  const mayRound = !isLast && before !== undefined && before.next === "line" && node.next === "line";
  const testId = `node-${node.id}`;
  const row = useRef<HTMLTableRowElement>(null);
  useEffect(() => {
    if (isChosen) row.current?.scrollIntoView({ block: "nearest" });
  }, [isChosen]);
  return (
    <tr
      ref={row}
      data-chosen-row={isChosen || undefined}
      data-testid={`${lineKey(line).replaceAll("/", "-")}-${testId}`}
    >
      <th scope="row">
        <button type="button" className="plain node-name" aria-pressed={isChosen} onClick={choose}>
          {label}
        </button>
      </th>
      <td {...cellMarks(node.id, "x")}>
        <LengthCell
          label={`x of node ${label}`}
          value={at[0]}
          testId={`${testId}-x`}
          onFocus={choose}
          onChange={(x) => move([x, at[1]])}
        />
      </td>
      <td {...cellMarks(node.id, up)}>
        <LengthCell
          label={`${up} of node ${label}`}
          value={at[1]}
          testId={`${testId}-${up}`}
          onFocus={choose}
          onChange={(second) => move([at[0], second])}
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
            onClear={() => change({ radiusMm: undefined })}
            onChange={(radiusMm) => change({ radiusMm: radiusMm > 0 ? radiusMm : undefined })}
          />
        ) : null}
      </td>
      <td>{isLast ? null : <SegmentSwitch line={line} nodeId={node.id} next={node.next} />}</td>
    </tr>
  );
}, isSameRow);

/** Says whether the segment that leaves a node is straight or curved, and turns it. */
export function SegmentSwitch({
  line,
  nodeId,
  next,
}: {
  readonly line: LineRef;
  readonly nodeId: string;
  readonly next: "line" | "curve";
}) {
  const other = next === "line" ? "curve" : "line";
  return (
    <button
      type="button"
      className="plain segment"
      aria-label={`From ${sayNode(nodeId)} to the next: ${next === "line" ? "straight; make it curved" : "curved; make it straight"}`}
      data-testid={`node-${nodeId}-segment`}
      onClick={() =>
        useDocument.getState().dispatch({ kind: "change-node", line, nodeId, changes: { next: other } })
      }
    >
      {next === "line" ? "straight" : "curved"}
    </button>
  );
}

function FollowRow({ line, follow }: { readonly line: LineRef; readonly follow: FollowPiece }) {
  const name = useDocument(
    (state) => state.project.items.find((item) => item.id === follow.edge.itemId)?.name ?? follow.edge.itemId,
  );
  const { fromNodeId, toNodeId } = follow.edge;
  return (
    <tr>
      <td colSpan={4}>
        follows {name}, {sayNode(fromNodeId)} to {sayNode(toNodeId)}
        {follow.edge.hand === "left" ? ", its image" : ""}
      </td>
      <td>
        {line.of === "item" ? (
          <button
            type="button"
            className="plain segment"
            title="Give this edge nodes of its own, where it runs now"
            data-testid={`unfollow-${follow.id}`}
            onClick={() =>
              useDocument
                .getState()
                .dispatch({ kind: "unfollow-edge", itemId: line.itemId, followId: follow.id })
            }
          >
            let go
          </button>
        ) : null}
      </td>
    </tr>
  );
}
