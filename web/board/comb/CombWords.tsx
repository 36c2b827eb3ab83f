import { useLengths } from "../../controls/index.ts";
import { useDrawnSelection, useScene } from "../../hand/index.ts";
import { useDocument, useDrawingAids } from "../../stores/index.ts";
import { combsOf, wordComb } from "../../tools/index.ts";
import { type Layout, type Transform, toPx } from "../viewport.ts";
import "./comb.css";

interface CombWordsProps {
  readonly layout: Layout;
  readonly plan: Transform;
  readonly side: Transform;
}

/** What the combs on the board say in words, and the least radius beside its place. */
export function CombWords({ layout, plan, side }: CombWordsProps) {
  const isOn = useDrawingAids((aids) => aids.comb);
  return isOn ? <Words {...{ layout, plan, side }} /> : null;
}

/** The words need no teeth. */
const NO_TEETH_MM = Number.POSITIVE_INFINITY;

function Words({ layout, plan, side }: CombWordsProps) {
  const project = useDocument((state) => state.project);
  const selection = useDrawnSelection();
  const scene = useScene();
  const lengths = useLengths();
  const combs = combsOf({ project, scene, selection }, NO_TEETH_MM);
  return (
    <div className="comb-words">
      {combs.map(({ key, view, tightest }) => {
        if (!tightest) return null;
        const [left, top] = toPx(view === "plan" ? plan : side, tightest.at);
        return (
          <span key={key} className="least-radius" style={{ left, top }}>
            R {lengths.show(tightest.radiusMm)}
          </span>
        );
      })}
      <div
        className="comb-sentences"
        style={{ left: 8, top: layout.plan.topPx + layout.plan.heightPx - 30 }}
        data-testid="comb-words"
      >
        {combs.map((comb) => (
          <p key={comb.key}>{wordComb(comb, lengths)}</p>
        ))}
        {combs.length === 0 ? <p>Choose a line with a curve to see how it bends.</p> : null}
      </div>
    </div>
  );
}
