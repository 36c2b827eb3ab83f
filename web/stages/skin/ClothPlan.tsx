import { Scissors } from "lucide-react";
import { useState } from "react";
import { formatMm, formatNumber, THIN_SPACE } from "../../../core/foundation/index.ts";
import type { PackingLoop } from "../../../core/packing/index.ts";
import { type LaidCloth, type LaidClothLength, peelPlyMm, type SkinPlan } from "../../../core/skins/index.ts";
import { useDocument } from "../../stores/index.ts";
import { core } from "../../worker/index.ts";

/** What was laid out, and of which skins: of others it is out of date. */
interface Laid {
  readonly skins: SkinPlan;
  readonly cloth: readonly LaidCloth[];
}

/** The cloth plan, laid out when it is asked for: every patch on its roll. */
export function ClothPlan({ skins }: { readonly skins: SkinPlan }) {
  const [laid, setLaid] = useState<Laid>();
  const [isRunning, setRunning] = useState(false);
  const [failure, setFailure] = useState<string>();
  const layOut = async () => {
    setRunning(true);
    setFailure(undefined);
    try {
      const { project } = useDocument.getState();
      setLaid({ skins, cloth: await core().cloth({ ...project, underlays: [] }) });
    } catch (error: unknown) {
      setFailure(String(error));
    }
    setRunning(false);
  };
  const isOfThese = laid?.skins === skins;
  return (
    <section className="skin-face" aria-label="Cloth plan" data-testid="cloth-plan">
      <h3>Cloth plan</h3>
      {isOfThese ? (
        laid.cloth.map((cloth) => <Roll key={cloth.clothId} cloth={cloth} />)
      ) : (
        <>
          <p className="pencil">
            {laid === undefined
              ? "Every patch on the roll it is cut from, its warp along the roll. The build book has it as well."
              : "The skins have changed since it was laid out."}
          </p>
          <button type="button" onClick={layOut} disabled={isRunning} data-testid="lay-cloth">
            <Scissors aria-hidden /> {isRunning ? "Laying it out" : "Lay the patches on their rolls"}
          </button>
          {failure !== undefined && <p role="alert">{`It could not be laid out: ${failure}`}</p>}
        </>
      )}
      {skins.peelPlyMm2 > 0 && (
        <p>{`Peel ply: about ${formatNumber(peelPlyMm(skins) / 1000, 1)}${THIN_SPACE}m off a roll of 1${THIN_SPACE}m.`}</p>
      )}
    </section>
  );
}

function Roll({ cloth }: { readonly cloth: LaidCloth }) {
  const { name, rollMm, widthMm, wasteShare, lengths, unplaced } = cloth;
  return (
    <>
      <p>
        <b>{name}</b>
        {`: ${formatNumber(rollMm / 1000, 2)}${THIN_SPACE}m off a roll of ${formatMm(widthMm)}${THIN_SPACE}mm, ${formatNumber(100 * wasteShare, 0)}${THIN_SPACE}% of it offcut and selvedge. Outer side up, warp to the right.`}
      </p>
      {unplaced.length > 0 && <p role="alert">{`These do not fit the roll: ${unplaced.join(", ")}.`}</p>}
      <ol className="cloth-lengths">
        {lengths.map((length, i) => (
          <LengthView key={i} cloth={cloth} length={length} number={i + 1} />
        ))}
      </ol>
    </>
  );
}

interface LengthProps {
  readonly cloth: LaidCloth;
  readonly length: LaidClothLength;
  readonly number: number;
}

function LengthView({ cloth: { widthMm }, length: { lengthMm, pieces }, number }: LengthProps) {
  return (
    <li className="laid-sheet">
      <p className="pencil">{`Length ${number}, cut off at ${formatMm(lengthMm)}${THIN_SPACE}mm`}</p>
      <svg
        viewBox={`-4 -4 ${lengthMm + 8} ${widthMm + 8}`}
        role="img"
        aria-label={`Length ${number}: ${pieces.map(({ patchId }) => patchId).join(", ")}`}
      >
        <g transform={`matrix(1 0 0 -1 0 ${widthMm})`}>
          <rect className="board-edge" fill="none" width={lengthMm} height={widthMm} />
          {pieces.map(({ patchId, linesMm }) => (
            <path
              key={patchId}
              className="laid-outline"
              fillRule="evenodd"
              d={linesMm.map(pathOf).join("")}
            />
          ))}
        </g>
        {pieces.map(({ patchId, linesMm: [outline = []] }) => {
          const { x, y } = middleOf(outline);
          return (
            <text key={patchId} className="laid-code" x={x} y={widthMm - y} textAnchor="middle">
              {patchId}
            </text>
          );
        })}
      </svg>
    </li>
  );
}

const pathOf = (loop: PackingLoop): string =>
  `M${loop.map(({ x, y }) => `${x.toFixed(1)} ${y.toFixed(1)}`).join("L")}Z`;

/** The middle of the box around an outline. */
function middleOf(loop: PackingLoop): { readonly x: number; readonly y: number } {
  const middle = (values: readonly number[]) => (Math.min(...values) + Math.max(...values)) / 2;
  return { x: middle(loop.map(({ x }) => x)), y: middle(loop.map(({ y }) => y)) };
}
