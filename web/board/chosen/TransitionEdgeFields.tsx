import { ArrowLeftRight, PenLine } from "lucide-react";
import {
  type EdgeRef,
  type Item,
  nameOfItem,
  type Project,
  type Transition,
  type TransitionEdge,
} from "../../../core/project/index.ts";
import { Choice, Select } from "../../controls/index.ts";
import { codeOfItem } from "../../drawings/index.ts";
import { useDocument } from "../../stores/index.ts";
import { endsOfEdges } from "../../tools/index.ts";
import { freeEdgeAlong } from "../free-edge-along.ts";
import { SpaceNodesTable } from "./SpaceNodesTable.tsx";

interface TransitionEdgeFieldsProps {
  readonly transition: Transition;
  readonly side: "first" | "second";
}

/** One edge of a transition: which stretch of which edge it is, or the nodes of its own. */
export function TransitionEdgeFields({ transition, side }: TransitionEdgeFieldsProps) {
  const edge = transition[side];
  const change = (changed: TransitionEdge) =>
    useDocument
      .getState()
      .dispatch({ kind: "change-transition", itemId: transition.id, changes: { [side]: changed } });
  return (
    <>
      <h3 className="caption">{side === "first" ? "First edge" : "Second edge"}</h3>
      {edge.kind === "stretch" ? (
        <StretchFields transition={transition} side={side} edge={edge.edge} onChange={change} />
      ) : (
        <>
          <SpaceNodesTable itemId={transition.id} side={side} nodes={edge.nodes} />
          <TakeEdge transition={transition} side={side} onChange={change} />
        </>
      )}
    </>
  );
}

interface StretchFieldsProps extends TransitionEdgeFieldsProps {
  readonly edge: EdgeRef;
  readonly onChange: (edge: TransitionEdge) => void;
}

function StretchFields({ transition, side, edge, onChange }: StretchFieldsProps) {
  const project = useDocument((state) => state.project);
  const item = project.items.find(({ id }) => id === edge.itemId);
  const change = (changes: Partial<EdgeRef>) => onChange({ kind: "stretch", edge: { ...edge, ...changes } });
  const ends = item ? endsOfEdges(item).map(({ nodeId, word }) => ({ value: nodeId, word })) : [];
  const chooseItem = (itemId: string) => {
    const whole = firstEdgeOf(project.items.find(({ id }) => id === itemId));
    if (whole) change(whole);
  };
  return (
    <>
      <Select
        label="An edge of"
        value={edge.itemId}
        options={othersOf(project, transition)}
        testId={`${side}-of`}
        onChange={chooseItem}
      />
      <Select
        label="from"
        value={edge.fromNodeId}
        options={ends}
        testId={`${side}-from`}
        onChange={(fromNodeId) => change({ fromNodeId })}
      />
      <Select
        label="to"
        value={edge.toNodeId}
        options={ends}
        testId={`${side}-to`}
        onChange={(toNodeId) => change({ toNodeId })}
      />
      {project.symmetry === "mirrored" ? (
        <Choice
          label="on the"
          value={edge.hand}
          options={[
            { value: "right", word: "right" },
            { value: "left", word: "left, its image" },
          ]}
          testId={`${side}-hand`}
          onChange={(hand) => change({ hand })}
        />
      ) : null}
      <div className="deeds">
        <button
          type="button"
          title="The rest of the outline, from the second node round to the first"
          data-testid={`${side}-other-way`}
          onClick={() => change({ fromNodeId: edge.toNodeId, toNodeId: edge.fromNodeId })}
        >
          <ArrowLeftRight aria-hidden />
          The other way round
        </button>
        <FreeButton transition={transition} side={side} onChange={onChange} />
      </div>
    </>
  );
}

/** Gives the edge nodes of its own where it runs now, so that it can be shaped and eased by itself. */
function FreeButton({ transition, side, onChange }: Omit<StretchFieldsProps, "edge">) {
  const setFree = () => {
    const nodes = freeEdgeAlong(useDocument.getState().project, transition.id, side);
    if (nodes) onChange({ kind: "free", nodes });
  };
  return (
    <button
      type="button"
      title="Give this edge nodes of its own, where it runs now"
      data-testid={`${side}-free`}
      onClick={setFree}
    >
      <PenLine aria-hidden />
      Nodes of its own
    </button>
  );
}

function TakeEdge({ transition, side, onChange }: Omit<StretchFieldsProps, "edge">) {
  const project = useDocument((state) => state.project);
  const choose = (itemId: string) => {
    const whole = firstEdgeOf(project.items.find(({ id }) => id === itemId));
    if (whole) onChange({ kind: "stretch", edge: { ...whole, hand: "right" } });
  };
  return (
    <Select
      label="Or take an edge of"
      value=""
      options={[{ value: "", word: "nothing else" }, ...othersOf(project, transition)]}
      testId={`${side}-take`}
      onChange={choose}
    />
  );
}

/** Everything that has edges for a transition, save the transition itself. */
const othersOf = (project: Project, transition: Transition) =>
  project.items
    .filter((item) => item.id !== transition.id && item.kind !== "fence")
    .map((item) => ({ value: item.id, word: `${codeOfItem(item)} ${nameOfItem(item)}` }));

/** The first edge of an item, to begin with. */
function firstEdgeOf(
  item: Item | undefined,
): Pick<EdgeRef, "itemId" | "fromNodeId" | "toNodeId"> | undefined {
  const [from, to] = item ? endsOfEdges(item) : [];
  return item && from && to ? { itemId: item.id, fromNodeId: from.nodeId, toNodeId: to.nodeId } : undefined;
}
