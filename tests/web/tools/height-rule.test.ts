import { expect, it } from "vitest";
import { applyCommand, newTransition } from "../../../core/project/index.ts";
import { litOwners } from "../../../web/board/both-views/lit-owners.ts";
import { contextOf, hear, move, press, trayWithSection, workWith } from "./bench-of-tools.ts";

it("while a corner of a section is dragged in plan, it is said that the profile decides its height", () => {
  const work = hear(workWith("select", trayWithSection()), press([1000, 400]), move([1050, 450]));
  expect(work.hand.sight(contextOf(work)).prompt).toContain("Its height is what the profile has there.");
});

it("a node in space keeps its height in plan, and its y in side view", () => {
  const project = applyCommand(trayWithSection(), {
    kind: "add-transition",
    transition: newTransition({
      id: "t1",
      number: 1,
      name: "Apron",
      first: { kind: "stretch", edge: { itemId: "s1", fromNodeId: "n4", toNodeId: "n3", hand: "right" } },
      second: {
        kind: "free",
        nodes: [
          { id: "a", x: 0, y: 600, z: 112, next: "line" },
          { id: "b", x: 1000, y: 640, z: 130, next: "line" },
        ],
      },
    }),
  });
  const inPlan = hear(workWith("select", project), press([1000, 640]), move([1050, 700]));
  expect(inPlan.hand.sight(contextOf(inPlan)).prompt).toContain("node b keeps its height, z 130.0.");
  const inSide = hear(workWith("select", project), press([1000, 130], "side"), move([1050, 160], "side"));
  expect(inSide.hand.sight(contextOf(inSide)).prompt).toContain("node b keeps its y 640.0.");
});

it("a section lights its profile, and a profile all its sections", () => {
  expect(litOwners(trayWithSection(), "item/s1")).toEqual(["item/s1", "profile/p1"]);
  expect(litOwners(trayWithSection(), "profile/p1")).toEqual(["profile/p1", "item/s1"]);
});
