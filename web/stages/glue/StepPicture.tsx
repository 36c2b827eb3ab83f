import type { Design } from "../../../core/design.ts";
import type { GlueStep } from "../../../core/glue-up/index.ts";
import type { Part } from "../../../core/patterns/index.ts";
import { useSize } from "../../controls/index.ts";
import {
  boundsOf,
  fitScale,
  hatchFill,
  hatchOfItem,
  middleOf,
  outlinesOfPart,
  type PlanOutline,
  pathOf,
  planBounds,
  type Scale,
} from "../../drawings/index.ts";

const HEIGHT_PX = 236;

interface StepPictureProps {
  readonly step: GlueStep;
  readonly design: Design;
  readonly outlines: ReadonlyMap<string, PlanOutline>;
}

/** The tray from above as it stands in one step: what is there in pencil, what comes in ink with its code. */
export function StepPicture({ step, design, outlines }: StepPictureProps) {
  const { ref, widthPx } = useSize<HTMLDivElement>();
  const bounds = planBounds(outlines, design.project.symmetry);
  return (
    <div ref={ref} className="step-picture">
      {bounds && widthPx > 0 ? (
        <Picture
          step={step}
          design={design}
          outlines={outlines}
          scale={fitScale(bounds, { widthPx, heightPx: HEIGHT_PX, marginPx: 14 })}
        />
      ) : null}
    </div>
  );
}

function Picture({ step, design, outlines, scale }: StepPictureProps & { readonly scale: Scale }) {
  const standing = partsOf(design, step.standing);
  const coming = partsOf(design, step.adds);
  const joints = design.joints.filter(({ id }) => step.joins.includes(id));
  const words = `Step ${step.step}: ${step.adds.join(", ")} ${step.standing.length > 0 ? `beside ${step.standing.join(", ")}` : ""}`;
  return (
    <svg width={scale.widthPx} height={scale.heightPx} role="img" aria-label={words}>
      {standing.map(({ part }) => (
        <Outlines
          key={part.id}
          part={part}
          design={design}
          outlines={outlines}
          scale={scale}
          look="standing"
        />
      ))}
      {coming.map(({ part }) => (
        <Outlines key={part.id} part={part} design={design} outlines={outlines} scale={scale} look="coming" />
      ))}
      {joints.map(({ id, from, to }) => {
        const [x1, y1] = scale.toPx([from.x, from.y]);
        const [x2, y2] = scale.toPx([to.x, to.y]);
        return <line key={id} className="glue-line" x1={x1} y1={y1} x2={x2} y2={y2} />;
      })}
      {coming.map(({ part, ids }) => (
        <Codes key={part.id} part={part} ids={ids} design={design} outlines={outlines} scale={scale} />
      ))}
    </svg>
  );
}

interface PartOnPicture {
  readonly part: Part;
  /** The strips of it, or itself. */
  readonly ids: readonly string[];
}

/** The parts that strips or parts belong to, each once, with the ids that named it. */
function partsOf(design: Design, ids: readonly string[]): readonly PartOnPicture[] {
  const partIdOf = (id: string) => design.strips.find((strip) => strip.id === id)?.partId ?? id;
  return design.parts.flatMap((part) => {
    const named = ids.filter((id) => partIdOf(id) === part.id);
    return named.length > 0 ? [{ part, ids: named }] : [];
  });
}

interface OutlinesProps {
  readonly part: Part;
  readonly design: Design;
  readonly outlines: ReadonlyMap<string, PlanOutline>;
  readonly scale: Scale;
}

function Outlines({
  part,
  design,
  outlines,
  scale,
  look,
}: OutlinesProps & { readonly look: "standing" | "coming" }) {
  return (
    <g>
      {outlinesOfPart(part, outlines, design.project.symmetry).map(({ spots, closed }, index) => (
        <path
          key={index}
          className={look === "coming" ? "outline" : "derived"}
          d={pathOf(spots, scale, closed ? "closed" : "open")}
          style={
            look === "coming" && closed
              ? { fill: hatchFill(hatchOfItem(design.project, part.itemId)) }
              : undefined
          }
        />
      ))}
    </g>
  );
}

function Codes({ part, ids, design, outlines, scale }: OutlinesProps & { readonly ids: readonly string[] }) {
  const box = boundsOf(outlinesOfPart(part, outlines, design.project.symmetry).flatMap(({ spots }) => spots));
  if (box === undefined) return null;
  const [x, y] = scale.toPx(middleOf(box));
  return (
    <text className="code step-code" x={x} y={y + 4} textAnchor="middle">
      {ids.length > 3 ? `${ids[0]} to ${ids.at(-1)}` : ids.join(", ")}
    </text>
  );
}
