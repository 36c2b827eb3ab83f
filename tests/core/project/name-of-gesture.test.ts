import { expect, it } from "vitest";
import {
  type Command,
  type LineRef,
  nameOfGesture,
  newFence,
  wordsOfCommand,
} from "../../../core/project/index.ts";
import { plan, withFence } from "./small-projects.ts";

const ONE: LineRef = { of: "item", itemId: "one" };
const FENCE: LineRef = { of: "item", itemId: "fence" };
const EDGE: LineRef = { of: "lower-edge", itemId: "fence" };
const FLAT: LineRef = { of: "profile", profileId: "flat" };

const move = (line: LineRef, nodeId: string): Command => ({ kind: "move-node", line, nodeId, to: [0, 0] });
const split = (line: LineRef): Command => ({
  kind: "split-segment",
  line,
  afterNodeId: "a",
  t: 0.5,
  newNodeId: "n",
});
const add = (number: number): Command => ({
  kind: "add-fence",
  fence: newFence({ id: `f${number}`, number, name: "", elements: [plan("a", 0, 0)] }),
});

const gestures: readonly (readonly [string, readonly Command[]])[] = [
  ["Move node a of One", [move(ONE, "a"), move(ONE, "a")]],
  ["Move One", [move(ONE, "a"), move(ONE, "b")]],
  ["Move the lower edge of Fence", [move(EDGE, "l"), move(EDGE, "m")]],
  ["Move Fence", [move(FENCE, "a"), move(EDGE, "l")]],
  [
    "Move One",
    [move(ONE, "a"), { kind: "change-section", itemId: "one", changes: { pivotYMm: 3 } }, move(ONE, "b")],
  ],
  ["Move One and 2 more", [move(ONE, "a"), move(FENCE, "a"), move(FLAT, "p"), move(FLAT, "q")]],
  ["Change One", [split(ONE), { kind: "change-node", line: ONE, nodeId: "a", changes: {} }]],
  ["Add Fence 2", [add(2), move(FENCE, "a")]],
  ["Add Fence 2 and 1 more", [add(2), add(3)]],
  ["Delete Fence", [move(ONE, "a"), { kind: "delete-item", itemId: "fence" }]],
];

it.each(gestures)("a gesture of several commands has one name: %s", (name, commands) => {
  expect(nameOfGesture(commands.map((command) => wordsOfCommand(withFence(), command)))).toBe(name);
});
