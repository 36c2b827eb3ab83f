import { ChevronLeft, ChevronRight, Plus, Spline, Trash2 } from "lucide-react";
import { SeveralSwitch } from "../edit/index.ts";
import { useView } from "../stores/index.ts";
import { chosenEdgeId, chosenNodeId, isDrawn, type ToolEvent } from "../tools/index.ts";

/** What can be done with the chosen line, as buttons: the same as the keys do. */
export function ChosenDeeds({ hear }: { readonly hear: (event: ToolEvent) => void }) {
  const selection = useView((view) => view.selection);
  const tool = useView((view) => view.tool);
  if (tool !== "select") return null;
  const isLine = isDrawn(selection);
  const isSeveral = selection?.kind === "several";
  const hasNode = chosenNodeId(selection) !== undefined;
  const hasEdge = hasNode || chosenEdgeId(selection) !== undefined;
  return (
    <>
      <SeveralSwitch />
      <button
        type="button"
        className="plain"
        title="Previous node (P)"
        disabled={!isLine}
        data-testid="previous-node"
        onClick={() => hear({ kind: "next-node", by: -1 })}
      >
        <ChevronLeft aria-hidden />
        <span className="visually-hidden">Previous node</span>
      </button>
      <span className="pencil">node</span>
      <button
        type="button"
        className="plain"
        title="Next node (N)"
        disabled={!isLine}
        data-testid="next-node"
        onClick={() => hear({ kind: "next-node", by: 1 })}
      >
        <ChevronRight aria-hidden />
        <span className="visually-hidden">Next node</span>
      </button>
      <button
        type="button"
        className="plain"
        title="Put a node into the middle of the chosen edge (I), or double click where it is to be"
        disabled={!hasEdge && !isSeveral}
        data-testid="deed-insert"
        onClick={() => hear({ kind: "insert" })}
      >
        <Plus aria-hidden />
        Add node
      </button>
      <button
        type="button"
        className="plain"
        title="Turn the chosen edge between straight and curved (C)"
        disabled={!hasEdge && !isSeveral}
        data-testid="deed-bend"
        onClick={() => hear({ kind: "bend" })}
      >
        <Spline aria-hidden />
        Straight or curved
      </button>
      <button
        type="button"
        className="plain"
        title={hasNode ? "Delete the chosen node (Delete)" : "Delete what is chosen (Delete)"}
        disabled={!isLine && !isSeveral}
        data-testid="deed-delete"
        onClick={() => hear({ kind: "delete" })}
      >
        <Trash2 aria-hidden />
        {hasNode ? "Delete node" : "Delete"}
      </button>
    </>
  );
}
