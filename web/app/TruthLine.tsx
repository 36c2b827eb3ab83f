import { formatMass, formatNumber } from "../../core/foundation/index.ts";
import { useDesign } from "../stores/index.ts";

/** The quiet line at the foot: what the tray is now, and how many things want looking at. */
export function TruthLine() {
  const design = useDesign((state) => state.design);
  const failure = useDesign((state) => state.failure);
  if (design === undefined) return <footer className="truth-line">{failure}</footer>;
  const { totals } = design;
  return (
    <footer className="truth-line" data-testid="truth-line">
      <span>{totals.partCount} parts</span>
      <span>{totals.stripCount} strips</span>
      <span>{formatMass(totals.foamMassKg)}</span>
      <span>{formatNumber(totals.handsOnHours, 0)} h</span>
    </footer>
  );
}
