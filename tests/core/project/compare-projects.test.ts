import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { THIN_SPACE } from "../../../core/foundation/index.ts";
import {
  applyCommand,
  type Command,
  compareProjects,
  isDifferent,
  newFence,
  type Project,
  wordComparison,
  writeProject,
} from "../../../core/project/index.ts";
import { anyRun, diceOf } from "./any-command.ts";
import { plan, twoSections, withFence } from "./small-projects.ts";

const edited = (project: Project, ...commands: readonly Command[]): Project =>
  commands.reduce(applyCommand, project);
const tables = (before: Project, now: Project) =>
  wordComparison(compareProjects(before, now), { before, after: now });
const said = (rows: readonly { what: string; from: string; to: string; by: string }[]) =>
  rows.map(({ what, from, to, by }) => [what, from, to, by].join(" | ").replaceAll(THIN_SPACE, " "));

const start = withFence();

describe("comparing two documents", () => {
  it("says nothing of a document and itself", () => {
    expect(isDifferent(compareProjects(start, structuredClone(start)))).toBe(false);
  });

  it("tells where a node was, where it is, and how far it moved: 30 and 40 mm are 50 mm in all", () => {
    const moved = edited(start, {
      kind: "move-node",
      line: { of: "item", itemId: "one" },
      nodeId: "c",
      to: [1030, 240],
    });
    const [node, ...others] = compareProjects(start, moved).nodes;
    expect(others).toEqual([]);
    expect(node).toMatchObject({ change: "moved", from: { x: 1000, y: 200 }, to: { x: 1030, y: 240 } });
    expect(node?.byMm).toBeCloseTo(50, 9);
    expect(said(tables(start, moved).nodes)).toEqual([
      "Node c of One | x 1000.0, y 200.0 | x 1030.0, y 240.0 | x +30.0, y +40.0; 50.0 in all",
    ]);
    expect(said(tables(moved, start).nodes)).toEqual([
      "Node c of One | x 1030.0, y 240.0 | x 1000.0, y 200.0 | x −30.0, y −40.0; 50.0 in all",
    ]);
  });

  it("tells nodes that came and went, by the line that they are of", () => {
    const now = edited(
      start,
      { kind: "delete-node", line: { of: "profile", profileId: "flat" }, nodeId: "q" },
      {
        kind: "split-segment",
        line: { of: "lower-edge", itemId: "fence" },
        afterNodeId: "l",
        t: 0.5,
        newNodeId: "n9",
      },
      { kind: "change-node", line: { of: "item", itemId: "one" }, nodeId: "b", changes: { radiusMm: 40 } },
    );
    expect(said(tables(start, now).nodes)).toEqual([
      "Node b of One: radius | sharp | 40.0 mm | changed",
      "Node 9 of the lower edge of Fence | – | x 500.0, z 20.0 | added",
      "Node q of Flat | x 1000.0, z 50.0 | – | gone",
    ]);
  });

  it("names things that came and went once, without their nodes", () => {
    const fence = newFence({ id: "two", number: 2, name: "", elements: [plan("a", 0, 0)] });
    const now = edited(start, { kind: "add-fence", fence }, { kind: "delete-item", itemId: "one" });
    expect(said(tables(start, now).things)).toEqual([
      "One | there | – | gone",
      "Fence 2 | – | there | added",
    ]);
    expect(compareProjects(start, now).nodes).toEqual([]);
  });

  it("tells what changed on a thing in the units of the screen", () => {
    const now = edited(start, {
      kind: "change-section",
      itemId: "one",
      changes: { name: "Uno", tiltRad: Math.PI / 90, pivotYMm: 12 },
    });
    expect(said(tables(start, now).things)).toEqual([
      "Uno: name | One | Uno | changed",
      "Uno: tilt | 0.0° | 2.0° | +2.0°",
      "Uno: pivot line | – | 12.0 mm | changed",
    ]);
  });

  it("tells settings by their group, materials by their names", () => {
    const [foam, ...foams] = start.materials.foams;
    if (!foam) throw new Error("There is no foam.");
    const now = edited(start, {
      kind: "change-settings",
      changes: {
        title: "Other",
        jig: { ...start.jig, leastHeightMm: start.jig.leastHeightMm + 20 },
        materials: {
          ...start.materials,
          foams: [{ ...foam, densityKgPerM3: foam.densityKgPerM3 + 5 }, ...foams],
        },
      },
    });
    expect(said(tables(start, now).settings).map((row) => row.replace(/ \| .* \| .* \| /, " | "))).toEqual([
      "Title | changed",
      `Materials: foams, ${foam.name}, density | +5 kg/m³`,
      "Jig: least height | +20.0 mm",
    ]);
  });

  it("says that a piece follows an edge, and where it has nodes of its own again", () => {
    const now = edited(twoSections(), { kind: "unfollow-edge", itemId: "two", followId: "shared" });
    const rows = said(tables(twoSections(), now).nodes);
    expect(rows.some((row) => row.includes("follows an edge | – | gone"))).toBe(true);
    expect(rows.filter((row) => row.endsWith("added"))).not.toEqual([]);
  });

  it("says nothing exactly where both are the same file, and the same both ways round", () => {
    fc.assert(
      fc.property(fc.integer(), fc.integer({ min: 1, max: 8 }), (seed, count) => {
        const before = twoSections();
        const now = anyRun(before, count, diceOf(seed)).projects.at(-1) ?? before;
        const forth = compareProjects(before, now);
        const back = compareProjects(now, before);
        expect(isDifferent(forth)).toBe(writeProject(now) !== writeProject(before));
        expect(back.nodes.length).toBe(forth.nodes.length);
        expect(back.things.length).toBe(forth.things.length);
        const rows = Object.values(tables(before, now)).flat();
        expect(new Set(rows.map(({ key }) => key)).size).toBe(rows.length);
        expect(rows.every(({ what, by }) => what !== "" && by !== "")).toBe(true);
      }),
      { seed: 20261125, numRuns: 150 },
    );
  });
});
