import { formatAngle, formatMm, formatNumber } from "../../../core/foundation/index.ts";
import type { PlatePart } from "../../../core/plates/index.ts";
import { ScrollAcross } from "../../controls/index.ts";
import { HelpMark } from "../../help/index.ts";

/** The bends of a flat plate: which way, how far, how tight, and what the metal takes up in them. */
export function BendsOfPlate({ part }: { readonly part: PlatePart }) {
  return (
    <ScrollAcross label="Bends">
      <h3>
        <HelpMark term="bendAllowance">Bends</HelpMark>
      </h3>
      <table className="figures" data-testid="plate-bends">
        <thead>
          <tr>
            <th scope="col">bend</th>
            <th scope="col">way</th>
            <th scope="col" className="figure">
              angle
            </th>
            <th scope="col" className="figure">
              inside radius, mm
            </th>
            <th scope="col" className="figure" title="Where the neutral fibre lies, from the inside">
              K
            </th>
            <th scope="col" className="figure" title="What the bend takes of the flat">
              allowance, mm
            </th>
            <th scope="col" className="figure" title="Both outside lengths less the flat">
              deduction, mm
            </th>
            <th scope="col" className="figure" title="From the free edge in to the middle of the bend">
              middle, mm
            </th>
            <th scope="col" className="figure">
              length, mm
            </th>
          </tr>
        </thead>
        <tbody>
          {part.bends.map(({ id, name, figures, lengthMm }) => (
            <tr key={id}>
              <td>{name}</td>
              <td>{figures.direction}</td>
              <td className="figure">{formatAngle(figures.angleRad)}</td>
              <td className="figure">{formatMm(figures.insideRadiusMm)}</td>
              <td
                className="figure"
                title={figures.kFactorFrom === "metal" ? "of the metal" : "from the typed deduction"}
              >
                {formatNumber(figures.kFactor, 3)}
              </td>
              <td className="figure">{formatNumber(figures.allowanceMm, 2)}</td>
              <td className="figure">{formatNumber(figures.deductionMm, 2)}</td>
              <td className="figure">{formatMm(figures.flangeMm + figures.allowanceMm / 2)}</td>
              <td className="figure">{formatMm(lengthMm)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="pencil">
        Draw the bend lines in pencil. Never scribe them: metal cracks along a scratch.
      </p>
    </ScrollAcross>
  );
}
