import { ImageUp } from "lucide-react";
import { formatNumber, roundTo, toDegrees, toRadians } from "../../core/foundation/index.ts";
import { nameOfUnderlay, type Underlay, type UnderlayChanges } from "../../core/project/index.ts";
import { NumberField, Select, TextField, useLengths } from "../controls/index.ts";
import { StandingLine } from "../standing/index.ts";
import { useDocument, useView } from "../stores/index.ts";
import { turnPictureCommands } from "../tools/index.ts";
import { useLaying } from "./laying-store.ts";
import "./underlay.css";

/** A picture under the drawing as numbers: how large it lies, how it is turned, how strongly it shows. */
export function UnderlayPanel({ underlay }: { readonly underlay: Underlay }) {
  const tool = useView((view) => view.tool);
  const told = useLaying((state) => state.told);
  const lengths = useLengths();
  const { dispatch } = useDocument.getState();
  const change = (changes: UnderlayChanges) =>
    dispatch({ kind: "change-underlay", underlayId: underlay.id, changes });
  return (
    <>
      <header>
        <h2>{nameOfUnderlay(underlay)}</h2>
        <button
          type="button"
          className="plain"
          data-testid="delete-chosen"
          onClick={() => remove(underlay.id)}
        >
          Delete
        </button>
      </header>
      <StandingLine thing={{ of: "underlay", underlayId: underlay.id }} name={nameOfUnderlay(underlay)} />
      {told?.underlayId === underlay.id ? (
        <p role="status" data-testid="picture-told">
          {told.words}
        </p>
      ) : null}
      <p className="pencil" data-testid="picture-size">
        {lengths.show(underlay.widthPx * underlay.mmPerPx)} ×{" "}
        {lengths.show(underlay.heightPx * underlay.mmPerPx)} {lengths.unit} as it lies,{" "}
        {formatNumber(underlay.mmPerPx, 3)} mm a pixel. A picture is drawn over; it is never printed.
      </p>
      {tool === "underlay" ? null : (
        <button
          type="button"
          data-testid="take-picture-tool"
          onClick={() => useView.getState().setTool("underlay")}
        >
          <ImageUp aria-hidden />
          Move, scale or level it
        </button>
      )}
      <Fading underlay={underlay} />
      <TextField label="Name" value={underlay.name} mostLetters={60} onChange={(name) => change({ name })} />
      <Select
        label="Under"
        value={underlay.view}
        options={[
          { value: "plan", word: "the plan" },
          { value: "side", word: "the side view" },
        ]}
        onChange={(view) => change({ view: view === "side" ? "side" : "plan" })}
      />
      <NumberField
        label="Turned"
        unit="°"
        value={roundTo(toDegrees(underlay.turnRad), 3)}
        decimals={2}
        note="Counter-clockwise, about its middle"
        onChange={(turnDeg) => turnPictureCommands(underlay, toRadians(turnDeg)).forEach(dispatch)}
      />
      <NumberField
        label="Scale"
        unit="mm a pixel"
        value={underlay.mmPerPx}
        decimals={4}
        note="About its upper left corner; Scale by two points is surer"
        onChange={(mmPerPx) => change({ mmPerPx })}
      />
    </>
  );
}

/** How strongly the picture shows; one pull of the slider is one step back. */
function Fading({ underlay: { id, opacity } }: { readonly underlay: Underlay }) {
  const { dispatchInGesture, endGesture } = useDocument.getState();
  const percent = Math.round(opacity * 100);
  return (
    <div className="field picture-fading">
      <label htmlFor={`fade-${id}`}>Strength</label>
      <span className="entry">
        <input
          id={`fade-${id}`}
          type="range"
          min={5}
          max={100}
          step={5}
          value={percent}
          aria-valuetext={`${percent} percent`}
          data-testid="picture-strength"
          onChange={(event) =>
            dispatchInGesture({
              kind: "change-underlay",
              underlayId: id,
              changes: { opacity: Number(event.currentTarget.value) / 100 },
            })
          }
          onPointerUp={() => endGesture()}
          onKeyUp={() => endGesture()}
          onBlur={() => endGesture()}
        />
        <span className="unit">{percent} %</span>
      </span>
    </div>
  );
}

function remove(underlayId: string): void {
  useDocument.getState().dispatch({ kind: "delete-underlay", underlayId });
  const isGone = useDocument.getState().project.underlays.every(({ id }) => id !== underlayId);
  if (isGone) useView.getState().select(undefined);
}
