import type { Project } from "../../core/project/index.ts";
import { useSize } from "../controls/index.ts";
import { type Bounds, boundsOf, heightOf, type Spot, widthOf } from "../drawings/index.ts";
import type { DrawingView } from "../tools/index.ts";
import { type ComparedLine, comparedLines } from "./compared-lines.ts";

interface ComparisonPictureProps {
  readonly before: Project;
  readonly after: Project;
  readonly beforeName: string;
  readonly afterName: string;
}

/** Plan and side view of two documents over each other: the earlier dashed in pencil, the later in ink. */
export function ComparisonPicture({ before, after, beforeName, afterName }: ComparisonPictureProps) {
  const { ref, widthPx } = useSize<HTMLDivElement>();
  const plan = comparedLines(before, after, "plan");
  const side = comparedLines(before, after, "side");
  const bounds = boundsOfLines([...plan, ...side]);
  const shared =
    bounds && widthPx > 0
      ? { bounds, widthPx, pixelsPerMm: scaleFor([plan, side], bounds, widthPx) }
      : undefined;
  return (
    <div ref={ref} className="compared-pictures">
      <ul className="compared-key" aria-label="How the lines are drawn">
        <KeyLine className="compared-before" name={beforeName} />
        <KeyLine className="compared-after" name={afterName} />
        <KeyLine className="compared-same" name="the same in both" />
      </ul>
      {shared ? (
        <>
          <ComparedView title="Plan, as drawn" view="plan" lines={plan} {...shared} />
          <ComparedView title="Side view" view="side" lines={side} {...shared} />
        </>
      ) : null}
    </div>
  );
}

function KeyLine({ className, name }: { readonly className: string; readonly name: string }) {
  return (
    <li>
      <svg width="40" height="12" aria-hidden="true">
        <path className={className} d="M0 6H40" />
      </svg>
      {name}
    </li>
  );
}

interface ComparedViewProps {
  readonly title: string;
  readonly view: DrawingView;
  readonly lines: readonly ComparedLine[];
  /** Of both views, so that they share one x axis. */
  readonly bounds: Bounds;
  readonly widthPx: number;
  /** Of both views. */
  readonly pixelsPerMm: number;
}

const MARGIN_PX = 20;
/** Both views and the first of the figures are seen together. */
const MOST_HEIGHT_PX = 360;

/** As large as both views, one above the other, go into the width and the height that there is. */
function scaleFor(views: readonly (readonly ComparedLine[])[], bounds: Bounds, widthPx: number): number {
  const heightMm = views.map(boundsOfLines).reduce((sum, own) => sum + (own ? heightOf(own) : 0), 0);
  return Math.min(
    (widthPx - 2 * MARGIN_PX) / Math.max(1, widthOf(bounds)),
    MOST_HEIGHT_PX / Math.max(1, heightMm),
  );
}

const boundsOfLines = (lines: readonly ComparedLine[]): Bounds | undefined =>
  boundsOf(lines.flatMap(({ before, after }) => [...(before ?? []), ...(after ?? [])]));

function ComparedView({ title, view, lines, bounds, widthPx, pixelsPerMm }: ComparedViewProps) {
  const own = boundsOfLines(lines);
  if (!own) return null;
  const leftPx = (widthPx - widthOf(bounds) * pixelsPerMm) / 2;
  const heightPx = heightOf(own) * pixelsPerMm + 2 * MARGIN_PX;
  const toPx = ([x, up]: Spot): Spot => [
    leftPx + (x - bounds.left) * pixelsPerMm,
    MARGIN_PX + (own.top - up) * pixelsPerMm,
  ];
  const changed = lines.filter(({ change }) => change !== "same");
  return (
    <figure>
      <figcaption className="caption">{title}</figcaption>
      <svg
        className="compared"
        width={widthPx}
        height={heightPx}
        role="img"
        aria-label={`${title}: ${wordChanges(changed)}`}
        data-testid={`compared-${view}`}
      >
        {lines.map((line) => (
          <g key={line.key} data-change={line.change}>
            {line.before && line.change !== "same" ? (
              <path className="compared-before" d={pathThrough(line.before.map(toPx))} />
            ) : null}
            {line.after ? (
              <path
                className={line.change === "same" ? "compared-same" : "compared-after"}
                d={pathThrough(line.after.map(toPx))}
              />
            ) : null}
          </g>
        ))}
        {changed.map((line) => (
          <ChangeLabel key={line.key} line={line} toPx={toPx} widthPx={widthPx} />
        ))}
      </svg>
    </figure>
  );
}

const CHANGE_WORDS = { changed: "", added: " added", gone: " gone", same: "" } as const;

const wordChanges = (changed: readonly ComparedLine[]): string =>
  changed.length === 0
    ? "the same in both"
    : changed
        .map(({ name, change }) => `${name}${change === "changed" ? " changed" : CHANGE_WORDS[change]}`)
        .join(", ");

interface ChangeLabelProps {
  readonly line: ComparedLine;
  readonly toPx: (spot: Spot) => Spot;
  readonly widthPx: number;
}

/** The code of what changed, in the middle of it; with a word where it came or went. */
function ChangeLabel({ line, toPx, widthPx }: ChangeLabelProps) {
  const box = boundsOf((line.after ?? line.before ?? []).map(toPx));
  if (!box) return null;
  const x = Math.min(widthPx - MARGIN_PX, Math.max(MARGIN_PX, (box.left + box.right) / 2));
  return (
    <text className="compared-name" x={x} y={(box.bottom + box.top) / 2 + 4} textAnchor="middle">
      {line.name}
      {CHANGE_WORDS[line.change]}
    </text>
  );
}

const pathThrough = (spots: readonly Spot[]): string =>
  spots.map(([x, y], index) => `${index === 0 ? "M" : "L"}${x.toFixed(1)} ${y.toFixed(1)}`).join("");
