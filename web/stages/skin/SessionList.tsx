import { formatNumber, THIN_SPACE } from "../../../core/foundation/index.ts";
import {
  patchesOfSession,
  patchWords,
  potWords,
  type SkinFace,
  type SkinSession,
  sessionWords,
} from "../../../core/skins/index.ts";
import { FigureHeads, ScrollAcross } from "../../controls/index.ts";
import { LapTable } from "./LapTable.tsx";

/** The sessions of a face: what is laid in each, its pots and its patches of cloth. */
export function SessionList({ face }: { readonly face: SkinFace }) {
  const { sessions, sessionSeamMm } = face;
  if (sessions.length === 0)
    return (
      <p>No session is planned: this resin does not go with the shop or the foam. The problems say why.</p>
    );
  return (
    <>
      <p>
        <b>{sessions.length === 1 ? "1 session" : `${sessions.length} sessions`}</b>
        {`, ${formatNumber(sessionSeamMm / 1000, 2)}${THIN_SPACE}m of seams between them.`}
      </p>
      {face.laps.length > 0 && (
        <details>
          <summary>How the cloths lap beside the joints</summary>
          <LapTable face={face} />
        </details>
      )}
      {sessions.map((session, i) => (
        <section
          key={session.id}
          className="skin-session"
          aria-label={`Session ${i + 1} of the ${face.face}`}
        >
          <h4>{`Session ${i + 1}`}</h4>
          <p>{sessionWords(session)}</p>
          <ol className="skin-steps">
            {session.steps.map(({ title, why }) => (
              <li key={title}>
                {`${title}. `}
                <span className="pencil">{why}</span>
              </li>
            ))}
          </ol>
          <Pots session={session} />
          <details>
            <summary>Its patches of cloth</summary>
            <Patches face={face} session={session} />
          </details>
        </section>
      ))}
    </>
  );
}

function Pots({ session }: { readonly session: SkinSession }) {
  return (
    <ScrollAcross label={`Pots of ${session.id}`}>
      <table className="figures" data-testid="pots">
        <thead>
          <tr>
            <FigureHeads words={["pots", "mix in each", "resin", "hardener", "pigment", "spread within"]} />
          </tr>
        </thead>
        <tbody>
          {session.cards.map((card, index) => (
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
  );
}

function Patches({ face, session }: { readonly face: SkinFace; readonly session: SkinSession }) {
  return (
    <ScrollAcross label={`Patches of ${session.id}`}>
      <table className="figures" data-testid="patches">
        <thead>
          <tr>
            <th scope="col">patch</th>
            <FigureHeads words={["ply", "warp", "along × across, mm", "m²"]} />
          </tr>
        </thead>
        <tbody>
          {patchesOfSession(face, session).map((patch) => {
            const { code, ply, warp, size, area } = patchWords(patch);
            return (
              <tr key={code}>
                <td>{code}</td>
                {[ply, warp, size, area].map((words, index) => (
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
  );
}
