import { describe, expect, it } from "vitest";
import {
  applyCommand,
  type Command,
  hiddenThings,
  isProfileShown,
  type LineRef,
  locksAgainst,
  type Project,
  type ThingRef,
  type Underlay,
} from "../../../core/project/index.ts";
import { twoSections, withFence } from "./small-projects.ts";

const FENCE: ThingRef = { of: "item", itemId: "fence" };
const ONE: ThingRef = { of: "item", itemId: "one" };
const FLAT: LineRef = { of: "profile", profileId: "flat" };

const set = (
  project: Project,
  standing: "locked" | "hidden" | "shown",
  ...things: readonly ThingRef[]
): Project => applyCommand(project, { kind: "set-standing", things, standing });

const wordsOf = (project: Project, command: Command): readonly string[] =>
  locksAgainst(project, applyCommand(project, command)).map(({ words }) => words);

const moveProfile: Command = { kind: "move-node", line: FLAT, nodeId: "q", to: [1000, 80] };

describe("a locked fence", () => {
  const project = set(withFence(), "locked", FENCE);

  it.each<readonly [string, Command]>([
    ["moved", { kind: "move-node", line: { of: "item", itemId: "fence" }, nodeId: "a", to: [0, 100] }],
    [
      "cut at its lower edge",
      { kind: "delete-node", line: { of: "lower-edge", itemId: "fence" }, nodeId: "l" },
    ],
    ["deleted", { kind: "delete-item", itemId: "fence" }],
    ["seated otherwise", { kind: "change-fence", itemId: "fence", changes: { seat: "skin" } }],
  ])("is not %s", (_title, command) => {
    expect(wordsOf(project, command)).toEqual(["Fence is locked. Unlock it to change it."]);
  });

  it("stands in the way of nothing else", () => {
    const line: LineRef = { of: "item", itemId: "one" };
    expect(wordsOf(project, { kind: "move-node", line, nodeId: "c", to: [900, 250] })).toEqual([]);
    expect(wordsOf(project, moveProfile)).toEqual([]);
  });
});

describe("a locked section", () => {
  it("keeps the profile that it is bent by", () => {
    expect(wordsOf(set(withFence(), "locked", ONE), moveProfile)).toEqual([
      "One is locked, and is bent by Flat. Unlock it to change the profile.",
    ]);
  });

  it("goes on following an edge that its neighbour moves", () => {
    const project = set(twoSections(), "locked", { of: "item", itemId: "two" });
    const line: LineRef = { of: "item", itemId: "one" };
    expect(wordsOf(project, { kind: "move-node", line, nodeId: "c", to: [1000, 220] })).toEqual([]);
  });
});

describe("a locked picture", () => {
  const underlay: Underlay = {
    id: "u",
    name: "Photograph",
    view: "plan",
    picture: "data:image/png;base64,AA==",
    widthPx: 4,
    heightPx: 3,
    origin: { x: 0, up: 0 },
    mmPerPx: 2,
    turnRad: 0,
    opacity: 0.5,
    locked: true,
  };
  const project = { ...withFence(), underlays: [underlay] };

  it("keeps its place and its scale, and may be faded", () => {
    const change = (changes: Partial<Underlay>): Command => ({
      kind: "change-underlay",
      underlayId: "u",
      changes,
    });
    const refused = ["Photograph is locked. Unlock it to change it."];
    expect(wordsOf(project, change({ origin: { x: 1, up: 0 } }))).toEqual(refused);
    expect(wordsOf(project, change({ mmPerPx: 3 }))).toEqual(refused);
    expect(wordsOf(project, { kind: "delete-underlay", underlayId: "u" })).toEqual(refused);
    expect(wordsOf(project, change({ opacity: 0.2, name: "Old floor" }))).toEqual([]);
  });
});

describe("a hidden section", () => {
  it("takes its profile out of sight with it, unless another section shows it", () => {
    const both = twoSections();
    const one = set(both, "hidden", ONE);
    expect(hiddenThings(one)).toEqual([ONE]);
    expect(isProfileShown(one, "flat")).toBe(true);
    expect(isProfileShown(set(one, "hidden", { of: "item", itemId: "two" }), "flat")).toBe(false);
    expect(isProfileShown(set(both, "hidden", { of: "profile", profileId: "flat" }), "flat")).toBe(false);
    expect(hiddenThings(set(one, "shown", ONE))).toEqual([]);
  });
});
