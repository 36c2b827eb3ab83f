import { describe, expect, it } from "vitest";
import { applyCommand, type Command, type Project } from "../../../core/project/index.ts";
import {
  pulledDirection,
  pulledRadius,
  radiusCommand,
  type Selection,
  segmentCommand,
  shapeGripsOf,
  tangentCommand,
} from "../../../web/tools/index.ts";
import { contextOf, trayWithSection, workWith } from "./bench-of-tools.ts";

const FLOOR = { kind: "item", itemId: "s1" } as const;
const line = { of: "item", itemId: "s1" } as const;
const gripsOf = (project: Project, selection: Selection) =>
  shapeGripsOf(contextOf(workWith("select", project, selection)));
const change = (project: Project, ...commands: readonly Command[]) => commands.reduce(applyCommand, project);

describe("what the chosen edge is shaped by", () => {
  it("a switch at its middle makes it a curve and straight again", () => {
    const { segment } = gripsOf(trayWithSection(), { ...FLOOR, edgeId: "n2" });
    expect(segment).toMatchObject({ kind: "line", at: [1000, 250] });
    if (!segment) return;
    const bent = change(trayWithSection(), segmentCommand(segment, "curve"));
    expect(gripsOf(bent, { ...FLOOR, edgeId: "n2" }).segment?.kind).toBe("curve");
  });

  it("both its corners have a grip; a pull sets a whole radius, never one that does not fit", () => {
    const project = trayWithSection();
    const { corners } = gripsOf(project, { ...FLOOR, edgeId: "n2" });
    expect(corners.map(({ nodeId }) => nodeId)).toEqual(["n2", "n3"]);
    const [first, second] = corners;
    if (!first || !second) throw new Error("two corners");
    // The bisector of the corner at (1000, 100) goes to (970, 130).
    const radiusMm = pulledRadius(first, [970, 130], true);
    expect(radiusMm).toBe(Math.round((30 * Math.SQRT2) / (Math.SQRT2 - 1)));
    expect(radiusCommand(first, 5000)).toMatchObject({ changes: { radiusMm: expect.closeTo(300, 5) } });
    const rounded = change(project, radiusCommand(first, 180));
    const beside = gripsOf(rounded, { ...FLOOR, nodeId: "n3" }).corners[0];
    expect(beside && radiusCommand(beside, 5000)).toMatchObject({
      changes: { radiusMm: expect.closeTo(120, 5) },
    });
    expect(radiusCommand(first, 0)).toMatchObject({ changes: { radiusMm: undefined } });
  });

  it("a curve's ends have handles for their directions, and a smooth end that follows a line has none", () => {
    const curved = change(trayWithSection(), {
      kind: "change-node",
      line,
      nodeId: "n2",
      changes: { next: "curve" },
    });
    const { tangents, corners } = gripsOf(curved, { ...FLOOR, edgeId: "n2" });
    expect(corners).toEqual([]);
    expect(tangents.map(({ nodeId, end, isTyped }) => [nodeId, end, isTyped])).toEqual([
      ["n2", "out", false],
      ["n3", "in", false],
    ]);
    const [out, into] = tangents;
    if (!out || !into) throw new Error("two handles");
    expect(pulledDirection(out, [1100, 200], true)).toBeCloseTo(Math.PI / 4, 9);
    expect(pulledDirection(into, [1100, 300], true)).toBeCloseTo((3 * Math.PI) / 4, 9);
    const set = change(curved, tangentCommand(out, 0.5));
    expect(gripsOf(set, { ...FLOOR, nodeId: "n2" }).tangents[0]).toMatchObject({
      isTyped: true,
      directionRad: expect.closeTo(0.5, 9),
    });
    const smooth = change(curved, { kind: "change-node", line, nodeId: "n2", changes: { meets: "smooth" } });
    expect(gripsOf(smooth, { ...FLOOR, nodeId: "n2" }).tangents).toEqual([]);
  });
});
