import { ToolNames, useView } from "../../stores/index.ts";

/** The tools of the board, each with its word. */
export function ToolRail() {
  const tool = useView((view) => view.tool);
  const setTool = useView((view) => view.setTool);
  return (
    <div className="tool-rail" role="toolbar" aria-label="Tools" aria-orientation="vertical">
      {ToolNames.map((name) => (
        <button
          key={name}
          type="button"
          className="plain"
          aria-pressed={name === tool}
          data-testid={`tool-${name}`}
          onClick={() => setTool(name)}
        >
          {name}
        </button>
      ))}
    </div>
  );
}
