import { TriangleAlert } from "lucide-react";
import type { SpaceShape } from "../../../core/book/index.ts";
import type { Design } from "../../../core/design.ts";
import { formatMass, formatMm, formatNumber } from "../../../core/foundation/index.ts";
import { type GlueStep, lineWords, openTimeWords, waitWords } from "../../../core/glue-up/index.ts";
import { momentWords } from "../../../core/schedule/index.ts";
import { OrderButtons } from "./OrderButtons.tsx";
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
        {step.how.map((words) => (
          <p key={words}>{words}</p>
        ))}
        <dl>
          <Fact word="comes" value={step.adds.join(", ")} isCode />
          {step.lines.map((line) => (
            <Fact key={line.joinId} word="glue" value={lineWords(line, step.heldBy)} />
          ))}
          {step.glueLengthMm > 0 ? (
            <Fact
              word="glue line"
              value={`${formatMm(step.glueLengthMm)} mm, ${formatMass(step.glueMassKg)}`}
            />
          ) : null}
          {step.pins > 0 ? (
            <Fact
              word={step.heldBy}
              value={`${step.pins}, one every ${formatNumber(step.pinSpacingMm, 0)} mm`}
            />
          ) : null}
          <Fact word="when" value={whenWords(step, design)} />
          <Fact word="work" value={`${formatNumber(step.workMinutes, 0)} min`} />
          <Fact word="glue open" value={openTimeWords(step)} />
          {step.waitHours > 0 ? (
            <Fact
              word="then wait"
              value={`${formatNumber(step.clampHours, 1)} h held, ${formatNumber(step.waitHours, 1)} h before load`}
            />
          ) : null}
          <Fact word="begins" value={waitWords(step)} />
          <Fact word="where" value={step.place === "jig" ? "in the jig" : "on the bench"} />
        </dl>
        <OrderButtons step={step} design={design} />
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

/** When a step begins on the calendar. */
function whenWords({ step }: GlueStep, { schedule }: Design): string {
  const [first] = schedule.tasks.find((task) => task.step === step)?.stints ?? [];
  return first === undefined ? "" : momentWords(schedule.startOn, first.fromMinute);
}
