import fc from "fast-check";
import { expect, it } from "vitest";
import { keepEqual } from "../../../core/foundation/index.ts";

it("gives back the object of before where both say the same", () => {
  const before = { a: [1, { b: 2 }], c: "x" };
  expect(keepEqual(before, structuredClone(before))).toBe(before);
});

it("keeps what has not changed beside what has", () => {
  const before = { changed: { at: 1 }, same: { at: [1, 2, 3] } };
  const kept = keepEqual(before, { changed: { at: 2 }, same: { at: [1, 2, 3] } });
  expect(kept).toEqual({ changed: { at: 2 }, same: { at: [1, 2, 3] } });
  expect(kept.same).toBe(before.same);
});

it("tells a list from a shorter one, a field that is absent from one that is undefined, and −0 from 0", () => {
  expect(keepEqual([1, 2], [1])).toEqual([1]);
  expect(Object.keys(keepEqual({ a: 1, b: undefined }, { a: 1 }))).toEqual(["a"]);
  expect(Object.is(keepEqual({ x: 0 }, { x: -0 }).x, -0)).toBe(true);
});

it("says the same as the value now, whatever was before", () => {
  fc.assert(
    fc.property(fc.object(), fc.object(), (before, now) => {
      expect(keepEqual(before, now)).toStrictEqual(now);
      expect(keepEqual(now, structuredClone(now))).toBe(now);
    }),
    { seed: 20261125, numRuns: 200 },
  );
});
