import { useRef } from "react";

interface SplitterProps {
  readonly label: string;
  readonly runs: "upright" | "level";
  readonly sizePx: number;
  readonly leastPx: number;
  readonly mostPx: number;
  /** Whether pulling rightward or downward makes the panel larger. */
  readonly grows: "forward" | "backward";
  readonly onChange: (sizePx: number) => void;
}

const KEY_STEP_PX = 24;

/** The edge of a panel, to be pulled with the pointer or moved with the arrow keys. */
export function Splitter({ label, runs, sizePx, leastPx, mostPx, grows, onChange }: SplitterProps) {
  const pull = useRef<{ readonly fromPx: number; readonly sizePx: number }>(undefined);
  const sign = grows === "forward" ? 1 : -1;
  const set = (wantedPx: number) => onChange(Math.min(mostPx, Math.max(leastPx, wantedPx)));
  return (
    <div
      className={`splitter ${runs}`}
      role="separator"
      aria-label={label}
      aria-orientation={runs === "upright" ? "vertical" : "horizontal"}
      aria-valuenow={Math.round(sizePx)}
      aria-valuemin={leastPx}
      aria-valuemax={mostPx}
      tabIndex={0}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        pull.current = { fromPx: runs === "upright" ? event.clientX : event.clientY, sizePx };
      }}
      onPointerMove={(event) => {
        if (!pull.current) return;
        const herePx = runs === "upright" ? event.clientX : event.clientY;
        set(pull.current.sizePx + sign * (herePx - pull.current.fromPx));
      }}
      onPointerUp={() => {
        pull.current = undefined;
      }}
      onPointerCancel={() => {
        pull.current = undefined;
      }}
      onKeyDown={(event) => {
        const forward = runs === "upright" ? "ArrowRight" : "ArrowDown";
        const backward = runs === "upright" ? "ArrowLeft" : "ArrowUp";
        if (event.key === forward) set(sizePx + sign * KEY_STEP_PX);
        if (event.key === backward) set(sizePx - sign * KEY_STEP_PX);
      }}
    />
  );
}
