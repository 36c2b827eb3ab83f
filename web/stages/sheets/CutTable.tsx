import { Minus, Plus } from "lucide-react";
import type { Design } from "../../../core/design.ts";
import type { Part } from "../../../core/patterns/index.ts";
import { NumberField } from "../../controls/index.ts";
import { loopsBounds, middleOf } from "../../drawings/index.ts";
import { HelpMark } from "../../help/index.ts";
import { useSettings } from "../settings/index.ts";
import { cutsOfPart, withCut, withoutCut } from "./own-cuts.ts";

/** Where a part is divided: by the stock, or where the builder puts a cut. */
export function CutTable({ part, design }: { readonly part: Part; readonly design: Design }) {
  const { project, change } = useSettings();
  const { cutting } = project;
  if (part.kind === "transition") return null;
  const cuts = cutsOfPart(part, design.seams, cutting);
  const middle = middleOf(loopsBounds(part.loops) ?? { left: 0, right: 0, bottom: 0, top: 0 });
  const add = (axis: "u" | "v") =>
    change({ cutting: withCut(cutting, part, axis, { toMm: Math.round(middle[axis === "u" ? 0 : 1]) }) });
  return (
    <section className="part-cuts" aria-label="Cuts" data-testid="part-cuts">
      <h3>
        <HelpMark term="seam">Cuts</HelpMark>
      </h3>
      {cuts.length === 0 ? <p className="pencil">Whole: it fits the stock.</p> : null}
      {cuts.map(({ axis, atMm, seams, isOwn }) => (
        <div key={`${axis}/${atMm}`} className="part-cut">
          <NumberField
            label={`${seams.map(({ id }) => id).join(", ")}, ${axis === "u" ? "along a ruling at u" : "across the rulings at v"}`}
            unit="mm"
            value={atMm}
            note={isOwn ? "Where you want it" : "Where the stock asks for it; type or drag it elsewhere"}
            onChange={(toMm) => change({ cutting: withCut(cutting, part, axis, { fromMm: atMm, toMm }) })}
          />
          {isOwn ? (
            <button
              type="button"
              className="plain"
              data-testid={`uncut-${axis}`}
              onClick={() => change({ cutting: withoutCut(cutting, part, axis, atMm) })}
            >
              <Minus aria-hidden />
              Leave it to the stock
            </button>
          ) : null}
        </div>
      ))}
      <p className="part-cut-more">
        <button type="button" className="plain" data-testid="cut-along" onClick={() => add("u")}>
          <Plus aria-hidden />
          Cut along a ruling
        </button>
        <button type="button" className="plain" data-testid="cut-across" onClick={() => add("v")}>
          <Plus aria-hidden />
          Cut across the rulings
        </button>
      </p>
    </section>
  );
}
