import type { SpaceShape } from "../../../core/book/index.ts";
import type { Design } from "../../../core/design.ts";
import type { GlueStep } from "../../../core/glue-up/index.ts";
import { useSize } from "../../controls/index.ts";
import {
  boundsOf,
  fitScale,
  hatchFill,
  hatchOfItem,
  middleOf,
  pathOf,
  type Scale,
  type Spot,
} from "../../drawings/index.ts";
import { planBounds, planLines, planPath, sharedLine } from "../plan/index.ts";

const HEIGHT_PX = 236;

interface StepPictureProps {
  readonly step: GlueStep;
  readonly design: Design;
  readonly shapes: readonly SpaceShape[];
}

/** The tray from above as it stands in one step: what is there in pencil, what comes in ink with its code. */
export function StepPicture({ step, design, shapes }: StepPictureProps) {
  const { ref, widthPx } = useSize<HTMLDivElement>();
  const bounds = planBounds(shapes);
  return (
    <div ref={ref} className="step-picture">
      {bounds && widthPx > 0 ? (
        <Picture
          step={step}
          design={design}
          shapes={shapes}
          scale={fitScale(bounds, { widthPx, heightPx: HEIGHT_PX, marginPx: 16 })}
        />
      ) : null}
    </div>
  );
}

function Picture({ step, design, shapes, scale }: StepPictureProps & { readonly scale: Scale }) {
  const standing = shapesOf(shapes, step.standing);
  const coming = shapesOf(shapes, step.adds);
  // Of many strips of one sheet the first and the last are named.
  const isOneSheet = coming.every(({ partId }) => partId === coming[0]?.partId);
  const named = isOneSheet && coming.length > 3 ? [...coming.slice(0, 1), ...coming.slice(-1)] : coming;
  const beside = step.standing.length > 0 ? ` beside ${step.standing.join(", ")}` : "";
  return (
    <svg
      width={scale.widthPx}
      height={scale.heightPx}
      role="img"
      aria-label={`Step ${step.step}: ${step.adds.join(", ")}${beside}`}
    >
      {shapes.map((shape) => (
        <path key={shape.id} className="to-come" d={planPath(shape, scale)} />
      ))}
      {standing.map((shape) => (
        <path key={shape.id} className="derived" d={planPath(shape, scale)} />
      ))}
      {coming.map((shape) => (
        <path
          key={shape.id}
          className={shape.kind === "fence" ? "outline upright" : "outline"}
          d={planPath(shape, scale)}
          style={shape.kind === "fence" ? undefined : { fill: hatchOf(shape, design), fillRule: "evenodd" }}
        />
      ))}
      {glueLines(step, design, shapes).map((spots, index) => (
        <path key={index} className="glue-line" d={pathOf(spots, scale, "open")} />
      ))}
      {named.map((shape) => (
        <Code key={shape.id} shape={shape} scale={scale} />
      ))}
    </svg>
  );
}

/** The shapes that ids name: strips, or parts with all their strips. */
const shapesOf = (shapes: readonly SpaceShape[], ids: readonly string[]): readonly SpaceShape[] =>
  shapes.filter((shape) => ids.includes(shape.id) || ids.includes(shape.partId));

function hatchOf(shape: SpaceShape, design: Design): string {
  const itemId = design.parts.find(({ id }) => id === shape.partId)?.itemId ?? "";
  return hatchFill(hatchOfItem(design.project, itemId));
}

/** Where glue goes now: along seams, along a fence's seat its own line, at other joints from end to end. */
const glueLines = (step: GlueStep, design: Design, shapes: readonly SpaceShape[]): readonly GlueLine[] => [
  ...seamLines(step, design, shapes),
  ...jointLines(step, design, shapes),
];

type GlueLine = readonly Spot[];

function seamLines(step: GlueStep, design: Design, shapes: readonly SpaceShape[]): readonly GlueLine[] {
  return design.seams
    .filter(({ id }) => step.joins.includes(id))
    .map(({ stripIds }) => {
      const [one, other] = stripIds.map((id) => shapes.find((shape) => shape.id === id));
      return one && other ? sharedLine(one, other) : [];
    });
}

function jointLines(step: GlueStep, design: Design, shapes: readonly SpaceShape[]): readonly GlueLine[] {
  return design.joints
    .filter(({ id }) => step.joins.includes(id))
    .flatMap((joint): readonly GlueLine[] => {
      const fence = shapes.filter((shape) => shape.kind === "fence" && joint.partIds.includes(shape.partId));
      if (fence.length > 0) return fence.flatMap(planLines).map(({ spots }) => spots);
      return [
        [
          [joint.from.x, joint.from.y],
          [joint.to.x, joint.to.y],
        ],
      ];
    });
}

function Code({ shape, scale }: { readonly shape: SpaceShape; readonly scale: Scale }) {
  const box = boundsOf(planLines(shape).flatMap(({ spots }) => spots));
  if (box === undefined) return null;
  const [x, y] = scale.toPx(middleOf(box));
  return (
    <text className="code step-code" x={x} y={shape.kind === "fence" ? y - 8 : y + 4} textAnchor="middle">
      {shape.id}
    </text>
  );
}
