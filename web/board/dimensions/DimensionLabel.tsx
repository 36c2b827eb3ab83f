import { type PointerEvent, useRef, useState } from "react";
import { useLengths } from "../../controls/index.ts";
import type { Dimension } from "../../tools/index.ts";
import type { Box } from "../viewport.ts";
import { DimensionField } from "./DimensionField.tsx";
import { wordDimension } from "./word-dimension.ts";

interface DimensionLabelProps {
  readonly dimension: Dimension;
  readonly box: Box;
}

/** The number of a dimension: a button where it can be changed, and over it a field while it is. */
export function DimensionLabel({ dimension, box }: DimensionLabelProps) {
  const [isOpen, setOpen] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  const lengths = useLengths();
  const place = { left: box.leftPx, top: box.topPx, width: box.widthPx, height: box.heightPx };
  const text = wordDimension(dimension, lengths);
  const testId = `dimension-${dimension.id.replace("/", "-")}`;
  const close = () => {
    setOpen(false);
    requestAnimationFrame(() => button.current?.focus());
  };
  if (isOpen) return <DimensionField {...{ dimension, place, testId, close }} leave={() => setOpen(false)} />;
  const what = `${dimension.word}, ${lengths.show(dimension.valueMm)} ${lengths.spoken}`;
  return dimension.edit ? (
    <button
      ref={button}
      type="button"
      className="dimension"
      style={place}
      title={`${dimension.word}: click to type it. ${dimension.moves ?? ""}`}
      aria-label={`${text} ${lengths.spoken}, ${dimension.word}: type it`}
      data-testid={testId}
      onPointerDown={keepFromBoard}
      onClick={() => setOpen(true)}
    >
      {text}
    </button>
  ) : (
    <span className="dimension" style={place} title={what} data-testid={testId}>
      {text}
    </span>
  );
}

const keepFromBoard = (event: PointerEvent): void => event.stopPropagation();
