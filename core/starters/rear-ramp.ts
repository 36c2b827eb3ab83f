import { toRadians } from "../foundation/index.ts";
import { emptyProject, newFence, newProfile, newSection } from "../project/index.ts";
import { defineStarter } from "./define-starter.ts";
import { followAgainst, planNode, sideNode } from "./starter-lines.ts";

/** The share of half the width that the centre floor takes. */
const CENTRE_SHARE = 0.5;
/** How far inside the outer edge the side fence stands, and how far inside the front edge it begins, mm. */
const FENCE_INSIDE_MM = 30;
/** How far ahead of the corner of floor and ramp the ramp fence begins, along the middle of the outer floor, mm. */
const AHEAD_OF_BEND_MM = 150;

/**
 * A flat floor that ends in a ramp: a centre floor and outer floors that follow its edges, all bent over one
 * profile, a fence along each side and one under each half of the ramp. The bend's tangents are R tan(α / 2) long,
 * 264 mm at the most, and fit into the shortest ramp.
 */
export const rearRamp = defineStarter({
  name: "rear-ramp",
  word: "Flat floor with rear ramp",
  explains: "A flat floor bent up into a ramp behind, in three sheets, with four fences.",
  numbers: [
    {
      name: "floorMm",
      word: "Flat floor",
      unit: "mm",
      usual: 1400,
      explains: "From the front edge to where the ramp would begin without its bend.",
      range: () => ({ least: 500, most: 2200 }),
    },
    {
      name: "rampMm",
      word: "Ramp",
      unit: "mm",
      usual: 550,
      explains: "Its length in plan.",
      range: () => ({ least: 300, most: 1000 }),
    },
    {
      name: "rampDegrees",
      word: "Ramp angle",
      unit: "°",
      usual: 9,
      explains: "Up from the ground.",
      range: () => ({ least: 2, most: 15 }),
    },
    {
      name: "bendMm",
      word: "Bend radius",
      unit: "mm",
      usual: 900,
      explains: "Between floor and ramp. 10 mm XPS board bends cold to about 600.",
      range: () => ({ least: 700, most: 2000 }),
    },
    {
      name: "frontMm",
      word: "Width in front",
      unit: "mm",
      usual: 900,
      explains: "Over both halves.",
      range: () => ({ least: 500, most: 2000 }),
    },
    {
      name: "rearMm",
      word: "Width behind",
      unit: "mm",
      usual: 1200,
      explains: "Over both halves.",
      range: () => ({ least: 500, most: 2000 }),
    },
    {
      name: "heightMm",
      word: "Height above the ground",
      unit: "mm",
      usual: 60,
      explains: "Of the flat floor's underside.",
      range: () => ({ least: 35, most: 250 }),
    },
    {
      name: "fenceMm",
      word: "Fence depth",
      unit: "mm",
      usual: 30,
      explains: "Below the flat floor; along the ramp the fences stay at that height.",
      range: (numberOf) => ({ least: 15, most: Math.min(150, numberOf("heightMm") - 10) }),
    },
  ],
  draw: (numberOf, start) => {
    const floorMm = numberOf("floorMm");
    const lengthMm = floorMm + numberOf("rampMm");
    const riseMm = numberOf("rampMm") * Math.tan(toRadians(numberOf("rampDegrees")));
    const heightMm = numberOf("heightMm");
    const [frontMm, rearMm] = [numberOf("frontMm") / 2, numberOf("rearMm") / 2];
    const centreMm = CENTRE_SHARE * Math.min(frontMm, rearMm);
    const rampFenceXMm = floorMm - AHEAD_OF_BEND_MM;
    const fenceFootMm = heightMm - numberOf("fenceMm");
    const lowerEdge = (fromMm: number) =>
      ({
        kind: "heights",
        nodes: [sideNode("h1", [fromMm, fenceFootMm]), sideNode("h2", [lengthMm, fenceFootMm])],
      }) as const;
    const outerAtMm = (xMm: number) => frontMm + ((rearMm - frontMm) * xMm) / lengthMm;
    const middleAtMm = (xMm: number) => (centreMm + outerAtMm(xMm)) / 2;
    return {
      ...emptyProject({ ...start, title: "Floor with rear ramp" }),
      // Joints as long as these are shut and pinned by two.
      laminate: { hands: 2 },
      profiles: [
        newProfile({
          id: "floor",
          name: "Floor and ramp",
          nodes: [
            sideNode("p1", [0, heightMm]),
            sideNode("p2", [floorMm, heightMm], { radiusMm: numberOf("bendMm") }),
            sideNode("p3", [lengthMm, heightMm + riseMm]),
          ],
        }),
      ],
      items: [
        newSection({
          id: "centre",
          number: 1,
          name: "Centre floor",
          profileId: "floor",
          closed: true,
          elements: [
            planNode("c1", [0, 0], { edgeName: "centre line" }),
            planNode("c2", [lengthMm, 0], { edgeName: "rear" }),
            planNode("c3", [lengthMm, centreMm], { edgeName: "outer edge" }),
            planNode("c4", [0, centreMm], { edgeName: "front" }),
          ],
        }),
        newSection({
          id: "outer",
          number: 2,
          name: "Outer floor",
          profileId: "floor",
          closed: true,
          elements: [
            followAgainst("o1", ["centre", "c3", "c4"], "rear"),
            planNode("o2", [lengthMm, rearMm], { edgeName: "outer edge" }),
            planNode("o3", [0, frontMm], { edgeName: "front" }),
          ],
        }),
        {
          ...newFence({
            id: "side",
            number: 1,
            name: "Side fence",
            elements: [
              planNode("s1", [FENCE_INSIDE_MM, outerAtMm(FENCE_INSIDE_MM) - FENCE_INSIDE_MM]),
              planNode("s2", [lengthMm, rearMm - FENCE_INSIDE_MM]),
            ],
          }),
          lowerEdge: lowerEdge(FENCE_INSIDE_MM),
        },
        {
          ...newFence({
            id: "ramp",
            number: 2,
            name: "Ramp fence",
            elements: [
              planNode("r1", [rampFenceXMm, middleAtMm(rampFenceXMm)]),
              planNode("r2", [lengthMm, middleAtMm(lengthMm)]),
            ],
          }),
          lowerEdge: lowerEdge(rampFenceXMm),
        },
      ],
    };
  },
});
