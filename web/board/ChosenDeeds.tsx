import { DeedButton, lineDeeds } from "../deeds/index.ts";
import { SeveralSwitch } from "../edit/index.ts";
import { useView } from "../stores/index.ts";

/** What can be done with the chosen line, as buttons. */
export function ChosenDeeds() {
  const tool = useView((view) => view.tool);
  if (tool !== "select") return null;
  return (
    <>
      <SeveralSwitch />
      <DeedButton deed={lineDeeds.previousNode} wordless testId="previous-node" />
      <span className="pencil">node</span>
      <DeedButton deed={lineDeeds.nextNode} wordless testId="next-node" />
      <DeedButton deed={lineDeeds.insert} />
      <DeedButton deed={lineDeeds.bend} />
      <DeedButton deed={lineDeeds.delete} />
    </>
  );
}
