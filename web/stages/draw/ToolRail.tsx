import {
  Blinds,
  CircleDashed,
  type LucideIcon,
  MousePointer2,
  PanelBottomDashed,
  Pentagon,
  Ruler,
  Spline,
  Tally3,
} from "lucide-react";
import { useView } from "../../stores/index.ts";
import { type ToolName, ToolNames } from "../../tools/index.ts";

const TOOLS: Readonly<
  Record<ToolName, { readonly word: string; readonly explains: string; readonly icon: LucideIcon }>
> = {
  select: { word: "Choose", explains: "Choose and move what is drawn", icon: MousePointer2 },
  section: { word: "Section", explains: "Draw the outline of a section in the plan", icon: Pentagon },
  transition: {
    word: "Transition",
    explains: "Join two edges by a sheet that is bent between them",
    icon: Blinds,
  },
  fence: { word: "Fence", explains: "Draw the line of a fence in the plan", icon: Tally3 },
  plate: {
    word: "Plate",
    explains: "Draw the base of a folded metal plate in the plan",
    icon: PanelBottomDashed,
  },
  opening: { word: "Opening", explains: "Draw what is cut out of the tray in the plan", icon: CircleDashed },
  profile: { word: "Profile", explains: "Draw a profile in the side view", icon: Spline },
  measure: { word: "Measure", explains: "Measure between two places", icon: Ruler },
};

/** The tools of the board, each with its word. */
export function ToolRail() {
  const tool = useView((view) => view.tool);
  const setTool = useView((view) => view.setTool);
  return (
    <div className="tool-rail" role="toolbar" aria-label="Tools" aria-orientation="vertical">
      {ToolNames.map((name) => {
        const { word, explains, icon: Icon } = TOOLS[name];
        return (
          <button
            key={name}
            type="button"
            className="plain"
            aria-pressed={name === tool}
            title={explains}
            data-testid={`tool-${name}`}
            onClick={() => setTool(name)}
          >
            <Icon aria-hidden />
            {word}
          </button>
        );
      })}
    </div>
  );
}
