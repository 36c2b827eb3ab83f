import { formatMm } from "../../../core/foundation/index.ts";
import type { Rib } from "../../../core/jig/index.ts";
import { ScrollAcross } from "../../controls/index.ts";
import { boundsOf, flatSpot } from "../../drawings/index.ts";
import { HelpMark } from "../../help/index.ts";
import { useView } from "../../stores/index.ts";

/** All ribs as they are cut; a click on a code shows the rib. */
export function CuttingList({
  ribs,
  chosenId,
}: {
  readonly ribs: readonly Rib[];
  readonly chosenId: string;
}) {
  return (
    <ScrollAcross label="Cutting list of the ribs">
      <h3>Cutting list</h3>
      <table className="figures" data-testid="rib-list">
        <thead>
          <tr>
            <th scope="col">
              <HelpMark term="rib">rib</HelpMark>
            </th>
            <th scope="col">runs</th>
            <th scope="col" className="figure">
              at, mm
            </th>
            <th scope="col" className="figure">
              length, mm
            </th>
            <th scope="col" className="figure">
              lowest, mm
            </th>
            <th scope="col" className="figure">
              highest, mm
            </th>
            <th scope="col">top</th>
            <th scope="col">same as</th>
          </tr>
        </thead>
        <tbody>
          {ribs.map((rib) => (
            <Row key={rib.id} rib={rib} isChosen={rib.id === chosenId} />
          ))}
        </tbody>
      </table>
    </ScrollAcross>
  );
}

function Row({ rib, isChosen }: { readonly rib: Rib; readonly isChosen: boolean }) {
  const select = useView((view) => view.select);
  const bounds = boundsOf(rib.outlineMm.map(flatSpot));
  const heights = rib.heights.map(({ stationFaceMm }) => stationFaceMm);
  return (
    <tr aria-current={isChosen}>
      <td>
        <button
          type="button"
          className="plain code"
          data-testid={`rib-${rib.id}`}
          onClick={() => select({ kind: "rib", ribId: rib.id })}
        >
          {rib.id}
        </button>
      </td>
      <td>{rib.runs}</td>
      <td className="figure">{formatMm(rib.atMm)}</td>
      <td className="figure">{bounds ? formatMm(bounds.right - bounds.left) : ""}</td>
      <td className="figure">{heights.length > 0 ? formatMm(Math.min(...heights)) : ""}</td>
      <td className="figure">{heights.length > 0 ? formatMm(Math.max(...heights)) : ""}</td>
      <td>{`${rib.straightTop ? "straight" : "after the template"}, ${rib.cut}`}</td>
      <td className="code">{rib.sameAs === rib.id ? "" : rib.sameAs}</td>
    </tr>
  );
}
