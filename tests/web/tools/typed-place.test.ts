import { describe, expect, it } from "vitest";
import type { Vec2 } from "../../../core/foundation/index.ts";
import type { TypedPlace } from "../../../web/tools/index.ts";
import { placeTyped } from "../../../web/tools/typed-place.ts";
import {
  click,
  contextOf,
  hear,
  move,
  nodesOf,
  press,
  release,
  trayWithSection,
  type Work,
  workWith,
} from "./bench-of-tools.ts";

const RIGHT = Math.PI / 2;
const typing = (typed: TypedPlace) => ({ kind: "typing", typed }) as const;
const drawing = (): Work => hear(workWith("fence", trayWithSection()), ...click([-600, 500]));
const pointerOf = (work: Work): Vec2 | undefined => work.hand.sight(contextOf(work)).draft?.pointer;

describe("two numbers fix a place", () => {
  const from: Vec2 = [100, 200];

  it("length and direction, 3-4-5", () => {
    const at = placeTyped({ lengthMm: 50, directionRad: Math.atan2(4, 3) }, from, undefined);
    expect(at).toEqual([expect.closeTo(130, 9), expect.closeTo(240, 9)]);
  });

  it("a coordinate and a direction", () => {
    expect(placeTyped({ first: 130, directionRad: Math.atan2(4, 3) }, from, undefined)?.[1]).toBeCloseTo(
      240,
      9,
    );
    expect(placeTyped({ second: 240, directionRad: Math.atan2(4, 3) }, from, undefined)?.[0]).toBeCloseTo(
      130,
      9,
    );
    expect(placeTyped({ first: 70, directionRad: 0 }, from, undefined)).toBeUndefined();
    expect(placeTyped({ second: 240, directionRad: 0 }, from, undefined)).toBeUndefined();
  });

  it("a coordinate and a length: of two places the one on the pointer's side, none beyond its reach", () => {
    expect(placeTyped({ first: 130, lengthMm: 50 }, from, [0, 900])).toEqual([130, 240]);
    expect(placeTyped({ first: 130, lengthMm: 50 }, from, [0, -900])).toEqual([130, 160]);
    expect(placeTyped({ second: 240, lengthMm: 50 }, from, [0, 0])).toEqual([70, 240]);
    expect(placeTyped({ first: 151, lengthMm: 50 }, from, [0, 0])).toBeUndefined();
  });

  it("a direction alone: as far along it as the pointer lies beside it, never back", () => {
    expect(placeTyped({ directionRad: RIGHT }, from, [400, 260])).toEqual([
      expect.closeTo(100, 9),
      expect.closeTo(260, 9),
    ]);
    expect(placeTyped({ directionRad: RIGHT }, from, [400, 60])).toEqual([
      expect.closeTo(100, 9),
      expect.closeTo(200, 9),
    ]);
  });
});

describe("numbers that are typed while a segment is drawn", () => {
  it("hold: the pointer turns a typed length about the last node, and a click sets it", () => {
    const held = hear(drawing(), typing({ lengthMm: 250 }), move([-600, 840]));
    expect(pointerOf(held)).toEqual([expect.closeTo(-600, 9), expect.closeTo(750, 9)]);
    const turned = hear(held, move([-110, 500]));
    expect(pointerOf(turned)).toEqual([expect.closeTo(-350, 9), expect.closeTo(500, 9)]);
    expect(turned.hand.sight(contextOf(turned)).snap?.reasons).toEqual(["as typed"]);
    const set = hear(turned, ...click([-110, 500]), { kind: "finish" });
    expect(nodesOf(set.project, "f1")).toEqual([
      [-600, 500],
      [expect.closeTo(-350, 9), expect.closeTo(500, 9)],
    ]);
  });

  it("are forgotten once the node is set down", () => {
    const next = hear(drawing(), typing({ lengthMm: 250 }), ...click([-110, 500]), move([-350, 900]));
    expect(pointerOf(next)).toEqual([-350, 900]);
  });
});

describe("drawing by dragging", () => {
  it("from bare paper: the first node where the drag began, the next where it ends", () => {
    const drawn = hear(
      workWith("fence", trayWithSection()),
      press([-600, 500]),
      move([-400, 560]),
      release([-310, 600]),
      { kind: "finish" },
    );
    expect(nodesOf(drawn.project, "f1")).toEqual([
      [-600, 500],
      [-310, 600],
    ]);
  });

  it("a hand that trembles while it clicks sets one node", () => {
    const drawn = hear(
      workWith("fence", trayWithSection()),
      press([-600, 500]),
      move([-593, 504]),
      release([-593, 504]),
    );
    expect(drawn.hand.sight(contextOf(drawn)).draft?.nodes).toHaveLength(1);
  });
});
