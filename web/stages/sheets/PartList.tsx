import type { Design } from "../../../core/design.ts";
import type { Part } from "../../../core/patterns/index.ts";
import type { PlatePart } from "../../../core/plates/index.ts";
import { hatchOfItem, heightOf, loopsBounds, widthOf } from "../../drawings/index.ts";
import { LookSwitch } from "../../look3d/index.ts";
import { useView } from "../../stores/index.ts";
import { ShelfPart } from "../draw/ShelfPart.tsx";
import { ShelfPlate } from "../draw/ShelfPlate.tsx";
import { PartSign } from "./VerdictSign.tsx";

const PICTURE_PX = { width: 132, height: 52 };

/** All parts by code, each with its small picture and its bending verdict. */
export function PartList({ design, chosenId }: { readonly design: Design; readonly chosenId: string }) {
  const select = useView((view) => view.select);
  return (
    <nav className="side-list" aria-label="Parts">
      <LookSwitch />
      <ul>
        {design.parts.map((part) => (
          <li key={part.id}>
            <button
              type="button"
              className="plain"
              aria-current={part.id === chosenId}
              data-testid="part-row"
              data-part={part.id}
              onClick={() => select({ kind: "part", partId: part.id })}
            >
              <span className="part-picture">
                <ShelfPart
                  part={part}
                  hatch={hatchOfItem(design.project, part.itemId)}
                  pixelsPerMm={pictureScale(part)}
                />
              </span>
              <span className="code">{part.id}</span>
              <span className="part-name">{part.name}</span>
              <PartSign part={part} />
            </button>
          </li>
        ))}
        {design.plates.flatMap((plate) =>
          plate.parts.map((part) => (
            <li key={part.id}>
              <button
                type="button"
                className="plain"
                aria-current={part.id === chosenId}
                data-testid="part-row"
                data-part={part.id}
                onClick={() => select({ kind: "part", partId: part.id })}
              >
                <span className="part-picture">
                  <ShelfPlate part={part} pixelsPerMm={pictureScale(part)} />
                </span>
                <span className="code">{part.id}</span>
                <span className="part-name">{plate.name}</span>
                <span className="verdict">
                  {part.bends.length === 1 ? "1 bend" : `${part.bends.length} bends`}
                </span>
              </button>
            </li>
          )),
        )}
      </ul>
    </nav>
  );
}

function pictureScale(part: Pick<Part, "loops"> | PlatePart): number {
  const bounds = loopsBounds(part.loops);
  if (bounds === undefined) return 0.05;
  return Math.min(
    PICTURE_PX.width / Math.max(1, widthOf(bounds)),
    PICTURE_PX.height / Math.max(1, heightOf(bounds)),
  );
}
