import { Slash, Spline } from "lucide-react";
import { useDocument } from "../../stores/index.ts";
import { type SegmentGrip, segmentCommand } from "../../tools/index.ts";
import { type Box, contains, type Transform, toPx } from "../viewport.ts";

interface SegmentSwitchProps {
  readonly grip: SegmentGrip;
  readonly transform: Transform;
  readonly box: Box;
}

/** Inside the outline, clear of the edge and of its dimension. */
const INSIDE_PX = 30;

const WAYS = [
  { next: "line", word: "straight", Icon: Slash },
  { next: "curve", word: "curved", Icon: Spline },
] as const;

/** At the middle of the chosen edge: whether it is straight or curved. */
export function SegmentSwitch({ grip, transform, box }: SegmentSwitchProps) {
  const [x, y] = toPx(transform, grip.at);
  if (!contains(box, [x, y])) return null;
  const out = [grip.outward[0] * transform.pxPerMmAcross, -grip.outward[1] * transform.pxPerMmUp] as const;
  const length = Math.hypot(...out) || 1;
  const place = { left: x - (out[0] / length) * INSIDE_PX, top: y - (out[1] / length) * INSIDE_PX };
  const choose = (next: "line" | "curve") => {
    if (next !== grip.kind) useDocument.getState().dispatch(segmentCommand(grip, next));
  };
  return (
    <div className="segment-switch" style={place} role="group" aria-label="The chosen edge is">
      {WAYS.map(({ next, word, Icon }) => (
        <button
          key={next}
          type="button"
          aria-pressed={grip.kind === next}
          title={`Make the edge ${word} (C)`}
          data-testid={`edge-${word}`}
          onPointerDown={(event) => event.stopPropagation()}
          onClick={() => choose(next)}
        >
          <Icon aria-hidden />
          <span className="visually-hidden">{word}</span>
        </button>
      ))}
    </div>
  );
}
