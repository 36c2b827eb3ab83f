import { DeedButton, editDeeds, lineDeeds } from "../deeds/index.ts";
import { SeveralSwitch, useEdit } from "../edit/index.ts";
import { useView } from "../stores/index.ts";

/** What can be done with the chosen line, as buttons. */
export function ChosenDeeds() {
  const tool = useView((view) => view.tool);
  const words = useEdit((state) => state.words);
  if (tool !== "select") return null;
  return (
    <>
      {words === undefined ? null : (
        <p className="edit-refused" role="status" data-testid="edit-told">
          {words}
        </p>
      )}
      <SeveralSwitch />
      <DeedButton deed={lineDeeds.previousNode} wordless testId="previous-node" />
      <span className="pencil">node</span>
      <DeedButton deed={lineDeeds.nextNode} wordless testId="next-node" />
      <DeedButton deed={lineDeeds.insert} />
      <DeedButton deed={lineDeeds.bend} />
      <DeedButton deed={lineDeeds.delete} />
      <DeedButton deed={editDeeds.place} />
      <DeedButton deed={editDeeds.duplicate} />
      <DeedButton deed={editDeeds.mirror} />
      <DeedButton deed={editDeeds.repeat} />
      <DeedButton deed={editDeeds.parallel} />
    </>
  );
}
