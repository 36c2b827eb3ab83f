import { useDesign, useView } from "../../stores/index.ts";
import { EmptyPlace, SideSettings } from "../settings/index.ts";
import { BaseboardPlan } from "./BaseboardPlan.tsx";
import { CuttingList } from "./CuttingList.tsx";
import { JigSettings } from "./JigSettings.tsx";
import { RibView } from "./RibView.tsx";

/** The supports that hold the shape: where they stand, how high, and what to cut. */
export function JigStage() {
  const design = useDesign((state) => state.design);
  const selection = useView((view) => view.selection);
  if (design === undefined) return null;
  const { ribs } = design.jig;
  const rib = ribs.find(({ id }) => selection?.kind === "rib" && id === selection.ribId) ?? ribs[0];
  return (
    <div className="two-panes">
      <SideSettings summary="Settings of the jig">
        <JigSettings />
      </SideSettings>
      <article className="pane">
        {rib ? (
          <>
            <BaseboardPlan design={design} chosenId={rib.id} />
            <RibView rib={rib} ribs={ribs} />
            <CuttingList ribs={ribs} chosenId={rib.id} />
          </>
        ) : (
          <EmptyPlace words="No rib stands yet. Draw a section; ribs come under it as the settings of the jig say." />
        )}
      </article>
    </div>
  );
}
