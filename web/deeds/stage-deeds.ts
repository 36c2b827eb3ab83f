import {
  ArrowBigLeft,
  ArrowBigRight,
  Brush,
  Layers,
  type LucideIcon,
  PaintRoller,
  PencilRuler,
  Printer,
  Ratio,
  ShoppingBasket,
  TableColumnsSplit,
} from "lucide-react";
import { type StageName, StageNames, useView } from "../stores/index.ts";
import type { Deed } from "./deed.ts";

const WORDS: Readonly<
  Record<StageName, { readonly word: string; readonly explains: string; readonly icon: LucideIcon }>
> = {
  draw: { word: "Draw", explains: "Draw the tray in plan and side view", icon: PencilRuler },
  sheets: { word: "Sheets", explains: "Every part laid flat, with its lengths and marks", icon: Ratio },
  stock: { word: "Stock", explains: "Foam, skins, sheets in store and how they are cut", icon: Layers },
  jig: { word: "Jig", explains: "The supports that hold the shape", icon: TableColumnsSplit },
  glue: { word: "Glue", explains: "What is glued to what, in which order", icon: Brush },
  skin: {
    word: "Skin",
    explains: "The plies of each face, in which sessions and from which pots",
    icon: PaintRoller,
  },
  buy: {
    word: "Buy",
    explains: "What is to be bought, in the packs that it is sold in, and what it costs",
    icon: ShoppingBasket,
  },
  print: { word: "Print", explains: "Templates and the build book on paper", icon: Printer },
};

const stageDeed = (name: StageName): Deed => ({
  ...WORDS[name],
  name: `stage-${name}`,
  group: "stage",
  keys: [],
  heard: "page",
  run: () => useView.getState().setStage(name),
});

/** Going to each stage of the work. */
export const stageDeeds: Readonly<Record<StageName, Deed>> = {
  draw: stageDeed("draw"),
  sheets: stageDeed("sheets"),
  stock: stageDeed("stock"),
  jig: stageDeed("jig"),
  glue: stageDeed("glue"),
  skin: stageDeed("skin"),
  buy: stageDeed("buy"),
  print: stageDeed("print"),
};

const beside = (by: 1 | -1): StageName | undefined =>
  StageNames[StageNames.indexOf(useView.getState().stage) + by];

const goBeside = (by: 1 | -1): void => {
  const stage = beside(by);
  if (stage !== undefined) useView.getState().setStage(stage);
};

/** Going on, and back, along the stages. */
export const stageSteps: readonly Deed[] = [
  {
    name: "next-stage",
    word: "Next stage",
    explains: "Go on to the next stage of the work",
    icon: ArrowBigRight,
    group: "stage",
    keys: ["]"],
    heard: "page",
    isPossible: () => beside(1) !== undefined,
    run: () => goBeside(1),
  },
  {
    name: "previous-stage",
    word: "Previous stage",
    explains: "Go back to the stage before",
    icon: ArrowBigLeft,
    group: "stage",
    keys: ["["],
    heard: "page",
    isPossible: () => beside(-1) !== undefined,
    run: () => goBeside(-1),
  },
];
