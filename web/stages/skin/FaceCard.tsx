import { formatNumber, THIN_SPACE, toDegrees } from "../../../core/foundation/index.ts";
import {
  faceWords,
  potWords,
  type SkinFace,
  type SkinSession,
  skinSteps,
} from "../../../core/skins/index.ts";
import { ScrollAcross } from "../../controls/index.ts";

/** One face: its plies, what is done in which order, its sessions and their pots. */
export function FaceCard({ face }: { readonly face: SkinFace }) {
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
      <ol className="skin-steps">
        {skinSteps(face).map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ol>
      <Sessions sessions={face.sessions} face={face.face} />
    </section>
  );
}

function Sessions({ sessions, face }: { readonly sessions: readonly SkinSession[]; readonly face: string }) {
  const [first] = sessions;
  if (first === undefined) return <p>No session: it is too cold for this resin.</p>;
  return (
    <>
      <p>
        <b>{sessions.length === 1 ? "1 session" : `${sessions.length} sessions`}</b>
        {` of ${formatNumber(first.areaMm2 / 1e6, 2)}${THIN_SPACE}m², ${formatNumber(first.workMinutes, 0)}${THIN_SPACE}min of work each. Pots of one session:`}
      </p>
      <ScrollAcross label={`Pots for the ${face}`}>
        <table className="figures" data-testid="pots">
          <thead>
            <tr>
              {["pots", "mix in each", "resin", "hardener", "pigment", "spread within"].map((word) => (
                <th key={word} scope="col" className="figure">
                  {word}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {first.cards.map((card, index) => (
              <tr key={index}>
                {Object.entries(potWords(card)).map(([key, words]) => (
                  <td key={key} className="figure">
                    {words}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollAcross>
    </>
  );
}
