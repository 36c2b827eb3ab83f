import { potWords, type SkinSession, sessionWords } from "../../core/skins/index.ts";
import { ClockStart, clocksOfSession } from "../clocks/index.ts";

interface SessionCardProps {
  readonly session: SkinSession;
  readonly workId: string;
}

/** A session of skins in big print: what goes into each pot, the clocks, and what is laid in which order. */
export function SessionCard({ session, workId }: SessionCardProps) {
  return (
    <>
      <h2>{`Skin the ${session.id}`}</h2>
      <p>{sessionWords(session)}</p>
      {session.cards.map((card, i) => {
        const { pots, each, resin, hardener, pigment, within } = potWords(card);
        return (
          <ul key={i} className="bench-rows">
            <li>
              <span>{pots === "1" ? "1 pot" : `${pots} pots of`}</span>
              <b>{each}</b>
            </li>
            <li>
              <span>resin</span>
              <b>{resin}</b>
            </li>
            <li>
              <span>hardener</span>
              <b>{hardener}</b>
            </li>
            {card.pigmentKg > 0 ? (
              <li>
                <span>pigment</span>
                <b>{pigment}</b>
              </li>
            ) : null}
            <li>
              <span>spread within</span>
              <b>{within}</b>
            </li>
          </ul>
        );
      })}
      {clocksOfSession(session, workId).map((span) => (
        <ClockStart key={span.id} span={span} />
      ))}
      <ol className="bench-steps">
        {session.steps.map(({ title, why }) => (
          <li key={title}>
            {title}. <small>{why}</small>
          </li>
        ))}
      </ol>
    </>
  );
}
