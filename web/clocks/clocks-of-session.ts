import type { SkinSession } from "../../core/skins/index.ts";
import type { Span } from "./clock.ts";

/** What is timed in a session of skins: each pot until it must be spread, and what was laid first until it gels. */
export function clocksOfSession(session: SkinSession, workId: string): readonly Span[] {
  const idOf = (what: string) => `${workId}-${session.id.replaceAll(" ", "-")}-${what}`;
  const pots = session.cards.map(
    ({ useWithinMinutes }, i): Span => ({
      id: idOf(`pot-${i + 1}`),
      name: `${session.id}, a pot is mixed`,
      atEnd: "All of it is spread by now. What is left in a warm pot goes into a wide tray, outdoors.",
      minutes: useWithinMinutes,
    }),
  );
  const film: Span = {
    id: idOf("film"),
    name: `${session.id}, the first resin is on`,
    atEnd: "What was laid first begins to gel: it is not worked any more, and nothing goes onto it wet.",
    minutes: session.filmMinutes,
  };
  return [film, ...pots].filter(({ minutes }) => minutes > 0);
}
