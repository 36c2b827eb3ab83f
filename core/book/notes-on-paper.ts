import { formatMm } from "../foundation/index.ts";
import { type Note, type Project, pinPlace } from "../project/index.ts";
import { type Block, flowBlocks, gapBlock, headingBlock, paragraphBlock } from "./blocks.ts";
import type { Lettering } from "./lettering.ts";
import { circleMark, lineMark, paper, textMark } from "./marks.ts";
import { CONTENT, CONTENT_WIDTH_MM, type SheetBody } from "./page-frame.ts";
import { onView, type View } from "./plan-picture.ts";
import type { Mark, PaperPoint } from "./types.ts";

/** Radius of the ring around a note's number, and how far its middle stands from the pin, mm. */
const RING_MM = 2.4;
const LEADER_MM = 7;
/** Ways from a pin to its ring, the first that is free; two rings never lie on each other. */
const WAYS = [45, 135, -45, -135, 90, -90].map((degrees) => (degrees * Math.PI) / 180);

/** The number of each note of a view in a ring, with a leader to its pin; the words stand on the page of notes. */
export function noteMarks(project: Project, view: Note["view"], on: View): readonly Mark[] {
  const rings: PaperPoint[] = [];
  return project.notes.flatMap((note, i): readonly Mark[] => {
    const place = note.view === view ? pinPlace(project, note) : undefined;
    if (place === undefined) return [];
    const pin = onView(on, paper(place.x, place.up));
    const ring = freeRing(pin, rings);
    rings.push(ring);
    const away = Math.hypot(ring.x - pin.x, ring.y - pin.y);
    const edge = paper(
      ring.x + ((pin.x - ring.x) * RING_MM) / away,
      ring.y + ((pin.y - ring.y) * RING_MM) / away,
    );
    return [
      lineMark([pin, edge], "thin", "notes"),
      circleMark(pin, 0.5, "outline", "notes"),
      circleMark(ring, RING_MM, "thin", "notes"),
      textMark(paper(ring.x, ring.y - 0.9), `${i + 1}`, { anchor: "middle", layer: "notes" }),
    ];
  });
}

function freeRing(pin: PaperPoint, taken: readonly PaperPoint[]): PaperPoint {
  const rings = [1, 2].flatMap((factor) =>
    WAYS.map((way) =>
      paper(pin.x + factor * LEADER_MM * Math.cos(way), pin.y + factor * LEADER_MM * Math.sin(way)),
    ),
  );
  const isFree = (ring: PaperPoint) =>
    taken.every((other) => Math.hypot(other.x - ring.x, other.y - ring.y) > 2 * RING_MM + 0.5);
  return rings.find(isFree) ?? rings[0] ?? pin;
}

/** The words of all notes, numbered as on the general arrangement; no page where there are none. */
export function notesSheets(
  { project }: { readonly project: Project },
  lettering: Lettering,
): readonly SheetBody[] {
  if (project.notes.length === 0) return [];
  const blocks: readonly Block[] = [
    headingBlock("Notes on the drawing"),
    paragraphBlock("Numbered as in the rings of the general arrangement.", CONTENT_WIDTH_MM, lettering, {
      heightMm: 2.5,
    }),
    ...project.notes.flatMap((note, i) => [
      gapBlock(2.5),
      paragraphBlock(`${i + 1}: ${placeWords(project, note)}`, CONTENT_WIDTH_MM, lettering, { face: "bold" }),
      ...note.text
        .split("\n")
        .map((line) => paragraphBlock(line.trim() === "" ? "…" : line, CONTENT_WIDTH_MM, lettering)),
    ]),
  ];
  return flowBlocks(blocks, CONTENT).map((marks) => ({
    title: "Notes",
    documentType: "notes",
    scale: "none",
    marks,
  }));
}

function placeWords(project: Project, note: Note): string {
  const place = pinPlace(project, note);
  const view = note.view === "plan" ? "Plan" : "Side view";
  if (place === undefined) return `${view}, its node is gone`;
  return `${view}, x ${formatMm(place.x)}, ${note.view === "plan" ? "y" : "z"} ${formatMm(place.up)}`;
}
