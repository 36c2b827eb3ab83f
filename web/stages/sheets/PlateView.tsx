import { formatMass, formatMm, formatNumber, THIN_SPACE } from "../../../core/foundation/index.ts";
import type { FoldedPlate, FoldingStep, PlatePart } from "../../../core/plates/index.ts";
import { BendsOfPlate } from "./BendsOfPlate.tsx";
import { PlateDrawing } from "./PlateDrawing.tsx";

interface PlateViewProps {
  readonly plate: FoldedPlate;
  readonly part: PlatePart;
}

/** A folded plate laid flat: its pattern with the bends, their figures, and the order to fold them in. */
export function PlateView({ plate, part }: PlateViewProps) {
  const hand = part.hand === "whole" ? "across the centre line" : `${part.hand} hand`;
  return (
    <article className="pane" data-testid="plate-view" data-part={part.id}>
      <header className="part-heading">
        <h2>
          <span className="code">{part.id}</span> {plate.name}
        </h2>
        <ul className="facts">
          <li>{hand}</li>
          <li>upper face toward you</li>
          <li>{`${plate.metalName}, ${formatMm(plate.thicknessMm)}${THIN_SPACE}mm`}</li>
          <li>{`blank ${formatMm(part.lengthMm)} × ${formatMm(part.widthMm)}${THIN_SPACE}mm`}</li>
          <li>{`${formatNumber(plate.flatAreaMm2 / 1e6, 3)}${THIN_SPACE}m²`}</li>
          <li>{formatMass(plate.massKg)}</li>
        </ul>
      </header>
      <PlateDrawing part={part} />
      {part.bends.length === 0 ? (
        <p className="pencil">This plate stays flat. Add wings to its edges where it is drawn.</p>
      ) : (
        <>
          <BendsOfPlate part={part} />
          <FoldingOrder steps={plate.folding} />
        </>
      )}
    </article>
  );
}

function FoldingOrder({ steps }: { readonly steps: readonly FoldingStep[] }) {
  return (
    <section aria-label="Folding order">
      <h3>Folding order</h3>
      <ol className="folding" data-testid="folding-order">
        {steps.map((step) => (
          <li key={step.bendIds.join("/")}>
            <b>{step.name}</b> <span className="pencil">{whyNow(step)}</span>
          </li>
        ))}
      </ol>
    </section>
  );
}

/** Why a bend comes when it does. */
function whyNow({ reason, reasonNames, blockedByNames }: FoldingStep): string {
  const names = reasonNames.join(", ");
  const words: Readonly<Record<FoldingStep["reason"], string>> = {
    "only bend": "the only bend",
    "shorter flange": "its flange is shorter than those to come",
    "shorter bend": "its bend is shorter than those to come",
    "as drawn": "as good as the next, in the order drawn",
    "last left": "the last one left",
    "leans over": `it will lean over ${names}`,
    "before a leaning wing": `before ${names}, which will lean over it`,
  };
  const blocked =
    blockedByNames.length === 0
      ? ""
      : `; ${blockedByNames.join(", ")} leans over it: fold it by hand over a block`;
  return `${words[reason]}${blocked}`;
}
