import { allRibs } from "../../../core/jig/index.ts";
import { Choice } from "../../controls/index.ts";
import { useDesign, useView } from "../../stores/index.ts";
import { EmptyPlace, SideSettings } from "../settings/index.ts";
import { AsBuiltPanel } from "./AsBuiltPanel.tsx";
import { BaseboardPlan } from "./BaseboardPlan.tsx";
import { CuttingList } from "./CuttingList.tsx";
import { JigSettings } from "./JigSettings.tsx";
import { JigSide } from "./JigSide.tsx";
import { LieView } from "./LieView.tsx";
import { RibDemands } from "./RibDemands.tsx";
import { RibView } from "./RibView.tsx";
import { SetUp } from "./SetUp.tsx";

/** The supports that hold the shape: where they stand, how high, and what to cut; of the jig, or of its cradle. */
export function JigStage() {
  const design = useDesign((state) => state.design);
  const selection = useView((view) => view.selection);
  const select = useView((view) => view.select);
  if (design === undefined) return null;
  const { jig } = design;
  const ribs = allRibs(jig);
  const rib = ribs.find(({ id }) => selection?.kind === "rib" && id === selection.ribId) ?? ribs[0];
  const set = rib?.stand === "cradle" && jig.cradle !== undefined ? jig.cradle : jig;
  const show = (stand: "jig" | "cradle") => {
    const first = ribs.find((each) => each.stand === stand);
    if (first) select({ kind: "rib", ribId: first.id });
  };
  return (
    <div className="two-panes">
      <SideSettings summary="Settings of the jig">
        <JigSettings />
      </SideSettings>
      <article className="pane">
        {rib ? (
          <>
            {jig.cradle && jig.cradle.ribs.length > 0 ? (
              <Choice
                label="Shown"
                value={rib.stand}
                testId="shown-stand"
                options={[
                  { value: "jig", word: "The jig" },
                  { value: "cradle", word: "Its cradle" },
                ]}
                onChange={show}
              />
            ) : null}
            <BaseboardPlan design={design} set={set} chosenId={rib.id} />
            <JigSide set={set} chosenId={rib.id} />
            {rib.stand === "jig" ? <LieView design={design} /> : null}
            <RibView rib={rib} ribs={set.ribs} />
            <SetUp set={set} standName={rib.stand} />
            {rib.stand === "jig" ? <RibDemands design={design} /> : null}
            {rib.stand === "jig" ? <AsBuiltPanel design={design} /> : null}
            <CuttingList ribs={set.ribs} chosenId={rib.id} />
          </>
        ) : (
          <EmptyPlace words="No rib stands yet. Draw a section; ribs come under it as the settings of the jig say." />
        )}
      </article>
    </div>
  );
}
