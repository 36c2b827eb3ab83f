import type { FlatRuling } from "../../core/patterns/index.ts";
import { flatSpot } from "./flat-loops.ts";
import type { Scale } from "./scale.ts";

/** The rulings of a transition laid flat: the lines that it bends around, each straight from edge to edge. */
export function FlatRulings({
  rulings,
  scale,
}: {
  readonly rulings: readonly FlatRuling[];
  readonly scale: Scale;
}) {
  return (
    <g className="rulings">
      {rulings.map(({ from, to }) => {
        const [x1, y1] = scale.toPx(flatSpot(from));
        const [x2, y2] = scale.toPx(flatSpot(to));
        return <line key={`${x1}/${y1}/${x2}/${y2}`} x1={x1} y1={y1} x2={x2} y2={y2} />;
      })}
    </g>
  );
}
