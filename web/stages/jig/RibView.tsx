import { type FlatPoint, formatAngle, formatMm, formatNumber } from "../../../core/foundation/index.ts";
import type { Rib } from "../../../core/jig/index.ts";
import { ScrollAcross, useSize } from "../../controls/index.ts";
import { boundsOf, fitScale, flatSpot, pathOf, type Scale, type Spot } from "../../drawings/index.ts";

/** One rib as it is cut: its outline at the station face, and its heights at both faces. */
export function RibView({ rib, ribs }: { readonly rib: Rib; readonly ribs: readonly Rib[] }) {
  const twins = ribs
    .filter((other) => other.sameAs === rib.sameAs && other.id !== rib.id)
    .map(({ id }) => id);
  return (
    <section aria-label={`Rib ${rib.id}`} data-testid="rib-view" data-rib={rib.id}>
      <header className="drawing-heading">
        <h2>
          <span className="code">{rib.id}</span> {`${rib.runs} at ${formatMm(rib.atMm)} mm`}
        </h2>
        <ul className="facts">
          <li>{`station line on its ${rib.stationFace} face`}</li>
          <li>
            {rib.cut === "square"
              ? "cut square"
              : `bevel its top as listed: square it would stand ${formatMm(rib.mostProudMm)} mm proud`}
          </li>
          {rib.overBentMm === undefined ? null : (
            <li>{`over-bent: ${formatMm(Math.abs(rib.overBentMm))} mm ${rib.overBentMm < 0 ? "lower" : "higher"} than drawn where it changes most`}</li>
          )}
          {rib.straightTop ? <li>straight top: no template needed</li> : null}
          {makingFacts(rib).map((fact) => (
            <li key={fact}>{fact}</li>
          ))}
          {twins.length > 0 ? <li>{`same as ${twins.join(", ")}`}</li> : null}
        </ul>
      </header>
      <RibDrawing rib={rib} />
      <HeightTable rib={rib} />
    </section>
  );
}

/** What is cut out of a rib and what it is made of, a few words each. */
function makingFacts({ laps, notches, reliefs, holesMm, tabs, pieces, splices }: Rib): readonly string[] {
  const counted = (count: number, word: string) => `${count} ${word}${count === 1 ? "" : "s"}`;
  const [lap] = laps;
  const [splice] = splices;
  return [
    ...(lap ? [`${counted(laps.length, "slot")} from ${lap.from === "top" ? "above" : "below"}`] : []),
    ...(notches.length > 0 ? [`open for ${notches.map(({ fencePartId }) => fencePartId).join(", ")}`] : []),
    ...(reliefs.length > 0 ? [`${counted(reliefs.length, "hollow")} under joints: tape its top`] : []),
    ...(reliefs.some(({ runs }) => runs === "along")
      ? ["a joint runs along in it: tape its whole top there, the land between the hollows first"]
      : []),
    ...(holesMm.length > 0 ? [counted(holesMm.length, "hole")] : []),
    ...(tabs.length > 0 ? [counted(tabs.length, "tab")] : []),
    ...(splice
      ? [
          `${pieces.map(({ id }) => id).join(", ")} joined by ${splice.way === "plate" ? "plates" : "dovetails"}`,
        ]
      : []),
  ];
}

function RibDrawing({ rib }: { readonly rib: Rib }) {
  const { ref, widthPx } = useSize<HTMLDivElement>();
  const bounds = boundsOf(rib.outlineMm.map(flatSpot));
  return (
    <div ref={ref} className="part-drawing">
      {bounds && widthPx > 0 ? (
        <RibPicture rib={rib} scale={fitScale(bounds, { widthPx, heightPx: 260, marginPx: 40 })} />
      ) : null}
    </div>
  );
}

/** Least distance between two heights that are written on the drawing. */
const LEAST_PX = 46;

function RibPicture({ rib, scale }: { readonly rib: Rib; readonly scale: Scale }) {
  const [, base] = scale.toPx([0, 0]);
  const marks = spread(rib, scale);
  const loops = [rib.outlineMm, ...rib.holesMm]
    .map((loop) => pathOf(loop.map(flatSpot), scale, "closed"))
    .join("");
  return (
    <svg width={scale.widthPx} height={scale.heightPx} role="img" aria-label={`Outline of rib ${rib.id}`}>
      <path className="rib-face" fillRule="evenodd" d={loops} />
      <g className="stations">
        {marks.map(({ atMm, stationFaceMm }) => {
          const [x, y] = scale.toPx([atMm, stationFaceMm]);
          return (
            <g key={atMm}>
              <line x1={x} x2={x} y1={base} y2={y} />
              <text className="height-number" x={x} y={y - 8} textAnchor="middle">
                {formatMm(stationFaceMm)}
              </text>
              <text x={x} y={base + 18} textAnchor="middle">
                {formatNumber(atMm, 0)}
              </text>
            </g>
          );
        })}
      </g>
      <path className="outline" d={loops} />
      {rib.splices.map(({ atMm, plate, tailMm }) => (
        <g key={atMm}>
          <path className="outline" d={pathOf(spliceLine(rib, atMm, tailMm ?? []), scale, "open")} />
          {plate ? (
            <path className="derived" d={pathOf(plate.outlineMm.map(flatSpot), scale, "closed")} />
          ) : null}
        </g>
      ))}
    </svg>
  );
}

/** From foot to top through the splice. */
function spliceLine(rib: Rib, atMm: number, tailMm: readonly FlatPoint[]): readonly Spot[] {
  const ends = rib.pieces.flatMap(({ outlineMm }) => outlineMm.filter(({ u }) => u === atMm));
  const heights = ends.map(({ v }) => v);
  return [[atMm, Math.min(...heights)], ...tailMm.map(flatSpot), [atMm, Math.max(...heights)]];
}

/** The heights that have room on the drawing, from the first on. */
function spread(rib: Rib, scale: Scale): Rib["heights"] {
  let lastPx = Number.NEGATIVE_INFINITY;
  return rib.heights.filter(({ atMm }) => {
    const [x] = scale.toPx([atMm, 0]);
    if (x - lastPx < LEAST_PX) return false;
    lastPx = x;
    return true;
  });
}

function HeightTable({ rib }: { readonly rib: Rib }) {
  return (
    <ScrollAcross label={`Heights of rib ${rib.id}`}>
      <table className="figures" data-testid="rib-heights">
        <thead>
          <tr>
            <th scope="col" className="figure">
              {rib.runs === "across" ? "y, mm" : "x, mm"}
            </th>
            <th scope="col" className="figure">{`height on the ${rib.stationFace} face, mm`}</th>
            <th scope="col" className="figure">
              on the other face, mm
            </th>
            <th scope="col" className="figure">
              bevel
            </th>
            <th scope="col">carries</th>
          </tr>
        </thead>
        <tbody>
          {rib.heights.map((height) => (
            <tr key={`${height.atMm}/${height.partId}`}>
              <td className="figure">{formatMm(height.atMm)}</td>
              <td className="figure">{formatMm(height.stationFaceMm)}</td>
              <td className="figure">{formatMm(height.farFaceMm)}</td>
              <td className="figure">{formatAngle(height.bevelRad)}</td>
              <td className="code">{height.partId}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollAcross>
  );
}
