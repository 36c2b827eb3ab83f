import { toRadians } from "../foundation/index.ts";
import { emptyProject, newFence, newProfile, newSection, newTransition } from "../project/index.ts";
import { defineStarter } from "./define-starter.ts";
import { planNode, settled, sideNode } from "./starter-lines.ts";

/** The share of half the width over which the leading edge runs straight across. */
const STRAIGHT_SHARE = 0.5;
/** Radius in plan where the leading edge turns back, mm; its tangents fit all ranges. */
const CORNER_RADIUS_MM = 900;
/** The least length of the lip at its side, mm. */
const LEAST_SIDE_MM = 120;
/** The most that the outer half of the leading edge sweeps back, as a share of its width. */
const MOST_SWEEP = 0.45;
/** How far inside the side edge the end fence stands, mm. */
const FENCE_INSIDE_MM = 20;

/**
 * A flat lip whose leading edge carries a blade turned up in front. The blade's free edge is the leading edge moved
 * forward and up, so all its rulings are parallel and it is a piece of a cylinder: it bends without stretching.
 */
export const frontLip = defineStarter({
  name: "front-lip",
  word: "Front lip",
  explains: "A flat lip with a swept leading edge, a blade turned up along it, and a fence at each end.",
  numbers: [
    {
      name: "widthMm",
      word: "Width",
      unit: "mm",
      usual: 1500,
      explains: "Over both halves.",
      range: () => ({ least: 900, most: 2000 }),
    },
    {
      name: "depthMm",
      word: "Length",
      unit: "mm",
      usual: 420,
      explains: "Of the flat lip on the centre line, front to rear.",
      range: () => ({ least: 250, most: 700 }),
    },
    {
      name: "sweepMm",
      word: "Sweep",
      unit: "mm",
      usual: 110,
      explains: "How far the leading edge falls back towards its ends.",
      range: (numberOf) => ({
        least: 10,
        most: Math.floor(
          Math.min(
            numberOf("depthMm") - LEAST_SIDE_MM,
            (MOST_SWEEP * numberOf("widthMm") * (1 - STRAIGHT_SHARE)) / 2,
          ),
        ),
      }),
    },
    {
      name: "reachMm",
      word: "Blade, forward",
      unit: "mm",
      usual: 60,
      explains: "How far it reaches ahead of the lip.",
      range: () => ({ least: 25, most: 150 }),
    },
    {
      name: "bladeDegrees",
      word: "Blade angle",
      unit: "°",
      usual: 25,
      explains: "Up from the lip.",
      range: () => ({ least: 5, most: 45 }),
    },
    {
      name: "heightMm",
      word: "Height above the ground",
      unit: "mm",
      usual: 70,
      explains: "Of the lip's underside.",
      range: () => ({ least: 35, most: 250 }),
    },
    {
      name: "fenceMm",
      word: "End fence depth",
      unit: "mm",
      usual: 35,
      explains: "Below the lip.",
      range: (numberOf) => ({ least: 15, most: Math.min(150, numberOf("heightMm") - 10) }),
    },
  ],
  draw: (numberOf, start) => {
    const outerMm = numberOf("widthMm") / 2;
    const straightMm = STRAIGHT_SHARE * outerMm;
    const reachMm = numberOf("reachMm");
    const rearXMm = reachMm + numberOf("depthMm");
    const cornerXMm = reachMm + numberOf("sweepMm");
    const heightMm = numberOf("heightMm");
    const tipZMm = settled(heightMm + reachMm * Math.tan(toRadians(numberOf("bladeDegrees"))));
    const fenceYMm = outerMm - FENCE_INSIDE_MM;
    const fenceFromMm = cornerXMm + FENCE_INSIDE_MM;
    return {
      ...emptyProject({ ...start, title: "Front lip" }),
      profiles: [
        newProfile({
          id: "flat",
          name: "Flat lip",
          nodes: [sideNode("p1", [0, heightMm]), sideNode("p2", [rearXMm, heightMm])],
        }),
      ],
      items: [
        newSection({
          id: "lip",
          number: 1,
          name: "Lip",
          profileId: "flat",
          closed: true,
          elements: [
            planNode("l1", [reachMm, 0], { edgeName: "centre line" }),
            planNode("l2", [rearXMm, 0], { edgeName: "rear" }),
            planNode("l3", [rearXMm, outerMm], { edgeName: "side" }),
            planNode("l4", [cornerXMm, outerMm], { edgeName: "leading edge, swept" }),
            planNode("l5", [reachMm, straightMm], {
              radiusMm: CORNER_RADIUS_MM,
              edgeName: "leading edge, straight",
            }),
          ],
        }),
        newTransition({
          id: "blade",
          number: 1,
          name: "Blade",
          first: {
            kind: "stretch",
            edge: { itemId: "lip", fromNodeId: "l4", toNodeId: "l1", hand: "right" },
          },
          second: {
            kind: "free",
            nodes: [
              { id: "b1", x: settled(cornerXMm - reachMm), y: settled(outerMm), z: tipZMm, next: "line" },
              {
                id: "b2",
                x: 0,
                y: settled(straightMm),
                z: tipZMm,
                radiusMm: CORNER_RADIUS_MM,
                next: "line",
              },
              { id: "b3", x: 0, y: 0, z: tipZMm, next: "line" },
            ],
          },
        }),
        {
          ...newFence({
            id: "end",
            number: 1,
            name: "End fence",
            elements: [planNode("e1", [fenceFromMm, fenceYMm]), planNode("e2", [rearXMm, fenceYMm])],
          }),
          lowerEdge: {
            kind: "depths",
            nodes: [
              { id: "d1", alongMm: 0, depthMm: numberOf("fenceMm") },
              { id: "d2", alongMm: settled(rearXMm - fenceFromMm), depthMm: numberOf("fenceMm") },
            ],
          },
        },
      ],
    };
  },
});
