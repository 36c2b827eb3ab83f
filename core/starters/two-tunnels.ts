import { toRadians } from "../foundation/index.ts";
import { emptyProject, newFence, newProfile, newSection, newTransition } from "../project/index.ts";
import { defineStarter } from "./define-starter.ts";
import { planNode, settled, sideNode } from "./starter-lines.ts";
import type { NumberOf } from "./types.ts";

/** The bend over the throat, mm: well above what 10 mm XPS board bends to cold; its tangents fit all ranges. */
const THROAT_RADIUS_MM = 900;
/** The least width of a tunnel's roof beside its wall, mm. */
const LEAST_ROOF_MM = 120;
/** How far inside the outer edge the side fence stands, mm. */
const FENCE_INSIDE_MM = 30;
/** How far behind the front edge the side fence begins, mm. */
const FENCE_BEGINS_MM = 60;
/** Depth of the tunnel fence at the throat, and its most at the rear, mm. */
const TUNNEL_FENCE_MM = [15, 60] as const;

type Name =
  | "aheadMm"
  | "behindMm"
  | "entryDegrees"
  | "exitDegrees"
  | "throatMm"
  | "keelMm"
  | "widthMm"
  | "heightMm";

/**
 * A flat keel with a tunnel on each side. The wall between them leans by 45°: where the roof rises by some mm, its
 * inner edge moves out by as many, so that edge has in plan the very shape of the roof's profile, arcs and all. The
 * wall is therefore a piece of one plane, y − z = const, and its foam stays flat.
 */
