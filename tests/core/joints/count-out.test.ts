import { describe, expect, it } from "vitest";
import { designTray } from "../../../core/design.ts";
import { readExample } from "../../read-example.ts";

describe("two sheets that both lie across the centre line", () => {
  it("meet over their whole width: the joint on the drawn half and its image on the other", () => {
    const { joints } = designTray(readExample("hill-climb-floor"));
    const own = joints.filter(({ partIds }) => partIds.join() === "S3,S1");
    expect(own.map(({ edgeIds, lengthMm }) => [edgeIds, lengthMm])).toEqual([
      [["f1", "n4"], 250],
      [["f1.left", "n4.left"], 250],
    ]);
    const ys = own.map(({ from, to }) => [from.y, to.y].sort((a, b) => a - b));
    expect(ys).toEqual([
      [0, 250],
      [-250, 0],
    ]);
  });
});
