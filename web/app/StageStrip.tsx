import { stageDeeds } from "../deeds/index.ts";
import { StageNames, useView } from "../stores/index.ts";

/** The stages of the work in their order, as stations along one line. */
export function StageStrip() {
  const stage = useView((view) => view.stage);
  return (
    <nav className="stage-strip" aria-label="Stages of the work">
      <ol>
        {StageNames.map((name) => (
          <li key={name}>
            <button
              type="button"
              className="plain"
              aria-current={name === stage ? "step" : undefined}
              title={stageDeeds[name].explains}
              data-testid={`stage-${name}`}
              onClick={stageDeeds[name].run}
            >
              {stageDeeds[name].word}
            </button>
          </li>
        ))}
      </ol>
    </nav>
  );
}
