import { describe, expect, it } from "vitest";
import { designTray } from "../../../core/design.ts";
import type { PlanPoint } from "../../../core/foundation/index.ts";
import { lapRows, patchMaps, stackedWords } from "../../../core/skins/index.ts";
import { readExample } from "../../read-example.ts";

const demo = readExample("hill-climb-floor");
const ply = (clothId: string) => ({ clothId, warpRad: 0 });
const three = [ply("glass-160"), ply("glass-160"), ply("glass-160")];

const isInside = ({ x, y }: PlanPoint, loops: readonly (readonly PlanPoint[])[]): boolean => {
  let crossings = 0;
  for (const loop of loops)
    for (const [i, b] of loop.entries()) {
      const a = loop[(i + loop.length - 1) % loop.length] ?? b;
      if (a.y > y !== b.y > y && a.x + ((y - a.y) * (b.x - a.x)) / (b.y - a.y) > x) crossings += 1;
    }
  return crossings % 2 === 1;
};

/** How much of a lap lies under another, by places sampled over it. */
function shareUnder(
  one: readonly (readonly PlanPoint[])[],
  other: readonly (readonly PlanPoint[])[],
): number {
  const points = one.flat();
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  let [inBoth, all] = [0, 0];
  for (let x = Math.min(...xs) + 1.3; x < Math.max(...xs); x += 7)
    for (let y = Math.min(...ys) + 0.7; y < Math.max(...ys); y += 3)
      if (isInside({ x, y }, one)) {
        all += 1;
        if (isInside({ x, y }, other)) inBoth += 1;
      }
  return all === 0 ? 0 : inBoth / all;
}

for (const [name, project] of [
  ["two plies of the demo", demo],
  ["three plies", { ...demo, laminate: { lower: three, upper: three } }],
] as const)
  describe(`laps of ${name}, as their patches lie`, () => {
    const design = designTray(project);
    const maps = patchMaps(design, design.skins).filter(({ frame }) => frame === "plan");

    it("of two parts never lie over those of the ply below, but where that is said", () => {
      let stacked = 0;
      for (const map of maps) {
        const face = design.skins.faces.find((one) => one.face === map.face);
        const partsOf = ([a, b]: readonly [string, string]) =>
          [a, b]
            .map((id) => id.slice(0, id.indexOf("-")))
            .sort()
            .join("/");
        for (const [i, own] of map.plies.entries()) {
          const below = map.plies[i - 1];
          for (const lap of own.laps) {
            const pair = partsOf(lap.patchIds);
            if (pair.split("/")[0] === pair.split("/")[1]) continue;
            const under = (below?.laps ?? []).filter((one) => partsOf(one.patchIds) === pair);
            const share = Math.max(0, ...under.map((one) => shareUnder(lap.loopsMm, one.loopsMm)));
            const isSaid = face?.laps.some(
              (one) =>
                one.isStacked &&
                one.ply === own.ply &&
                [one.fromPartId, one.ontoPartId].sort().join("/") === pair,
            );
            const isCrossing = face?.crossings.some(
              ({ fromPartIds }) => [...fromPartIds].sort().join("/") === pair,
            );
            if (share <= 0.12 || isCrossing) continue;
            stacked += 1;
            expect([pair, own.ply, isSaid]).toEqual([pair, own.ply, true]);
          }
        }
      }
      // Beside the fence of the outer floor there are 60 mm: two laps do not lie there side by side.
      expect(stacked).toBeGreaterThan(0);
    });

    it("stand in a table: of two cloths the earlier laid is first, and every stacked pair has its reason", () => {
      for (const face of design.skins.faces) {
        const rows = lapRows(face);
        expect(rows).toHaveLength(face.laps.length);
        const sessionOf = (code: string) =>
          face.sessions.findIndex(({ fieldIds }) => fieldIds.some((id) => code.startsWith(id)));
        for (const { first, over, note } of rows) {
          expect(sessionOf(first)).toBeLessThanOrEqual(sessionOf(over));
          expect(note.includes("cured")).toBe(sessionOf(first) !== sessionOf(over));
        }
        expect(stackedWords(face)).toHaveLength(
          face.laps.filter(({ isStacked }) => isStacked).length + face.crossings.length,
        );
        for (const { isStacked, roomMm } of face.laps)
          if (isStacked) expect(roomMm).toBeLessThan(2 * 25 + 15);
        for (const { overlapMm, isTight, isStacked } of face.laps)
          expect(overlapMm >= 25 || (isTight && (isStacked || roomsUnder(face)))).toBe(true);
      }
    });
  });

/** Whether some lap of a face has less room than two shortest laps. */
const roomsUnder = ({ laps }: { readonly laps: readonly { readonly roomMm: number }[] }): boolean =>
  laps.some(({ roomMm }) => roomMm < 50);
