import type { Design } from "../../core/design.ts";
import type { Project } from "../../core/project/index.ts";
import {
  chosenEdgeId,
  chosenOwnersOf,
  inView,
  isSameLine,
  lineKey,
  lineOfSelection,
  ownerKey,
  type Scene,
  type SceneLine,
  type Selection,
} from "../tools/index.ts";
import { Fill, fillOf } from "./PlanFill.tsx";
import { codeOf, Label, spotOf } from "./PlanLabel.tsx";
import { CentreLine, Image, Outline, Rulings, Wings } from "./PlanLines.tsx";
import type { Paint } from "./paint.ts";
import type { Box, Transform } from "./viewport.ts";

export interface PlanDrawingProps {
  readonly project: Project;
  readonly scene: Scene;
  readonly design: Design | undefined;
  readonly selection: Selection | undefined;
  readonly transform: Transform;
  readonly box: Box;
  readonly paint: Paint;
}

/** The plan from above: sheets with their tints, fences hidden under them, the mirror image in pencil. */
export function PlanDrawing(props: PlanDrawingProps) {
  const { project, scene, design, selection, transform, box, paint } = props;
  const lines = scene.lines.filter((line) => line.view === "plan");
  const chosen = new Set(chosenOwnersOf(selection));
  const edgeLine = lineOfSelection(selection);
  const sorted = [...lines].sort((a, b) => order(a, chosen) - order(b, chosen));
  const shared = { transform, paint };
  return (
    <>
      {lines.toSorted(byLayer).map((line) => (
        <Fill
          key={lineKey(line.line)}
          {...shared}
          line={line}
          {...fillOf(line, project, paint)}
          mirrored={scene.mirrored && !line.isWhole}
        />
      ))}
      {design?.sheets.map((sheet) =>
        sheet.kind === "transition" ? <Rulings key={sheet.id} {...shared} rulings={sheet.rulings} /> : null,
      )}
      {design?.plates.map((plate) => (
        <Wings key={plate.id} {...shared} plate={plate} />
      ))}
      <CentreLine transform={transform} box={box} paint={paint} />
      {scene.mirrored
        ? sorted.map((line) =>
            line.isWhole ? null : <Image key={lineKey(line.line)} {...shared} line={line} />,
          )
        : null}
      {sorted.map((line) => {
        const hasEdge = edgeLine !== undefined && isSameLine(line.line, inView(edgeLine, "plan"));
        return (
          <Outline
            key={lineKey(line.line)}
            {...shared}
            line={line}
            isChosen={chosen.has(ownerKey(line.line))}
            edgeId={hasEdge ? chosenEdgeId(selection) : undefined}
          />
        );
      })}
      {sorted.map((line) => {
        const [spotX, spotY] = spotOf(line, lines);
        return (
          <Label
            key={lineKey(line.line)}
            {...shared}
            {...{ line, spotX, spotY }}
            code={codeOf(line, project)}
          />
        );
      })}
    </>
  );
}

/** Fills lie as the things do, whatever is chosen: openings cut through all of them. */
const byLayer = (a: SceneLine, b: SceneLine): number => LAYERS[a.kind] - LAYERS[b.kind];

/** Sheets under plates and fences, these under openings and free edges, what is chosen on top. */
const order = (line: SceneLine, chosen: ReadonlySet<string>): number =>
  LAYERS[line.kind] + (chosen.has(ownerKey(line.line)) ? 10 : 0);

const LAYERS: Readonly<Record<SceneLine["kind"], number>> = {
  section: 0,
  transition: 1,
  plate: 2,
  fence: 3,
  opening: 4,
  "free-edge": 5,
  profile: 5,
  "lower-edge": 5,
};
