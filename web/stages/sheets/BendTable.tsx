import type { BendZone } from "../../../core/bending/index.ts";
import type { Design } from "../../../core/design.ts";
import { formatMm, formatNumber } from "../../../core/foundation/index.ts";
import { wordBend } from "../../../core/jig/index.ts";
import type { Part } from "../../../core/patterns/index.ts";
import { ScrollAcross } from "../../controls/index.ts";
import { HelpMark } from "../../help/index.ts";
import { BendMethodChoice } from "./BendMethodChoice.tsx";
import { VerdictSign } from "./VerdictSign.tsx";

interface BendTableProps {
  readonly part: Part;
  readonly design: Design;
}

/** Where the part is flat and where it bends, how tight, on which side, and how each bend is made. */
export function BendTable({ part, design }: BendTableProps) {
  const bent = part.zones.filter(({ bend }) => bend !== undefined);
  const holds = design.holds.filter(({ partId }) => partId === part.id);
  return (
    <div className="bends">
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
              <th scope="col" className="figure" title="Stretch of the outermost fibre if bent whole">
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
      {bent.map((zone) => (
        <section
          key={zone.fromUMm}
          className="bend"
          aria-label={`Bend from ${formatMm(zone.fromUMm)} mm`}
          data-testid="bend"
        >
          <BendMethodChoice part={part} zone={zone} />
          {wordBend(
            zone,
            holds.find(({ fromUMm, toUMm }) => fromUMm === zone.fromUMm && toUMm === zone.toUMm),
            design.project,
            (u) => u,
          ).map((words) => (
            <p key={words} className={words.startsWith("Care:") ? "care" : "pencil"}>
              {words}
            </p>
          ))}
        </section>
      ))}
    </div>
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
