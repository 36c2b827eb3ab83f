import { type SkinFace, zoneRow, zoneWords } from "../../../core/skins/index.ts";
import { FigureHeads, ScrollAcross } from "../../controls/index.ts";

/** The reinforcement of a face in figures. */
export function ZoneTable({ face }: { readonly face: SkinFace }) {
  return (
    <>
      <ScrollAcross label={`Reinforcement of the ${face.face}`}>
        <table className="figures" data-testid="zones">
          <thead>
            <tr>
              <th scope="col">reinforcement</th>
              <th scope="col">laid with</th>
              <FigureHeads words={["plies", "step, mm", "cloth, m²", "adds, mm", "in all, mm", "adds, g"]} />
            </tr>
          </thead>
          <tbody>
            {face.zones.map((zone) => {
              const { name, field, plies, step, area, adds, all, mass } = zoneRow(zone);
              return (
                <tr key={zone.id}>
                  <td>{name}</td>
                  <td>{field}</td>
                  {[plies, step, area, adds, all, mass].map((words, index) => (
                    <td key={index} className="figure">
                      {words}
                    </td>
                  ))}
                </tr>
              );
            })}
          </tbody>
        </table>
      </ScrollAcross>
      {face.zones.flatMap(zoneWords).map((words) => (
        <p key={words}>{words}</p>
      ))}
    </>
  );
}
