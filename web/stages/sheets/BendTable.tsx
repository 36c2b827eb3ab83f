import type { BendZone } from "../../../core/bending/index.ts";
import { formatMm, formatNumber } from "../../../core/foundation/index.ts";
import type { Part } from "../../../core/patterns/index.ts";
import { ScrollAcross } from "../../controls/index.ts";
import { HelpMark } from "../../help/index.ts";
import { VerdictSign } from "./VerdictSign.tsx";

/** Where the part is flat and where it bends, how tight, and on which side. */
export function BendTable({ part }: { readonly part: Part }) {
  return (
    <ScrollAcross label="Bends">
      <h3>Bends</h3>
      <table className="figures" data-testid="bend-table">
        <thead>
          <tr>
            <th scope="col" className="figure" title="Along the flat part, from its first ruling rearward">
              from, mm
            </th>
            <th scope="col" className="figure">
              to, mm
            </th>
            <th scope="col">
              <HelpMark term="verdict">verdict</HelpMark>
            </th>
            <th scope="col" className="figure" title="Least radius at the middle of the foam">
              radius, mm
            </th>
            <th scope="col">hollow side</th>
            <th scope="col" className="figure" title="Stretch of the outermost fibre">
              strain, %
            </th>
          </tr>
        </thead>
        <tbody>
          {part.zones.map((zone) => (
            <Zone key={zone.fromUMm} zone={zone} />
          ))}
        </tbody>
      </table>
    </ScrollAcross>
  );
}

function Zone({ zone }: { readonly zone: BendZone }) {
  return (
    <tr>
      <td className="figure">{formatMm(zone.fromUMm)}</td>
      <td className="figure">{formatMm(zone.toUMm)}</td>
      <td>
        <VerdictSign verdict={zone.verdict} />
      </td>
      <td className="figure">
        {zone.leastRadiusMm === undefined ? "" : formatNumber(zone.leastRadiusMm, 0)}
      </td>
      <td>{zone.inside ?? ""}</td>
      <td className="figure">{zone.strain === 0 ? "" : formatNumber(zone.strain * 100, 2)}</td>
    </tr>
  );
}
