import { useMemo } from "react";
import type { Part, PartOutline } from "../../../core/patterns/index.ts";
import type { FoldedPlate, PlatePart } from "../../../core/plates/index.ts";
import type { Project } from "../../../core/project/index.ts";
import { useLengths, useSize } from "../../controls/index.ts";
import { hatchOfItem, heightOf, loopsBounds, widthOf } from "../../drawings/index.ts";
import type { Lengths } from "../../lengths/index.ts";
import { Look, LookSwitch } from "../../look3d/index.ts";
import { useDesign, useView } from "../../stores/index.ts";
import { ShelfPart } from "./ShelfPart.tsx";
import { ShelfPlate } from "./ShelfPlate.tsx";

/** Room left and right of the largest part. */
const SIDE_PX = 40;

/** The flat parts, all at one scale, or the tray in 3D; both reshape while the drawing is dragged. */
export function Shelf() {
  const { ref, widthPx } = useSize<HTMLElement>();
  const design = useDesign((state) => state.design);
  const partsShown = useView((view) => view.partsShown);
  const outlines = useDesign((state) => state.outlinesAhead);
  const parts = useMemo(() => withOutlines(design?.parts ?? [], outlines), [design?.parts, outlines]);
  if (partsShown === "space")
    return (
      <section ref={ref} className="shelf looking" aria-label="The tray in 3D" data-testid="shelf">
        <header>
          <LookSwitch />
        </header>
        <Look />
      </section>
    );
  return (
    <section ref={ref} className="shelf" aria-label="Flat parts" data-testid="shelf">
      <header>
        <LookSwitch />
        {parts.length > 0 ? <span className="pencil">all at one scale</span> : null}
      </header>
      {design && parts.length === 0 ? (
        <p className="empty">
          Parts appear here, laid flat, as soon as a section is drawn and has a profile.
        </p>
      ) : null}
      {design && widthPx > 0 ? (
        <Parts parts={parts} plates={design.plates} project={design.project} roomPx={widthPx - SIDE_PX} />
      ) : null}
    </section>
  );
}

/** The parts of the last design, of which those that are being edited have their outlines of now. */
function withOutlines(parts: readonly Part[], outlines: readonly PartOutline[]): readonly Part[] {
  if (outlines.length === 0) return parts;
  const loopsOf = new Map(outlines.map(({ id, loops }) => [id, loops]));
  return parts.map((part) => {
    const loops = loopsOf.get(part.id);
    return loops ? { ...part, loops } : part;
  });
}

type Flat = Pick<Part, "loops"> | PlatePart;

interface PartsProps {
  readonly parts: readonly Part[];
  readonly plates: readonly FoldedPlate[];
  readonly project: Project;
  readonly roomPx: number;
}

function Parts({ parts, plates, project, roomPx }: PartsProps) {
  const selection = useView((view) => view.selection);
  const select = useView((view) => view.select);
  const lengths = useLengths();
  const pixelsPerMm = roomPx / longestMm([...parts, ...plates.flatMap((plate) => plate.parts)]);
  return (
    <ul className="shelf-parts">
      {parts.map((part) => (
        <li key={part.id}>
          <button
            type="button"
            className="plain shelf-part"
            aria-pressed={isChosen(part, selection)}
            data-testid="shelf-part"
            data-part={part.id}
            title={`${part.name}: ${part.faceShown} toward you`}
            onClick={() => select({ kind: "part", partId: part.id })}
          >
            <ShelfPart part={part} hatch={hatchOfItem(project, part.itemId)} pixelsPerMm={pixelsPerMm} />
            <span className="shelf-words">
              <span className="code">{part.id}</span>
              <span className="pencil">{sizeOf(part, lengths)}</span>
            </span>
          </button>
        </li>
      ))}
      {plates.flatMap((plate) =>
        plate.parts.map((part) => (
          <li key={part.id}>
            <button
              type="button"
              className="plain shelf-part"
              aria-pressed={isChosen({ id: part.id, itemId: plate.itemId }, selection)}
              data-testid="shelf-plate"
              data-part={part.id}
              title={`${plate.name}: upper face toward you`}
              onClick={() => select({ kind: "part", partId: part.id })}
            >
              <ShelfPlate part={part} pixelsPerMm={pixelsPerMm} />
              <span className="shelf-words">
                <span className="code">{part.id}</span>
                <span className="pencil">{sizeOf(part, lengths)}</span>
              </span>
            </button>
          </li>
        )),
      )}
    </ul>
  );
}

function isChosen(
  part: Pick<Part, "id" | "itemId">,
  selection: ReturnType<typeof useView.getState>["selection"],
): boolean {
  if (selection?.kind === "part") return selection.partId === part.id;
  return selection?.kind === "item" && selection.itemId === part.itemId;
}

function longestMm(parts: readonly Flat[]): number {
  const lengths = parts.map((part) => {
    const bounds = loopsBounds(part.loops);
    return bounds ? widthOf(bounds) : 0;
  });
  return Math.max(1, ...lengths);
}

function sizeOf(part: Flat, { show, unit }: Lengths): string {
  const bounds = loopsBounds(part.loops);
  return bounds ? `${show(widthOf(bounds))} × ${show(heightOf(bounds))} ${unit}` : "";
}
