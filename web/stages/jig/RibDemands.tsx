import type { Design } from "../../../core/design.ts";
import { formatMm, formatNumber, THIN_SPACE } from "../../../core/foundation/index.ts";
import type { LieLimit } from "../../../core/jig/index.ts";
import { ScrollAcross } from "../../controls/index.ts";

const LIMIT_WORDS = {
  shape: "the shape that the skin freezes",
  give: "how far a push makes it give",
  strain: "how a push strains the foam",
} as const satisfies Record<LieLimit, string>;

/** What every rib gives the foam on it, and what would ask for a further rib beside it first. */
export function RibDemands({ design }: { readonly design: Design }) {
  const { lie, jig } = design;
  const rows = jig.ribs.flatMap(({ id }) => {
    const limit = lie.limits.find(({ ribId }) => ribId === id);
    if (!limit) return [];
    const own = lie.forces.filter(({ ribId }) => ribId === id);
    const sum = (of: "pressN" | "holdDownN") => own.reduce((total, one) => total + one[of], 0);
    return [{ id, limit, pressN: sum("pressN"), holdDownN: sum("holdDownN") }];
  });
  if (rows.length === 0) return null;
  return (
    <ScrollAcross label="What every rib gives">
      <h3>What every rib gives</h3>
      <table className="figures" data-testid="rib-demands">
        <thead>
          <tr>
            <th scope="col">rib</th>
            <th scope="col" className="figure">
              foam presses, N
            </th>
            <th scope="col" className="figure">
              hold down, N
            </th>
            <th scope="col">asks for a rib beside it first</th>
            <th scope="col" className="figure">
              of what is allowed
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ id, limit, pressN, holdDownN }) => (
            <tr key={id}>
              <td className="code">{id}</td>
              <td className="figure">{formatMm(pressN)}</td>
              <td className="figure">{holdDownN < 0.05 ? "" : `lifts off: ${formatMm(holdDownN)}`}</td>
              <td>{LIMIT_WORDS[limit.by]}</td>
              <td className="figure">{`${formatNumber(Math.min(limit.share, 99) * 100, 0)}${THIN_SPACE}%`}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollAcross>
  );
}
