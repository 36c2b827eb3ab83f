import { type KeyboardEvent, type RefObject, useState } from "react";
import { distance2, formatNumber, toDegrees, toRadians } from "../../core/foundation/index.ts";
import { useLengths } from "../controls/index.ts";
import { type Lengths, readNumber } from "../lengths/index.ts";
import { directionOf, type Sight, type ToolEvent, type TypedPlace } from "../tools/index.ts";

type FieldName = "first" | "second" | "length" | "direction";
type Texts = Readonly<Record<FieldName, string>>;

const EMPTY: Texts = { first: "", second: "", length: "", direction: "" };

interface NumericStripProps {
  readonly typing: NonNullable<Sight["typing"]>;
  readonly hear: (event: ToolEvent) => void;
  /** The first field, so that a digit pressed over the drawing can begin in it. */
  readonly first: RefObject<HTMLInputElement | null>;
  readonly leave: () => void;
}

/**
 * Numbers for the next node: its coordinates, or length and direction from the last node. Empty fields show
 * where the pointer is. Enter sets the node down; with nothing typed it finishes the line.
 */
export function NumericStrip({ typing, hear, first, leave }: NumericStripProps) {
  const [texts, setTexts] = useState<Texts>(EMPTY);
  const lengths = useLengths();
  const { spoken } = lengths;
  const hints = hintsOf(typing, lengths);
  const [across, up] = typing.view === "plan" ? ["x", "y"] : ["x", "z"];
  const isWrong = (name: FieldName) =>
    texts[name] !== "" && readerOf(name, lengths)(texts[name]) === undefined;

  const enter = () => {
    if (Object.values(texts).every((text) => text === "")) return hear({ kind: "finish" });
    if ((["first", "second", "length", "direction"] as const).some(isWrong)) return;
    hear({ kind: "typed", typed: typedPlace(texts, lengths) });
    setTexts(EMPTY);
    first.current?.focus();
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === "Enter") enter();
    else if (event.key === "Escape") leaveOrClear();
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  const leaveOrClear = () => {
    if (Object.values(texts).every((text) => text === "")) leave();
    setTexts(EMPTY);
  };
  const field = (name: FieldName, label: string, unit: string, explains: string) => (
    <label className="strip-field">
      <span>{label}</span>
      <input
        ref={name === (typing.radius ? "length" : "first") ? first : undefined}
        type="text"
        inputMode="decimal"
        autoComplete="off"
        className="number"
        aria-label={explains}
        aria-invalid={isWrong(name)}
        placeholder={hints[name]}
        value={texts[name]}
        data-testid={`typed-${name}`}
        onChange={(event) => setTexts({ ...texts, [name]: event.currentTarget.value })}
        onKeyDown={onKeyDown}
      />
      <span className="unit">{unit}</span>
    </label>
  );
  return (
    <div
      className="numeric-strip"
      role="group"
      aria-label="Numbers for the next node"
      data-testid="numeric-strip"
    >
      {typing.radius ? (
        field("length", "radius", "", `Radius of the circle in ${spoken}`)
      ) : (
        <>
          {field("first", across ?? "x", "", `${across} of the next node in ${spoken}`)}
          {field("second", up ?? "y", "", `${up} of the next node in ${spoken}`)}
        </>
      )}
      {typing.from && !typing.radius ? (
        <>
          <span className="pencil">or</span>
          {field("length", "length", "", `Length from the last node in ${spoken}`)}
          {field("direction", "direction", "°", "Direction from the last node in degrees; 0 is rearward")}
        </>
      ) : null}
    </div>
  );
}

const readerOf = (name: FieldName, { read }: Lengths): ((text: string) => number | undefined) =>
  name === "direction" ? readNumber : read;

function hintsOf({ from, pointer }: NonNullable<Sight["typing"]>, { show }: Lengths): Texts {
  if (!pointer) return EMPTY;
  return {
    first: show(pointer[0]),
    second: show(pointer[1]),
    length: from ? show(distance2(from, pointer)) : "",
    direction: from ? formatNumber(toDegrees(directionOf(from, pointer)), 1) : "",
  };
}

function typedPlace(texts: Texts, lengths: Lengths): TypedPlace {
  const [first, second, lengthMm, direction] = (["first", "second", "length", "direction"] as const).map(
    (name) => (texts[name] === "" ? undefined : readerOf(name, lengths)(texts[name])),
  );
  return {
    ...(first === undefined ? {} : { first }),
    ...(second === undefined ? {} : { second }),
    ...(lengthMm === undefined ? {} : { lengthMm }),
    ...(direction === undefined ? {} : { directionRad: toRadians(direction) }),
  };
}
