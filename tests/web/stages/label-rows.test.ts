import { describe, expect, it } from "vitest";
import { labelRows } from "../../../web/stages/jig/label-rows.ts";

describe("codes beside each other", () => {
  it("stand in one row as long as there is room", () => {
    const rows = labelRows(
      [0, 40, 80].map((atPx) => ({ id: `A${atPx}`, atPx })),
      40,
    );
    expect([...rows.values()]).toEqual([0, 0, 0]);
  });

  it("step outward where they would cover each other, and come back as soon as they can", () => {
    const labels = [0, 10, 20, 41, 90].map((atPx) => ({ id: `A${atPx}`, atPx }));
    const rows = labelRows(labels.toReversed(), 40);
    expect(labels.map(({ id }) => rows.get(id))).toEqual([0, 1, 2, 0, 0]);
    for (const a of labels)
      for (const b of labels)
        if (a !== b && rows.get(a.id) === rows.get(b.id))
          expect(Math.abs(a.atPx - b.atPx)).toBeGreaterThanOrEqual(40);
  });
});
