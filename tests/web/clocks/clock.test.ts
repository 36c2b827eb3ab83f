import { describe, expect, it } from "vitest";
import type { SkinSession } from "../../../core/skins/index.ts";
import { begun, rings, withClock, wordLeft } from "../../../web/clocks/clock.ts";
import { clocksOfSession } from "../../../web/clocks/clocks-of-session.ts";
import { clocksOfStep } from "../../../web/clocks/clocks-of-step.ts";
import { bareStep } from "../../core/glue-up/bare-step.ts";

const span = { id: "a", name: "step 3, glue open", atEnd: "Stop.", minutes: 20 };
const NOON = Date.UTC(2026, 10, 30, 12);
const MINUTE = 60_000;

describe("a clock", () => {
  it("counts down to its end, and then says by how much it is over", () => {
    const clock = begun(span, NOON);
    expect(wordLeft(clock, NOON)).toBe("20:00 min");
    expect(wordLeft(clock, NOON + 1)).toBe("20:00 min");
    expect(wordLeft(clock, NOON + 1000)).toBe("19:59 min");
    expect(wordLeft(clock, NOON + 20 * MINUTE)).toBe("0:00 min");
    expect(wordLeft(clock, NOON + 22 * MINUTE + 5500)).toBe("over by 2:05 min");
    expect(wordLeft(begun({ ...span, minutes: 372 }, NOON), NOON)).toBe("6 h 12 min");
  });

  it("rings from its end on until it is heard", () => {
    const clock = begun(span, NOON);
    expect(rings(clock, NOON + 20 * MINUTE - 1)).toBe(false);
    expect(rings(clock, NOON + 20 * MINUTE)).toBe(true);
    expect(rings({ ...clock, isHeard: true }, NOON + 20 * MINUTE)).toBe(false);
  });

  it("takes the place of the one that counted the same, and the next to ring comes first", () => {
    const [first, second] = [begun(span, NOON), begun({ ...span, id: "b", minutes: 5 }, NOON)];
    const anew = begun(span, NOON + MINUTE);
    expect(withClock(withClock([], first), second)).toEqual([second, first]);
    expect(withClock([second, first], anew)).toEqual([second, anew]);
  });
});

describe("a step of the glue-up", () => {
  const go = { joins: ["S1/S2"], wetMinutes: 12 };
  const step = bareStep({ step: 3, openMinutes: 20, rounds: [go, go], clampHours: 6, waitHours: 24 });

  it("has a clock for every go, and for what is held and waited for", () => {
    const spans = clocksOfStep(step, "tray");
    expect(spans.map(({ minutes }) => minutes)).toEqual([20, 20, 360, 1440]);
    expect(new Set(spans.map(({ id }) => id)).size).toBe(4);
    expect(spans[0]?.atEnd).toContain("S1/S2");
  });

  it("has none where nothing is glued", () => {
    expect(clocksOfStep({ ...step, rounds: [] }, "tray")).toEqual([]);
  });
});

describe("the clocks of a session of skins", () => {
  const session: SkinSession = {
    id: "lower face 2",
    fieldIds: ["S1/2"],
    areaMm2: 4e5,
    workMinutes: 50,
    filmMinutes: 90,
    mixedKg: 0.3,
    cards: [{ count: 2, mixedKg: 0.15, resinKg: 0.1, hardenerKg: 0.05, pigmentKg: 0, useWithinMinutes: 12 }],
    joinedLater: [],
    steps: [],
  };

  it("are the resin that was laid first and each kind of pot, with names of their own", () => {
    const spans = clocksOfSession(session, "w");
    expect(spans.map(({ id, minutes }) => [id, minutes])).toEqual([
      ["w-lower-face-2-film", 90],
      ["w-lower-face-2-pot-1", 12],
    ]);
  });

  it("are none where no resin goes with the shop", () => {
    expect(clocksOfSession({ ...session, filmMinutes: 0, cards: [] }, "w")).toEqual([]);
  });
});
