import { formatNumber, THIN_SPACE, toDegrees } from "../../../core/foundation/index.ts";
import { faceWords, type PatchMap, type SkinFace } from "../../../core/skins/index.ts";
import { ScrollAcross } from "../../controls/index.ts";
import { PatchMapView } from "./PatchMapView.tsx";
import { SessionList } from "./SessionList.tsx";
import { ZoneTable } from "./ZoneTable.tsx";

interface FaceCardProps {
  readonly face: SkinFace;
  /** Undefined while they are drawn. */
  readonly maps: readonly PatchMap[] | undefined;
}

/** One face: its plies, where its patches lie, what is done in which order, its sessions and their pots. */
export function FaceCard({ face, maps }: FaceCardProps) {
  const name = `${face.face[0]?.toUpperCase()}${face.face.slice(1)}`;
  return (
    <section className="skin-face" aria-label={name} data-testid={`skin-${face.face.replace(" ", "-")}`}>
      <h3>{`${name}, ${formatNumber(face.areaMm2 / 1e6, 2)}${THIN_SPACE}m²`}</h3>
      <p className="pencil">{faceWords(face)}</p>
      <ScrollAcross label={`Plies of the ${face.face}`}>
        <table className="figures">
          <thead>
            <tr>
              <th scope="col">ply, from the foam</th>
              <th scope="col">cloth</th>
              <th scope="col" className="figure">
                warp
              </th>
              <th scope="col" className="figure">
                cloth, g/m²
              </th>
              <th scope="col" className="figure">
                resin, g/m²
              </th>
            </tr>
          </thead>
          <tbody>
            {face.plies.map((ply, index) => (
              <tr key={index}>
                <td>{index + 1}</td>
                <td>{ply.clothName}</td>
                <td className="figure">{`${formatNumber(toDegrees(ply.warpRad), 0)}°`}</td>
                <td className="figure">{formatNumber(ply.clothKgPerM2 * 1000, 0)}</td>
                <td className="figure">{formatNumber(ply.resinKgPerM2 * 1000, 0)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollAcross>
      {face.zones.length > 0 ? <ZoneTable face={face} /> : null}
      {maps === undefined ? (
        <p className="pencil">Drawing where the patches lie.</p>
      ) : (
        <PatchMapView face={face} maps={maps.filter((map) => map.face === face.face)} />
      )}
      <SessionList face={face} />
    </section>
  );
}