export const twoTunnels = defineStarter<Name>({
  name: "two-tunnels",
  word: "Floor with two tunnels",
  explains:
    "A flat keel, a bent roof over a throat on each side, flat walls that lean between them, and fences.",
  numbers: [
    {
      name: "aheadMm",
      word: "Ahead of the throat",
      unit: "mm",
      usual: 600,
      explains: "From the front edge to where the tunnels are lowest.",
      range: () => ({ least: 400, most: 1200 }),
    },
    {
      name: "behindMm",
      word: "Behind the throat",
      unit: "mm",
      usual: 1100,
      explains: "From there to the rear edge.",
      range: () => ({ least: 500, most: 1500 }),
    },
    {
      name: "entryDegrees",
      word: "Entry angle",
      unit: "°",
      usual: 4,
      explains: "How the roof falls towards the throat.",
      range: () => ({ least: 1, most: 8 }),
    },
    {
      name: "exitDegrees",
      word: "Exit angle",
      unit: "°",
      usual: 8,
      explains: "How it rises behind.",
      range: () => ({ least: 2, most: 13 }),
    },
    {
      name: "throatMm",
      word: "Throat above the keel",
      unit: "mm",
      usual: 35,
      explains: "Where straight entry and exit would meet.",
      range: () => ({ least: 25, most: 100 }),
    },
    {
      name: "keelMm",
      word: "Width of the keel",
      unit: "mm",
      usual: 300,
      explains: "The flat sheet in the middle.",
      range: () => ({ least: 150, most: 500 }),
    },
    {
      name: "widthMm",
      word: "Width over all",
      unit: "mm",
      usual: 1300,
      explains: "Keel, walls and both tunnels.",
      range: (numberOf) => ({
        least: Math.ceil(numberOf("keelMm") + 2 * (highestMm(numberOf) + LEAST_ROOF_MM)),
        most: 2000,
      }),
    },
    {
      name: "heightMm",
      word: "Keel above the ground",
      unit: "mm",
      usual: 50,
      explains: "The height of its underside.",
      range: () => ({ least: 25, most: 200 }),
    },
  ],
  draw: (numberOf, start) => {
    const throatXMm = numberOf("aheadMm");
    const lengthMm = throatXMm + numberOf("behindMm");
    const keelMm = numberOf("keelMm") / 2;
    const outerMm = numberOf("widthMm") / 2;
    const heightMm = numberOf("heightMm");
    const throatMm = settled(numberOf("throatMm"));
    const entryMm = settled(entryHeightMm(numberOf));
    const exitMm = settled(exitHeightMm(numberOf));
    const tunnelMiddleMm = (keelMm + exitMm + outerMm) / 2;
    const [fenceAtThroatMm, mostFenceMm] = TUNNEL_FENCE_MM;
    const keel = ["keel", "k3", "k4"] as const;
    return {
      ...emptyProject({ ...start, title: "Floor with two tunnels" }),
      // Joints as long as these are shut and pinned by two.
      laminate: { hands: 2 },
      profiles: [
        newProfile({
          id: "flat",
          name: "Keel",
          nodes: [sideNode("p1", [0, heightMm]), sideNode("p2", [lengthMm, heightMm])],
        }),
        newProfile({
          id: "roof",
          name: "Tunnel roof",
          nodes: [
            sideNode("p1", [0, heightMm + entryMm]),
            sideNode("p2", [throatXMm, heightMm + throatMm], { radiusMm: THROAT_RADIUS_MM }),
            sideNode("p3", [lengthMm, heightMm + exitMm]),
          ],
        }),
      ],
      items: [
        newSection({
          id: "keel",
          number: 1,
          name: "Keel",
          profileId: "flat",
          closed: true,
          elements: [
            planNode("k1", [0, 0], { edgeName: "centre line" }),
            planNode("k2", [lengthMm, 0], { edgeName: "rear" }),
            planNode("k3", [lengthMm, keelMm], { edgeName: "outer edge" }),
            planNode("k4", [0, keelMm], { edgeName: "front" }),
          ],
        }),
        newSection({
          id: "roof",
          number: 2,
          name: "Tunnel roof",
          profileId: "roof",
          closed: true,
          elements: [
            planNode("r1", [0, keelMm + entryMm], { edgeName: "inner edge, front" }),
            planNode("r2", [throatXMm, keelMm + throatMm], {
              radiusMm: THROAT_RADIUS_MM,
              edgeName: "inner edge, rear",
            }),
            planNode("r3", [lengthMm, keelMm + exitMm], { edgeName: "rear" }),
            planNode("r4", [lengthMm, outerMm], { edgeName: "outer edge" }),
            planNode("r5", [0, outerMm], { edgeName: "front" }),
          ],
        }),
        newTransition({
          id: "wall",
          number: 1,
          name: "Tunnel wall",
          first: {
            kind: "stretch",
            edge: { itemId: keel[0], fromNodeId: keel[1], toNodeId: keel[2], hand: "right" },
          },
          second: {
            kind: "stretch",
            edge: { itemId: "roof", fromNodeId: "r1", toNodeId: "r3", hand: "right" },
          },
        }),
        {
          ...newFence({
            id: "side",
            number: 1,
            name: "Side fence",
            elements: [
              planNode("s1", [FENCE_BEGINS_MM, outerMm - FENCE_INSIDE_MM]),
              planNode("s2", [lengthMm, outerMm - FENCE_INSIDE_MM]),
            ],
          }),
          lowerEdge: {
            kind: "heights",
            nodes: [sideNode("h1", [FENCE_BEGINS_MM, heightMm]), sideNode("h2", [lengthMm, heightMm])],
          },
        },
        {
          ...newFence({
            id: "tunnel",
            number: 2,
            name: "Tunnel fence",
            elements: [
              planNode("t1", [throatXMm, tunnelMiddleMm]),
              planNode("t2", [lengthMm, tunnelMiddleMm]),
            ],
          }),
          lowerEdge: {
            kind: "depths",
            nodes: [
              { id: "d1", alongMm: 0, depthMm: fenceAtThroatMm },
              {
                id: "d2",
                alongMm: settled(lengthMm - throatXMm),
                depthMm: settled(Math.min(mostFenceMm, exitMm / 2)),
              },
            ],
          },
        },
      ],
    };
  },
});

/** Height of the roof's front edge above the keel. */
const entryHeightMm = (numberOf: NumberOf<Name>): number =>
  numberOf("throatMm") + numberOf("aheadMm") * Math.tan(toRadians(numberOf("entryDegrees")));

/** Height of the roof's rear edge above the keel. */
const exitHeightMm = (numberOf: NumberOf<Name>): number =>
  numberOf("throatMm") + numberOf("behindMm") * Math.tan(toRadians(numberOf("exitDegrees")));

const highestMm = (numberOf: NumberOf<Name>): number =>
  Math.max(entryHeightMm(numberOf), exitHeightMm(numberOf));
