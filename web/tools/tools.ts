import { fenceTool } from "./fence/index.ts";
import { measureTool } from "./measure/index.ts";
import { noteTool } from "./note/index.ts";
import { openingTool } from "./opening/index.ts";
import { plateTool } from "./plate/index.ts";
import { profileTool } from "./profile/index.ts";
import { sectionTool } from "./section/index.ts";
import { selectTool } from "./select/index.ts";
import { transitionTool } from "./transition/index.ts";
import type { Sight, Step, Tool, ToolContext, ToolEvent, ToolName } from "./types.ts";
import { underlayTool } from "./underlay/index.ts";

/** A tool in hand. Hearing an event gives what is to be done and the hand that comes after. */
export interface Hand {
  readonly name: ToolName;
  readonly hear: (event: ToolEvent, context: ToolContext) => Heard;
  readonly sight: (context: ToolContext) => Sight;
}

export interface Heard {
  readonly hand: Hand;
  readonly step: Omit<Step<unknown>, "state">;
}

/** Every tool by its name. */
const tools: { readonly [Name in ToolName]: () => Hand } = {
  select: () => hold("select", selectTool, selectTool.start),
  section: () => hold("section", sectionTool, sectionTool.start),
  transition: () => hold("transition", transitionTool, transitionTool.start),
  fence: () => hold("fence", fenceTool, fenceTool.start),
  plate: () => hold("plate", plateTool, plateTool.start),
  opening: () => hold("opening", openingTool, openingTool.start),
  profile: () => hold("profile", profileTool, profileTool.start),
  measure: () => hold("measure", measureTool, measureTool.start),
  underlay: () => hold("underlay", underlayTool, underlayTool.start),
  note: () => hold("note", noteTool, noteTool.start),
};

/** A tool taken up afresh. */
export const takeUp = (name: ToolName): Hand => tools[name]();

function hold<State>(name: ToolName, tool: Tool<State>, state: State): Hand {
  const hand: Hand = {
    name,
    sight: (context) => tool.sight(state, context),
    hear: (event, context) => {
      const step = tool.step(state, event, context);
      if (step.tool !== undefined) return { step, hand: takeUp(step.tool) };
      return { step, hand: step.state === state ? hand : hold(name, tool, step.state) };
    },
  };
  return hand;
}
