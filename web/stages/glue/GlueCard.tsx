import { TriangleAlert } from "lucide-react";
import type { SpaceShape } from "../../../core/book/index.ts";
import type { Design } from "../../../core/design.ts";
import { formatMass, formatMm, formatNumber } from "../../../core/foundation/index.ts";
import type { GlueStep } from "../../../core/glue-up/index.ts";
import { StepPicture } from "./StepPicture.tsx";

interface GlueCardProps {
  readonly step: GlueStep;
  readonly design: Design;
  readonly shapes: readonly SpaceShape[];
}

/** One step: its picture, what comes, why now, and what it takes. */
export function GlueCard({ step, design, shapes }: GlueCardProps) {
  return (
    <li className="glue-card" data-testid="glue-step" data-step={step.step}>
      <StepPicture step={step} design={design} shapes={shapes} />
      <div className="glue-words">
        <h3>
          <span className="step-number">{step.step}</span> {step.title}
        </h3>
        <p>{step.why}</p>
        <dl>
          <Fact word="comes" value={step.adds.join(", ")} isCode />
          <Fact word="glue" value={step.joins.join(", ")} isCode />
          {step.glueLengthMm > 0 ? (
            <Fact
              word="glue line"
              value={`${formatMm(step.glueLengthMm)} mm, ${formatMass(step.glueMassKg)}`}
            />
          ) : null}
          {step.pins > 0 ? (
            <Fact word="pins" value={`${step.pins}, one every ${formatNumber(step.pinSpacingMm, 0)} mm`} />
          ) : null}
          {step.waitHours > 0 ? (
            <Fact word="then wait" value={`${formatNumber(step.waitHours, 0)} h at 20 °C`} />
          ) : null}
          <Fact word="where" value={step.place === "jig" ? "in the jig" : "on the bench"} />
        </dl>
        {step.cautions.map((caution) => (
          <p key={caution} className="caution">
            <TriangleAlert className="sign look" aria-hidden />
            <span>
              <b>Take care. </b>
              {caution}
            </span>
          </p>
        ))}
      </div>
    </li>
  );
}

function Fact({
  word,
  value,
  isCode = false,
}: {
  readonly word: string;
  readonly value: string;
  readonly isCode?: boolean;
}) {
  if (value === "") return null;
  return (
    <>
      <dt>{word}</dt>
      <dd className={isCode ? "code" : undefined}>{value}</dd>
    </>
  );
}
