import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { designTray } from "../../../core/design.ts";
import { at } from "../../../core/foundation/index.ts";
import { AS_DRAWN, lyingFoam } from "../../../core/jig/index.ts";
import { judgeLine } from "../../../core/jig/lie/judge-line.ts";
import { alongAt } from "../../../core/jig/lie/lane-places.ts";
import { lanesOf } from "../../../core/jig/lie/lanes-of.ts";
import { layLane } from "../../../core/jig/lie/lay-lane.ts";
import { quickLane } from "../../../core/jig/lie/quick-lane.ts";
import { quickShares } from "../../../core/jig/lie/quick-shares.ts";
import { lieSettingsOf } from "../../../core/project/index.ts";
import { readExample } from "../../read-example.ts";

const demo = readExample("hill-climb-floor");
const design = designTray(demo);
const lanes = lanesOf(lyingFoam({ ...design, laid: AS_DRAWN }), demo, "across").filter(
  ({ places }) => at(places, -1).alongMm > 300,
);
const settings = { ...lieSettingsOf(demo), pushN: 30 };

describe("what stretches of a lane ask for, reckoned quickly", () => {
  it("is what the plain beam tells of every stretch, on any ribs", () => {
    expect(lanes.length).toBeGreaterThan(8);
    fc.assert(
      fc.property(
        fc.nat(lanes.length - 1),
        fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 2, maxLength: 12 }),
        (index, shares) => {
          const lane = at(lanes, index);
          const [from, to] = [at(lane.places, 0).placeMm, at(lane.places, -1).placeMm];
          const placesMm = shares
            .map((share) => from + share * (to - from))
            .sort((a, b) => a - b)
            .filter((mm, i, all) => i === 0 || mm - at(all, i - 1) > 25);
          if (placesMm.length < 2) return;
          const supports = placesMm.map((placeMm, i) => ({ ribId: `${i}`, placeMm, liftMm: 0 }));
          const line = layLane(lane, supports, settings, "coarse");
          if (!line) throw new Error("two supports carry it");
          const plain = judgeLine(line, settings.toleranceMm).map(({ share }) => share);
          const alongMm = placesMm.map((mm) => alongAt(lane.places, mm));
          const stretches = [0, alongMm.length + 1] as const;
          const quick = quickShares(
            quickLane(lane),
            { alongMm, hangsFree: lane.hangsFree },
            stretches,
            settings,
          );
          expect(quick).toHaveLength(plain.length);
          for (const [i, share] of plain.entries())
            expect(Math.abs(at([...quick], i) - share)).toBeLessThan(0.01 + 0.01 * share);
        },
      ),
      { seed: 11, numRuns: 400 },
    );
  });
});
