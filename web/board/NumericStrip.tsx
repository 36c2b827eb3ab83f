import { type KeyboardEvent, type RefObject, useRef, useState } from "react";
import { distance2, formatNumber, toDegrees, toRadians, type Vec2 } from "../../core/foundation/index.ts";
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
 * Numbers for the next node: length and direction from the last node, and its coordinates. Empty fields show where the
 * pointer is. What is typed holds while the pointer says the rest, and the board shows the result; Enter sets the node
 * down, and with nothing typed finishes the line.
 */
export function NumericStrip({ typing, hear, first, leave }: NumericStripProps) {
  const [texts, setTexts] = useState<Texts>(EMPTY);
  const group = useRef<HTMLFieldSetElement>(null);
  const lengths = useLengths();
  const { spoken } = lengths;
  const hints = hintsOf(typing, lengths);
  const [across, up] = typing.view === "plan" ? ["x", "y"] : ["x", "z"];
  const names = fieldsOf(typing);
  const isWrong = (name: FieldName) =>
    texts[name] !== "" && readerOf(name, lengths)(texts[name]) === undefined;
  useForgetting(typing.from, () => setTexts(EMPTY));

  const type = (next: Texts) => {
    setTexts(next);
    hear({ kind: "typing", typed: typedPlace(next, lengths) });
  };
  const enter = () => {
    const typed = names.filter((name) => texts[name] !== "");
    if (typed.length === 0) return hear({ kind: "finish" });
    if (typed.some(isWrong)) return;
    hear({ kind: "typed", typed: typedPlace(texts, lengths) });
    // The next node is typed as this one was: from the first of its numbers on.
    group.current?.querySelector<HTMLInputElement>(`[data-testid="typed-${typed[0]}"]`)?.focus();
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
    type(EMPTY);
  };
  const labels: Readonly<Record<FieldName, Label>> = {
    length: typing.radius
      ? { word: "radius", explains: `Radius of the circle in ${spoken}` }
      : { word: "length", explains: `Length from the last node in ${spoken}` },
    direction: {
      word: "direction",
      unit: "°",
      explains:
        "Direction from the last node in degrees; 0 is rearward, 90 is to the right in plan and up in side view",
    },
    first: { word: across ?? "x", explains: `${across} of the next node in ${spoken}` },
    second: { word: up ?? "y", explains: `${up} of the next node in ${spoken}` },
  };
  return (
    <fieldset ref={group} className="numeric-strip" data-testid="numeric-strip">
      <legend className="visually-hidden">
        Numbers for the next node. What is typed holds, the pointer says the rest; Enter sets it down.
      </legend>
      {names.map((name, index) => (
        <label key={name} className="strip-field" data-typed={texts[name] === "" ? undefined : ""}>
          <span>{labels[name].word}</span>
          <input
            ref={index === 0 ? first : undefined}
            type="text"
            inputMode="decimal"
            autoComplete="off"
            className="number"
            aria-label={labels[name].explains}
            aria-invalid={isWrong(name)}
            placeholder={hints[name]}
            value={texts[name]}
            data-testid={`typed-${name}`}
            onChange={(event) => type({ ...texts, [name]: event.currentTarget.value })}
            onKeyDown={onKeyDown}
          />
          {labels[name].unit ? <span className="unit">{labels[name].unit}</span> : null}
        </label>
      ))}
    </fieldset>
  );
}

interface Label {
  readonly word: string;
  readonly unit?: string;
  readonly explains: string;
}

/** In the order of the Tab key: of a segment its length and direction, then where it ends. */
function fieldsOf({ from, radius }: NonNullable<Sight["typing"]>): readonly FieldName[] {
  if (radius) return ["length"];
  return from ? ["length", "direction", "first", "second"] : ["first", "second"];
}

/** Forgets what is typed as soon as the node that it counts from is another. */
function useForgetting(from: Vec2 | undefined, forget: () => void): void {
  const [typedFrom, setTypedFrom] = useState(from);
  if (typedFrom === from) return;
  setTypedFrom(from);
  forget();
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
