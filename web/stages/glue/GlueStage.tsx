import type { Design } from "../../../core/design.ts";
import { wordProblem } from "../../../core/foundation/index.ts";
import { glueHow } from "../../../core/glue-up/index.ts";
import { gluingOf } from "../../../core/project/index.ts";
import { useDesign } from "../../stores/index.ts";
import { useStripShapes } from "../plan/index.ts";
import { EmptyPlace, SideSettings } from "../settings/index.ts";
import { CalendarPane } from "./CalendarPane.tsx";
import { CalendarSettings } from "./CalendarSettings.tsx";
import { GlueCard } from "./GlueCard.tsx";
import { GlueSettings } from "./GlueSettings.tsx";
import { OrderSettings } from "./OrderSettings.tsx";

/** What is glued to what, in which order, a card with a picture for each step. */
export function GlueStage() {
  const design = useDesign((state) => state.design);
  if (design === undefined) return null;
  return (
    <div className="two-panes">
      <SideSettings summary="Glue, hands and days">
        <GlueSettings />
        <OrderSettings />
        <CalendarSettings />
      </SideSettings>
      <article
        className="pane"
        aria-label="Steps of the glue-up"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: nothing in it can be used, and it must scroll by key.
        tabIndex={0}
      >
        {design.glueUp.length === 0 ? <EmptyPlace words={emptyWords(design)} /> : <Steps design={design} />}
      </article>
    </div>
  );
}

function emptyWords({ problems }: Design): string {
  const cold = problems.find(({ kind }) => kind === "glue-too-cold");
  return cold
    ? wordProblem(cold)
    : "No step yet. Draw sections that meet along an edge; the order of gluing comes here.";
}

function Steps({ design }: { readonly design: Design }) {
  const shapes = useStripShapes(design);
  return (
    <>
      <CalendarPane design={design} />
      <h3>Steps</h3>
      <div className="glue-how">
        {glueHow(gluingOf(design.project)).map((words) => (
          <p key={words}>{words}</p>
        ))}
      </div>
      <ol className="glue-steps" data-testid="glue-steps">
        {design.glueUp.map((step) => (
          <GlueCard key={step.step} step={step} design={design} shapes={shapes} />
        ))}
      </ol>
    </>
  );
}
