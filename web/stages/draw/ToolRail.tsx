import { hintOf, toolDeeds } from "../../deeds/index.ts";
import { HelpMark, isTermName } from "../../help/index.ts";
import { useView } from "../../stores/index.ts";
import { ToolNames } from "../../tools/index.ts";

/** The tools of the board, each with its word. */
export function ToolRail() {
  const tool = useView((view) => view.tool);
  return (
    <div className="tool-rail" role="toolbar" aria-label="Tools" aria-orientation="vertical">
      {ToolNames.map((name) => {
        const deed = toolDeeds[name];
        const Icon = deed.icon;
        return (
          <button
            key={name}
            type="button"
            className="plain"
            aria-pressed={name === tool}
            title={hintOf(deed)}
            data-testid={`tool-${name}`}
            onClick={deed.run}
          >
            <Icon aria-hidden />
            {deed.word}
          </button>
        );
      })}
      {isTermName(tool) ? <HelpMark term={tool} /> : null}
    </div>
  );
}
