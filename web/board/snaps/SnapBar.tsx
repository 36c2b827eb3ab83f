import { ChevronDown } from "lucide-react";
import { memo, useId, useRef } from "react";
import { useLengths } from "../../controls/index.ts";
import { aidDeeds, hintOf } from "../../deeds/index.ts";
import { useView } from "../../stores/index.ts";
import { SNAP_WORDS, type SnapKind, SnapKinds } from "../../tools/index.ts";
import { signShape } from "./sign-strokes.ts";
import "./snap-bar.css";

/** Snaps on or off as a whole (Q), and a card in which each kind is switched and the width of the grid is typed. */
export const SnapBar = memo(function SnapBar() {
  const snaps = useView((view) => view.snaps);
  const cardId = useId();
  const card = useRef<HTMLFieldSetElement>(null);
  const count = SnapKinds.filter((kind) => snaps[kind]).length;
  const word = !snaps.isOn
    ? "off"
    : count === SnapKinds.length
      ? "all on"
      : `${count} of ${SnapKinds.length}`;
  return (
    <div className="snap-bar">
      <button
        type="button"
        className="plain"
        aria-pressed={snaps.isOn}
        title={hintOf(aidDeeds.snaps)}
        data-testid="snaps-on"
        onClick={aidDeeds.snaps.run}
      >
        <SignPicture kind="crossings" />
        Snaps
      </button>
      <button
        type="button"
        className="plain"
        popoverTarget={cardId}
        title="Choose what places snap to"
        aria-label={`What places snap to: ${word}`}
        data-testid="snaps-which"
        onClick={(event) => placeUnder(card.current, event.currentTarget)}
      >
        {word}
        <ChevronDown aria-hidden />
      </button>
      <fieldset
        id={cardId}
        ref={card}
        popover="auto"
        className="snap-card"
        data-testid="snap-card"
        onToggle={(event) => event.currentTarget.querySelector("input")?.focus()}
      >
        <legend className="visually-hidden">What places snap to</legend>
        {SnapKinds.map((kind) => (
          <SnapSwitch key={kind} kind={kind} />
        ))}
        <GridWidth />
        <p className="pencil">Q turns all of them off and on. Alt holds them off while it is down.</p>
      </fieldset>
    </div>
  );
});

function SnapSwitch({ kind }: { readonly kind: SnapKind }) {
  const isOn = useView((view) => view.snaps[kind]);
  const setSnaps = useView((view) => view.setSnaps);
  const { word, explains } = SNAP_WORDS[kind];
  return (
    <label className="snap-switch">
      <input
        type="checkbox"
        checked={isOn}
        data-testid={`snap-${kind}`}
        onChange={(event) => setSnaps({ [kind]: event.currentTarget.checked, isOn: true })}
      />
      <SignPicture kind={kind} />
      <span>{word}</span>
      <span className="pencil">{explains}</span>
    </label>
  );
}

function GridWidth() {
  const gridMm = useView((view) => view.snaps.gridMm);
  const setSnaps = useView((view) => view.setSnaps);
  const { show, read, unit } = useLengths();
  return (
    <label className="snap-grid-width">
      <span>width of the grid</span>
      <input
        key={gridMm}
        type="text"
        inputMode="decimal"
        className="number"
        defaultValue={show(gridMm)}
        data-testid="snap-grid-width"
        onBlur={(event) => {
          const typed = read(event.currentTarget.value);
          if (typed !== undefined && typed >= LEAST_GRID_MM && typed <= MOST_GRID_MM)
            setSnaps({ gridMm: typed });
          else event.currentTarget.value = show(gridMm);
        }}
        onKeyDown={(event) => {
          if (event.key === "Enter") event.currentTarget.blur();
        }}
      />
      <span className="unit">{unit}</span>
    </label>
  );
}

const LEAST_GRID_MM = 0.1;
const MOST_GRID_MM = 1000;

/** The sign as the board draws it, on a line that leans. */
function SignPicture({ kind }: { readonly kind: SnapKind }) {
  const { strokes, ringsPx } = signShape(kind, [
    [0.87, -0.5],
    kind === "crossings" ? [0.5, 0.87] : [-0.5, -0.87],
  ]);
  return (
    <svg viewBox="-16 -16 32 32" className="sign" aria-hidden>
      {strokes.map((points) => (
        <polyline key={points.join("/")} points={points.map((point) => point.join(",")).join(" ")} />
      ))}
      {ringsPx.map((radius) => (
        <circle key={radius} r={radius} />
      ))}
    </svg>
  );
}

const GAP_PX = 4;
const EDGE_PX = 8;

/** The card opens under its button and stays on the page. */
function placeUnder(card: HTMLElement | null, button: HTMLElement): void {
  if (!card) return;
  const { bottom, right } = button.getBoundingClientRect();
  card.style.top = `${bottom + GAP_PX}px`;
  card.style.right = `${Math.max(EDGE_PX, document.documentElement.clientWidth - right)}px`;
}
