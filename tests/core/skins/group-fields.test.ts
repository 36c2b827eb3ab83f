import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cutMm, type FieldGraph, groupFields } from "../../../core/skins/group-fields.ts";

/** All ways to put fields into sessions that are short enough: the fewest sessions, and the least seams of those. */
function exhaustive(graph: FieldGraph, mostMinutes: number): { count: number; seamMm: number } {
  const { minutes, seams } = graph;
  let best = { count: Number.POSITIVE_INFINITY, seamMm: Number.POSITIVE_INFINITY };
  const place = (grouping: readonly number[], loads: readonly number[]) => {
    const field = grouping.length;
    if (loads.length > best.count) return;
    if (field === minutes.length) {
      const seamMm = seams.reduce(
        (sum, { fields: [a, b], lengthMm }) => (grouping[a] === grouping[b] ? sum : sum + lengthMm),
        0,
      );
      if (loads.length < best.count || (loads.length === best.count && seamMm < best.seamMm))
        best = { count: loads.length, seamMm };
      return;
    }
    const own = minutes[field] ?? 0;
    for (let session = 0; session <= loads.length; session++) {
      const load = (loads[session] ?? 0) + own;
      if (session < loads.length && load > mostMinutes) continue;
      place([...grouping, session], session < loads.length ? loads.with(session, load) : [...loads, load]);
    }
  };
  place([], []);
  return best;
}

const graphs = fc.integer({ min: 1, max: 8 }).chain((count) =>
  fc.record({
    minutes: fc.array(fc.integer({ min: 2, max: 40 }), { minLength: count, maxLength: count }),
    seams: fc.array(
      fc.record({
        fields: fc.tuple(fc.nat({ max: count - 1 }), fc.nat({ max: count - 1 })),
        lengthMm: fc.integer({ min: 50, max: 2000 }),
      }),
      { maxLength: 14 },
    ),
  }),
);

describe("fields in sessions", () => {
  it("take no more sessions and no longer seams than the best of all groupings; none is too long", () => {
    fc.assert(
      fc.property(graphs, (graph) => {
        const grouping = groupFields(graph, 60);
        const best = exhaustive(graph, 60);
        expect(new Set(grouping).size).toBe(best.count);
        expect(cutMm(grouping, graph)).toBeCloseTo(best.seamMm, 9);
        for (const session of new Set(grouping))
          expect(
            graph.minutes.reduce((sum, own, i) => (grouping[i] === session ? sum + own : sum), 0),
          ).toBeLessThanOrEqual(60);
      }),
      { seed: 11, numRuns: 400 },
    );
  });

  it("a chain of equal fields is cut once in its middle", () => {
    const seams = [0, 1, 2].map((i) => ({ fields: [i, i + 1] as const, lengthMm: 500 }));
    expect(groupFields({ minutes: [30, 30, 30, 30], seams }, 60)).toEqual([0, 0, 1, 1]);
  });

  it("are grouped also where there are very many: within the time, and bettered over one after the other", () => {
    const columns = 16;
    const count = columns * 10;
    const minutes = Array.from({ length: count }, (_, i) => 10 + ((i * 7) % 5));
    const seams = minutes.flatMap((_, i) => [
      ...((i + 1) % columns === 0 ? [] : [{ fields: [i, i + 1] as const, lengthMm: 400 }]),
      ...(i + columns < count ? [{ fields: [i, i + columns] as const, lengthMm: 600 }] : []),
    ]);
    const grouping = groupFields({ minutes, seams }, 60);
    const loadOf = (session: number) =>
      minutes.reduce((sum, own, i) => (grouping[i] === session ? sum + own : sum), 0);
    for (const session of new Set(grouping)) expect(loadOf(session)).toBeLessThanOrEqual(60);
    // Five to a session as they come in a row: four seams of 400 mm kept in each, and none of 600.
    const inARow = minutes.map((_, i) => Math.floor(i / 5));
    expect(cutMm(grouping, { minutes, seams })).toBeLessThan(cutMm(inARow, { minutes, seams }));
  });
});
