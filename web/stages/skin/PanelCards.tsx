import { TriangleAlert } from "lucide-react";
import { formatMass, formatMm, formatNumber, THIN_SPACE } from "../../../core/foundation/index.ts";
import {
  CURED_GLASS_CAUTION,
  type Panel,
  type PanelPlan,
  type PanelStep,
  panelWords,
} from "../../../core/panels/index.ts";
import { boundsOf, middleOf } from "../../drawings/index.ts";

/** The panels that fences are cut from, each with its cut sheet and steps, and how the fences are bonded on. */
export function PanelCards({ plan }: { readonly plan: PanelPlan }) {
  if (plan.panels.length === 0) return null;
  return (
    <section className="skin-face" aria-label="Panels laminated first" data-testid="panels">
      {plan.panels.map((panel) => (
        <PanelCard key={panel.id} panel={panel} />
      ))}
      <h3>Fences bonded onto the finished skin</h3>
      <ul>
        {plan.bonds.map(({ partId, lengthMm, resinKg, filletKg, abradeMm, tapeWidthMm }) => (
          <li key={partId}>
            <span className="code">{partId}</span>
            {`: ${formatMm(lengthMm)}${THIN_SPACE}mm, ${formatMass(resinKg)} of thickened resin under its edge and ${formatMass(filletKg)} in both fillets${tapeWidthMm > 0 ? `, tape ${formatMm(tapeWidthMm)}${THIN_SPACE}mm wide over each` : ""}; abrade a strip ${formatMm(abradeMm)}${THIN_SPACE}mm wide.`}
          </li>
        ))}
      </ul>
      <Steps steps={plan.bondSteps} />
    </section>
  );
}

function PanelCard({ panel }: { readonly panel: Panel }) {
  const [first] = panel.faces;
  const pots = first.cards.reduce((sum, { count }) => sum + count, 0);
  return (
    <>
      <h3>{`${panel.id[0]?.toUpperCase()}${panel.id.slice(1)}`}</h3>
      <p className="pencil">{panelWords(panel)}</p>
      <p>
        {pots > 0
          ? `Each face: ${formatNumber(first.workMinutes, 0)}${THIN_SPACE}min of work, ${pots === 1 ? "one pot" : `${pots} pots`} of ${formatMass(first.cards[0]?.mixedKg ?? 0)}.`
          : "No lay-up is planned: this resin does not go with the shop or the foam. The problems say why."}
      </p>
      <CutSheet panel={panel} />
      <p className="caution">
        <TriangleAlert className="sign look" aria-hidden />
        <span>
          <b>Take care. </b>
          {CURED_GLASS_CAUTION}
        </span>
      </p>
      <Steps steps={panel.steps} />
    </>
  );
}

function CutSheet({ panel: { id, lengthMm, widthMm, edgeMm, pieces } }: { readonly panel: Panel }) {
  return (
    <div className="laid-sheet">
      <svg
        viewBox={`-4 -4 ${lengthMm + 8} ${widthMm + 8}`}
        role="img"
        aria-label={`${id}: ${pieces.map(({ stripId }) => stripId).join(", ")}`}
      >
        <g transform={`matrix(1 0 0 -1 0 ${widthMm})`}>
          <rect className="board-edge" fill="none" width={lengthMm} height={widthMm} />
          <rect
            className="straight-cut"
            fill="none"
            x={edgeMm}
            y={edgeMm}
            width={lengthMm - 2 * edgeMm}
            height={widthMm - 2 * edgeMm}
          />
          {pieces.map(({ stripId, linesMm }) => (
            <path
              key={stripId}
              className="laid-outline"
              fillRule="evenodd"
              d={linesMm.map((loop) => `M${loop.map(({ x, y }) => `${x} ${y}`).join("L")}Z`).join("")}
            />
          ))}
        </g>
        {pieces.map(({ stripId, linesMm: [outline = []] }) => {
          const bounds = boundsOf(outline.map(({ x, y }) => [x, y] as const));
          if (bounds === undefined) return null;
          const [x, y] = middleOf(bounds);
          return (
            <text key={stripId} className="laid-code" x={x} y={widthMm - y} textAnchor="middle">
              {stripId}
            </text>
          );
        })}
      </svg>
    </div>
  );
}

const Steps = ({ steps }: { readonly steps: readonly PanelStep[] }) => (
  <ol>
    {steps.map(({ title, why }, i) => (
      <li key={title}>
        {`${i + 1}. ${title}. `}
        <span className="pencil">{why}</span>
      </li>
    ))}
  </ol>
);
