import type { Rib, RibSet } from "../../../core/jig/index.ts";
import { useSize } from "../../controls/index.ts";
import { boundsOf, fitScale, flatSpot, pathOf, type Scale, type Spot } from "../../drawings/index.ts";
import { useView } from "../../stores/index.ts";

/** The jig from its left side, the front to the left: board, ribs across on edge, ribs along as they are cut. */
export function JigSide({ set, chosenId }: { readonly set: RibSet; readonly chosenId: string }) {
  const { ref, widthPx } = useSize<HTMLDivElement>();
  const shapes = set.ribs.map((rib) => ({ rib, loops: sideOf(rib) }));
  const [one, other] = set.baseboard.corners;
  const board: readonly Spot[] = [
    [one.x, -set.baseboard.thicknessMm],
    [other.x, -set.baseboard.thicknessMm],
    [other.x, 0],
    [one.x, 0],
  ];
  const bounds = boundsOf([...board, ...shapes.flatMap(({ loops }) => loops.flat())]);
  return (
    <section aria-label="Jig from the side">
      <h2>From the side</h2>
      <div ref={ref} className="part-drawing">
        {bounds && widthPx > 0 ? (
          <Side
            board={board}
            shapes={shapes}
            chosenId={chosenId}
            scale={fitScale(bounds, { widthPx, heightPx: 200, marginPx: 40 })}
          />
        ) : null}
      </div>
    </section>
  );
}

interface SideProps {
  readonly board: readonly Spot[];
  readonly shapes: readonly { readonly rib: Rib; readonly loops: readonly (readonly Spot[])[] }[];
  readonly chosenId: string;
  readonly scale: Scale;
}

function Side({ board, shapes, chosenId, scale }: SideProps) {
  const select = useView((view) => view.select);
  return (
    <svg width={scale.widthPx} height={scale.heightPx} aria-label="Jig from the side" data-testid="jig-side">
      <path className="board-edge" d={pathOf(board, scale, "closed")} />
      {shapes.map(({ rib, loops }) => (
        // biome-ignore lint/a11y/noStaticElementInteractions: the same choice is in the cutting list for keys
        <g
          key={rib.id}
          className="rib-mark"
          data-chosen={rib.id === chosenId}
          onClick={() => select({ kind: "rib", ribId: rib.id })}
        >
          <title>{rib.name}</title>
          <path
            className={rib.runs === "across" ? "rib-station rib-face" : "derived rib-face"}
            d={loops.map((loop) => pathOf(loop, scale, "closed")).join("")}
            fillRule="evenodd"
          />
        </g>
      ))}
    </svg>
  );
}

/** A rib along shows its outline, one across its board on edge. */
function sideOf(rib: Rib): readonly (readonly Spot[])[] {
  if (rib.runs === "along") return [rib.outlineMm, ...rib.holesMm].map((loop) => loop.map(flatSpot));
  const heights = rib.outlineMm.map(({ v }) => v);
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  const far = rib.atMm + (rib.stationFace === "front" ? rib.thicknessMm : -rib.thicknessMm);
  return [
    [
      [rib.atMm, low],
      [far, low],
      [far, high],
      [rib.atMm, high],
    ],
  ];
}
