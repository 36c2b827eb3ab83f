import { formatMass, formatMm, formatNumber, THIN_SPACE } from "../../../core/foundation/index.ts";
import type { Weight } from "../../../core/totals/index.ts";
import { FigureHeads, ScrollAcross } from "../../controls/index.ts";

/** What every part weighs with its skins at little, likely and much resin, and where the tray balances. */
export function WeightTable({ weight }: { readonly weight: Weight }) {
  const { massKg, centre, otherKg } = weight;
  return (
    <section className="skin-face" aria-label="What it weighs" data-testid="weight">
      <h3>What it weighs</h3>
      <p>
        <b>{formatMass(massKg.likely)}</b>
        {` all in, ${formatMass(massKg.low)} with little resin, ${formatMass(massKg.high)} with much; ${formatMass(otherKg)} of it glue, fillets and metal, mounts not counted. It balances at x${THIN_SPACE}${formatMm(centre.x)}, y${THIN_SPACE}${formatMm(centre.y)}, z${THIN_SPACE}${formatMm(centre.z)}${THIN_SPACE}mm.`}
      </p>
      <ScrollAcross label="What each part weighs">
        <table className="figures">
          <thead>
            <tr>
              <th scope="col">part, skinned</th>
              <FigureHeads words={["foam", "low", "likely", "high", "x", "y", "z"]} />
            </tr>
          </thead>
          <tbody>
            {weight.parts.map((part) => (
              <tr key={part.partId}>
                <td>{part.partId}</td>
                {[part.foamKg, part.massKg.low, part.massKg.likely, part.massKg.high].map((kg, i) => (
                  <td key={i} className="figure">
                    {formatMass(kg)}
                  </td>
                ))}
                {[part.centre.x, part.centre.y, part.centre.z].map((mm, i) => (
                  <td key={i} className="figure">
                    {formatNumber(mm, 0)}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollAcross>
    </section>
  );
}
