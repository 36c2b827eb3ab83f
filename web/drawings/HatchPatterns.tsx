import { HATCH_COUNT } from "./part-hatch.ts";

/** Direction and distance of each hatch: told apart without colour. */
const HATCHES = [
  { turnDeg: 45, apartPx: 6 },
  { turnDeg: -45, apartPx: 6 },
  { turnDeg: 0, apartPx: 5 },
  { turnDeg: 90, apartPx: 5 },
  { turnDeg: 45, apartPx: 10 },
  { turnDeg: -45, apartPx: 10 },
] as const;

/** The hatches of the parts, once on the page, for every picture to use. */
export function HatchPatterns() {
  return (
    <svg className="hatch-patterns" width="0" height="0" aria-hidden="true" focusable="false">
      <defs>
        {HATCHES.slice(0, HATCH_COUNT).map(({ turnDeg, apartPx }, index) => (
          <pattern
            key={`${turnDeg}/${apartPx}`}
            id={`hatch-${index + 1}`}
            width={apartPx}
            height={apartPx}
            patternUnits="userSpaceOnUse"
            patternTransform={`rotate(${turnDeg})`}
          >
            <rect width={apartPx} height={apartPx} fill={`var(--tint-${index + 1})`} opacity="0.35" />
            <line x1="0" y1="0" x2="0" y2={apartPx} stroke={`var(--tint-${index + 1})`} strokeWidth="1.5" />
          </pattern>
        ))}
      </defs>
    </svg>
  );
}
