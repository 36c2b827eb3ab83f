import { expect, it } from "vitest";
import {
  type Command,
  type LineRef,
  nameOfCommand,
  newFence,
  newProfile,
} from "../../../core/project/index.ts";
import { plan, side, twoSections, withFence } from "./small-projects.ts";

const ONE: LineRef = { of: "item", itemId: "one" };
const FLAT: LineRef = { of: "profile", profileId: "flat" };
const EDGE: LineRef = { of: "lower-edge", itemId: "fence" };

const named: readonly (readonly [string, Command])[] = [
  ["Move node c of One", { kind: "move-node", line: ONE, nodeId: "c", to: [0, 0] }],
  ["Move node q of Flat", { kind: "move-node", line: FLAT, nodeId: "q", to: [0, 0] }],
  ["Delete node l of the lower edge of Fence", { kind: "delete-node", line: EDGE, nodeId: "l" }],
  ["Change node a of One", { kind: "change-node", line: ONE, nodeId: "a", changes: {} }],
  [
    "Put a node behind node b of One",
    { kind: "split-segment", line: ONE, afterNodeId: "b", t: 0.5, newNodeId: "n" },
  ],
  ["Add a node to Flat", { kind: "append-node", line: FLAT, node: side("z", 0, 0) }],
  ["Close One", { kind: "close-outline", itemId: "one" }],
  ["Delete Fence", { kind: "delete-item", itemId: "fence" }],
  [
    "Add Fence 2",
    { kind: "add-fence", fence: newFence({ id: "g", number: 2, name: " ", elements: [plan("a", 0, 0)] }) },
  ],
  ["Add Ramp", { kind: "add-profile", profile: newProfile({ id: "r", name: "Ramp", nodes: [] }) }],
  ["Rename Flat", { kind: "rename-profile", profileId: "flat", name: "Level" }],
  ["Change One", { kind: "change-section", itemId: "one", changes: {} }],
  ["Rename One", { kind: "change-section", itemId: "one", changes: { name: "Uno" } }],
  ["Change the tilt of One", { kind: "change-section", itemId: "one", changes: { tiltRad: 0.1 } }],
  ["Change One", { kind: "change-section", itemId: "one", changes: { tiltRad: 0.1, name: "Uno" } }],
  ["Change the seat of Fence", { kind: "change-fence", itemId: "fence", changes: { seat: "core" } }],
  [
    "Go on in a curve from node a of One",
    { kind: "change-node", line: ONE, nodeId: "a", changes: { next: "curve" } },
  ],
  [
    "Change the radius at node a of One",
    { kind: "change-node", line: ONE, nodeId: "a", changes: { radiusMm: undefined } },
  ],
  [
    "Change the jig and the paper",
    { kind: "change-settings", changes: { jig: withFence().jig, paper: withFence().paper } },
  ],
  [
    "Move node z of nobody",
    { kind: "move-node", line: { of: "item", itemId: "nobody" }, nodeId: "z", to: [0, 0] },
  ],
];

it.each(named)("%s", (name, command) => {
  expect(nameOfCommand(withFence(), command)).toBe(name);
});

it("following names both sheets", () => {
  const edge = { itemId: "one", fromNodeId: "c", toNodeId: "d", hand: "right" } as const;
  const follow: Command = {
    kind: "follow-edge",
    itemId: "two",
    afterNodeId: "e",
    beforeNodeId: "f",
    edge,
    direction: "along",
    newId: "n",
  };
  expect(nameOfCommand(twoSections(), follow)).toBe("Let Two follow One");
  expect(nameOfCommand(twoSections(), { kind: "unfollow-edge", itemId: "two", followId: "shared" })).toBe(
    "Give Two its own nodes",
  );
});
