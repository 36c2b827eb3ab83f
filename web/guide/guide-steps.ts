import type { Item, Project, Section } from "../../core/project/index.ts";
import type { Selection, StageName, ToolName } from "../stores/index.ts";

/** What the guide looks at: the document, and how it is looked at. */
export interface Seen {
  readonly project: Project;
  readonly tool: ToolName;
  readonly selection: Selection | undefined;
  readonly stage: StageName;
}

/** One thing to do, told in one sentence, and how the guide notices that it was done since `before`. */
export interface GuideStep {
  readonly name: string;
  readonly words: string;
  readonly isDone: (now: Seen, before: Seen) => boolean;
}

/** Where a practice stands; `before` is what was seen when its step began. Past the last step it is finished. */
export interface Guide {
  readonly step: number;
  readonly before: Seen;
}

/** The practice piece: drawn, typed, chosen, rounded, seen flat and put on paper, one thing at a time. */
export const guideSteps: readonly GuideStep[] = [
  {
    name: "take",
    words: "Take Section: it stands beside the drawing.",
    isDone: ({ tool, project }) => tool === "section" || sectionsOf(project).length > 0,
  },
  {
    name: "draw",
    words:
      "In the plan, click four corners of a floor about 600 mm long, above the centre line; then click the first again.",
    isDone: ({ project }) => sectionsOf(project).length > 0,
  },
  {
    name: "choose",
    words: "Choose one corner: click its node on the drawing, or press N until it is filled.",
    isDone: ({ selection }) => selection?.kind === "item" && selection.nodeId !== undefined,
  },
  {
    name: "type",
    words:
      "Its numbers stand in the table under Chosen. Type another there, say 650 for an x, and press Enter.",
    isDone: ({ project }, before) => placesOf(project) !== placesOf(before.project),
  },
  {
    name: "round",
    words: "Round it: type 40 as its radius in the table.",
    isDone: ({ project }) => sectionsOf(project).some(hasRadius),
  },
  {
    name: "flat",
    words:
      "On the shelf of flat parts the piece lies flat already. Press it there, or open Sheets, to see its figures.",
    isDone: ({ selection, stage }) => selection?.kind === "part" || stage === "sheets",
  },
  {
    name: "print",
    words: "Open Print: there it is at true size, on the paper you own.",
    isDone: ({ stage }) => stage === "print",
  },
];

/** A practice at its first step. */
export const beginGuide = (seen: Seen): Guide => ({ step: 0, before: seen });

/** The practice after a look at the work: on by every step that is done; the same object if none is. */
export function followGuide(guide: Guide, now: Seen): Guide {
  const step = guideSteps[guide.step];
  if (step === undefined || !step.isDone(now, guide.before)) return guide;
  return followGuide({ step: guide.step + 1, before: now }, now);
}

const isSection = (item: Item): item is Section => item.kind === "section";
const sectionsOf = (project: Project): readonly Section[] => project.items.filter(isSection);

const hasRadius = ({ outline }: Section): boolean =>
  outline.elements.some((element) => element.kind === "node" && (element.radiusMm ?? 0) > 0);

/** Where all nodes of sections lie, as text. */
const placesOf = (project: Project): string =>
  JSON.stringify(
    sectionsOf(project).map(({ outline }) =>
      outline.elements.map((element) => (element.kind === "node" ? [element.x, element.y] : element.id)),
    ),
  );
