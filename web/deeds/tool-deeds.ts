import {
  Blinds,
  CircleDashed,
  Image,
  type LucideIcon,
  MousePointer2,
  PanelBottomDashed,
  Pentagon,
  Ruler,
  Spline,
  StickyNote,
  Tally3,
} from "lucide-react";
import { useView } from "../stores/index.ts";
import type { ToolName } from "../tools/index.ts";
import type { Deed } from "./deed.ts";

interface Words {
  readonly word: string;
  readonly explains: string;
  readonly icon: LucideIcon;
  readonly key: string;
}

const WORDS: Readonly<Record<ToolName, Words>> = {
  select: {
    word: "Choose",
    explains: "Choose and move what is drawn",
    icon: MousePointer2,
    key: "Shift+C",
  },
  section: {
    word: "Section",
    explains: "Draw the outline of a section in the plan",
    icon: Pentagon,
    key: "Shift+S",
  },
  transition: {
    word: "Transition",
    explains: "Join two edges by a sheet that is bent between them",
    icon: Blinds,
    key: "Shift+T",
  },
  fence: {
    word: "Fence",
    explains: "Draw the line of a fence in the plan",
    icon: Tally3,
    key: "Shift+F",
  },
  plate: {
    word: "Plate",
    explains: "Draw the base of a folded metal plate in the plan",
    icon: PanelBottomDashed,
    key: "Shift+P",
  },
  opening: {
    word: "Opening",
    explains: "Draw what is cut out of the tray in the plan",
    icon: CircleDashed,
    key: "Shift+O",
  },
  profile: {
    word: "Profile",
    explains: "Draw a profile in the side view",
    icon: Spline,
    key: "Shift+Z",
  },
  measure: {
    word: "Measure",
    explains: "Measure between two places",
    icon: Ruler,
    key: "Shift+M",
  },
  underlay: {
    word: "Picture",
    explains: "Lay a picture under the drawing, to draw over it",
    icon: Image,
    key: "U",
  },
  note: {
    word: "Note",
    explains: "Pin a note to a place or a node",
    icon: StickyNote,
    key: "A",
  },
};

function toolDeed(name: ToolName): Deed {
  const { key, ...words } = WORDS[name];
  return {
    ...words,
    name: `tool-${name}`,
    group: "tool",
    keys: [key],
    heard: "board",
    run: () => {
      useView.getState().setStage("draw");
      useView.getState().setTool(name);
    },
  };
}

/** Taking up each tool of the board. */
export const toolDeeds: Readonly<Record<ToolName, Deed>> = {
  select: toolDeed("select"),
  section: toolDeed("section"),
  transition: toolDeed("transition"),
  fence: toolDeed("fence"),
  plate: toolDeed("plate"),
  opening: toolDeed("opening"),
  profile: toolDeed("profile"),
  measure: toolDeed("measure"),
  underlay: toolDeed("underlay"),
  note: toolDeed("note"),
};
