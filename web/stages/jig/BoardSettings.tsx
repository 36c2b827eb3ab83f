import { formatNumber } from "../../../core/foundation/index.ts";
import type { Baseboard } from "../../../core/jig/index.ts";
import { type Making, makingOf, type TypedMaking } from "../../../core/project/index.ts";
import { NumberField } from "../../controls/index.ts";
import { useDesign } from "../../stores/index.ts";
import { SettingsGroup, useSettings } from "../settings/index.ts";

/** The sheets of the baseboard, and how high it was measured. */
export function BoardSettings() {
  const { project, change } = useSettings();
  const baseboard = useDesign((state) => state.design?.jig.baseboard);
  const { jig } = project;
  const making = makingOf(project);
  const set = (changes: TypedMaking) => change({ jig: { ...jig, making: { ...jig.making, ...changes } } });
  const letRibSet = () => {
    const { baseZMm: _, ...rest } = jig.making ?? {};
    change({ jig: { ...jig, making: rest } });
  };
  const field = (key: "baseThicknessMm" | "baseLengthMm" | "baseWidthMm", label: string) => (
    <NumberField
      label={label}
      unit="mm"
      value={making[key]}
      setting={`jig.making.${key}`}
      onChange={(value) => set({ [key]: value })}
    />
  );
  const heights = making.boardHeights;
  const points = heights.length > 0 ? heights : baseboard === undefined ? [] : gridOver(baseboard);
  const measure = (index: number, heightMm: number) =>
    set({ boardHeights: points.map((point, i) => (i === index ? { ...point, heightMm } : point)) });
  return (
    <SettingsGroup title="Baseboard" help="baseboard">
      {field("baseThicknessMm", "Thickness")}
      {field("baseLengthMm", "Length of a sheet")}
      {field("baseWidthMm", "Width of a sheet")}
      <NumberField
        label="Upper face at z"
        unit="mm"
        value={making.baseZMm ?? baseboard?.levelZMm ?? 0}
        note={
          making.baseZMm === undefined
            ? "Over the ground of the drawing. The lowest rib sets it until you type it."
            : "Over the ground of the drawing, as you typed it."
        }
        setting="jig.making.baseZMm"
        onChange={(baseZMm) => set({ baseZMm })}
      />
      {making.baseZMm === undefined ? null : (
        <button type="button" onClick={letRibSet}>
          Let the lowest rib set it
        </button>
      )}
      <details data-testid="board-heights">
        <summary>
          {heights.length > 0 ? "The board as measured" : "The board is not flat? Measure it"}
        </summary>
        <p className="note">
          Pull a string level over the board and measure down, or use a level with light. Type how much higher
          than its level the board lies at each point; lower is negative. The foot of every rib follows it.
        </p>
        {points.map(({ x, y, heightMm }, i) => (
          <NumberField
            key={`${x}/${y}`}
            label={`x ${formatNumber(x, 0)}, y ${formatNumber(y, 0)}`}
            unit="mm"
            value={heightMm}
            setting={`jig.making.boardHeights.${i}`}
            onChange={(value) => measure(i, value)}
          />
        ))}
        {heights.length > 0 ? (
          <button type="button" onClick={() => set({ boardHeights: [] })}>
            Forget what was measured
          </button>
        ) : null}
      </details>
    </SettingsGroup>
  );
}

/** Three rows of three points over the board, on whole millimetres. */
function gridOver({ corners }: Baseboard): Making["boardHeights"] {
  const [least, most] = corners;
  const three = (from: number, to: number) => [from, (from + to) / 2, to].map(Math.round);
  return three(least.x, most.x).flatMap((x) => three(least.y, most.y).map((y) => ({ x, y, heightMm: 0 })));
}
