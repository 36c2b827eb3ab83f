import { DeedButton, editDeeds, lineDeeds } from "../deeds/index.ts";
import { SeveralSwitch } from "../edit/index.ts";
import { useDrawnSelection } from "../hand/index.ts";
import { useView } from "../stores/index.ts";
import { chosenEdgeId, chosenNodeId, gripsOf, isDrawn } from "../tools/index.ts";

/** What can be done with what is chosen, as buttons: with nodes and edges first, then with things as wholes. */
export function ChosenDeeds() {
  const tool = useView((view) => view.tool);
  const selection = useDrawnSelection();
  if (tool !== "select") return null;
  const grips = gripsOf(selection);
  const hasNodes = chosenEdgeId(selection) !== undefined || grips.some(({ nodeId }) => nodeId !== undefined);
  const hasWholes = chosenNodeId(selection) === undefined && grips.some(({ nodeId }) => nodeId === undefined);
  const isNothing = grips.length === 0;
  return (
    <>
      <SeveralSwitch />
      {isDrawn(selection) || isNothing ? (
        <>
          <DeedButton deed={lineDeeds.previousNode} wordless testId="previous-node" />
          <span className="pencil">node</span>
          <DeedButton deed={lineDeeds.nextNode} wordless testId="next-node" />
        </>
      ) : null}
      {hasNodes || isNothing ? (
        <>
          <DeedButton deed={lineDeeds.insert} />
          <DeedButton deed={lineDeeds.bend} />
        </>
      ) : null}
      <DeedButton deed={lineDeeds.delete} />
      {isNothing ? null : <DeedButton deed={editDeeds.place} />}
      {hasNodes ? <DeedButton deed={editDeeds.split} /> : null}
      {hasWholes ? (
        <>
          <DeedButton deed={editDeeds.duplicate} />
          <DeedButton deed={editDeeds.mirror} />
          <DeedButton deed={editDeeds.repeat} />
          <DeedButton deed={editDeeds.parallel} />
        </>
      ) : null}
    </>
  );
}
