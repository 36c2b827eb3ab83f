import type { CDPSession, Page } from "playwright-core";

type Spot = readonly [number, number];

/** Fingers on the glass, as the browser itself is told of them. */
export interface Fingers {
  readonly put: (...spots: readonly Spot[]) => Promise<void>;
  readonly slide: (...spots: readonly Spot[]) => Promise<void>;
  readonly lift: () => Promise<void>;
}

/** A hand whose touches go through the browser's own touch handling. */
export async function fingersOn(page: Page): Promise<Fingers> {
  const session: CDPSession = await page.context().newCDPSession(page);
  const send = (type: "touchStart" | "touchMove" | "touchEnd", spots: readonly Spot[]) =>
    session.send("Input.dispatchTouchEvent", {
      type,
      touchPoints: spots.map(([x, y], id) => ({ x, y, id })),
    });
  return {
    put: async (...spots) => void (await send("touchStart", spots)),
    slide: async (...spots) => void (await send("touchMove", spots)),
    lift: async () => void (await send("touchEnd", [])),
  };
}
