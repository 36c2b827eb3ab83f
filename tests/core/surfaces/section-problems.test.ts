import { describe, expect, it } from "vitest";
import { layTray, rectangle, section, sideNode, tray } from "../trays.ts";

/** An arch drawn in so many straight steps. */
const stepped = (steps: number) =>
  Array.from({ length: steps + 1 }, (_, i) =>
    sideNode(`n${i}`, (1000 * i) / steps, 60 + 100 * Math.sin((Math.PI * i) / steps)),
  );

describe("a profile drawn in straight steps", () => {
  const laidIn = (steps: number) =>
    layTray(tray({ p: stepped(steps) }, [section(1, rectangle(0, 1000, 0, 300))], { gapLimitMm: 0 }));

  it("of a few steps gives a sheet for each", () => {
    expect(laidIn(6).parts).toHaveLength(6);
  });

  it("of very many is named, and makes no sheets", () => {
    const { parts, problems } = laidIn(400);
    expect(parts).toEqual([]);
    expect(problems).toMatchObject([
      { kind: "too-many-corners", name: "Profile p", place: { profileId: "p" } },
    ]);
  });
});
