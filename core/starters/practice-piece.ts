import { toRadians } from "../foundation/index.ts";
import { emptyProject, newProfile, newSection } from "../project/index.ts";
import { defineStarter } from "./define-starter.ts";
import { planNode, settled, sideNode } from "./starter-lines.ts";

/** How much of each flat the bend's tangent may take. */
const MOST_OF_FLAT = 0.9;
/** Height of the flat front half above the ground, mm. */
const HEIGHT_MM = 60;
/** How far inside the edges the two ribs stand, mm. */
const RIB_INSIDE_MM = 40;
/** Over this span 10 mm of foam under a wet skin sags less than half a millimetre. */
const MOST_APART_MM = 280;

/** One sheet with one bend over two ribs, to be cut from an offcut: the whole way of working in an evening. */
export const practicePiece = defineStarter({
  name: "practice-piece",
  word: "Practice piece",
  explains: "One small sheet with one bend, over two ribs: an evening's work from an offcut.",
  numbers: [
    {
      name: "lengthMm",
      word: "Length",
      unit: "mm",
      usual: 590,
      explains: "In plan, across the bend.",
      range: () => ({ least: 400, most: 1000 }),
    },
    {
      name: "widthMm",
      word: "Width",
      unit: "mm",
      usual: 290,
      explains: "Along the bend.",
      range: () => ({ least: 150, most: 580 }),
    },
    {
      name: "bendDegrees",
      word: "Bend",
      unit: "°",
      usual: 12,
      explains: "How far the rear half turns up.",
      range: () => ({ least: 3, most: 25 }),
    },
    {
      name: "radiusMm",
      word: "Bend radius",
      unit: "mm",
      usual: 700,
      explains: "10 mm XPS board bends cold to about 600.",
      range: (numberOf) => ({
        least: 650,
        most: Math.floor(
          (MOST_OF_FLAT * numberOf("lengthMm")) / 2 / Math.tan(toRadians(numberOf("bendDegrees")) / 2),
        ),
      }),
    },
    {
      name: "cornerMm",
      word: "Rear corners",
      unit: "mm",
      usual: 25,
      explains: "Their radius in plan.",
      range: () => ({ least: 5, most: 60 }),
    },
  ],
  draw: (numberOf, start) => {
    const lengthMm = numberOf("lengthMm");
    const widthMm = numberOf("widthMm");
    const radiusMm = numberOf("cornerMm");
    const riseMm = (lengthMm / 2) * Math.tan(toRadians(numberOf("bendDegrees")));
    const empty = emptyProject({ ...start, title: "Practice piece" });
    return {
      ...empty,
      symmetry: "none",
      jig: {
        ...empty.jig,
        attitude: "upright",
        across: { kind: "none" },
        along: { kind: "typed", atMm: ribPlaces(widthMm) },
      },
      profiles: [
        newProfile({
          id: "bend",
          name: "Flat, bend, flat",
          nodes: [
            sideNode("p1", [0, HEIGHT_MM]),
            sideNode("p2", [lengthMm / 2, HEIGHT_MM], { radiusMm: numberOf("radiusMm") }),
            sideNode("p3", [lengthMm, HEIGHT_MM + riseMm]),
          ],
        }),
      ],
      items: [
        newSection({
          id: "sheet",
          number: 1,
          name: "Practice sheet",
          profileId: "bend",
          closed: true,
          elements: [
            planNode("n1", [0, 0], { edgeName: "left edge" }),
            planNode("n2", [lengthMm, 0], { radiusMm, edgeName: "rear" }),
            planNode("n3", [lengthMm, widthMm], { radiusMm, edgeName: "right edge" }),
            planNode("n4", [0, widthMm], { edgeName: "front" }),
          ],
        }),
      ],
    };
  },
});

/** Ribs along just inside both edges, and as many between that foam and wet skin hardly sag. */
function ribPlaces(widthMm: number): readonly number[] {
  const apartMm = widthMm - 2 * RIB_INSIDE_MM;
  const bays = Math.max(1, Math.ceil(apartMm / MOST_APART_MM));
  return Array.from({ length: bays + 1 }, (_, i) => settled(RIB_INSIDE_MM + (apartMm * i) / bays));
}
