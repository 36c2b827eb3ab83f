import type { LookState } from "./stage-of-look.ts";

interface LookSlidersProps {
  readonly bend: number;
  readonly onBend: (share: number) => void;
  readonly apart: number;
  readonly onApart: (share: number) => void;
  /** Codes of what is chosen. */
  readonly chosen: string | undefined;
  readonly bends: LookState["bends"];
  readonly onBends: (bends: LookState["bends"]) => void;
}

/** How far the sheets are bent, and how far the parts stand apart. */
export function LookSliders(props: LookSlidersProps) {
  const { bend, onBend, apart, onApart, chosen, bends, onBends } = props;
  return (
    <div className="look-sliders">
      <ShareSlider
        label="Folded"
        testId="look-bend"
        share={bend}
        says={bend === 1 ? "folded" : bend === 0 ? "laid flat" : `${percent(bend)} of the bend`}
        onChange={onBend}
      />
      <ShareSlider
        label="Apart"
        testId="look-apart"
        share={apart}
        says={apart === 0 ? "together" : `${percent(apart)} apart`}
        onChange={onApart}
      />
      <label className="look-only">
        <input
          type="checkbox"
          checked={bends === "chosen"}
          onChange={(event) => onBends(event.currentTarget.checked ? "chosen" : "all")}
        />
        Lay only what is chosen flat{chosen ? `: ${chosen}` : ""}
      </label>
      <p className="note">
        Bare foam, without skins. A sheet keeps its size while it is bent about its rulings; its middle one
        stays in place. Wings of plates bend with the sheets.
      </p>
    </div>
  );
}

const percent = (share: number): string => `${Math.round(share * 100)} %`;

interface ShareSliderProps {
  readonly label: string;
  readonly testId: string;
  readonly share: number;
  readonly says: string;
  readonly onChange: (share: number) => void;
}

function ShareSlider({ label, testId, share, says, onChange }: ShareSliderProps) {
  return (
    <label className="look-slider">
      <span>{label}</span>
      <input
        type="range"
        min={0}
        max={100}
        step={1}
        value={Math.round(share * 100)}
        aria-valuetext={says}
        data-testid={testId}
        onChange={(event) => onChange(event.currentTarget.valueAsNumber / 100)}
      />
      <output className="pencil">{says}</output>
    </label>
  );
}
