import { useLengths } from "../controls/index.ts";
import { gridIn, wordGrid } from "../lengths/index.ts";
import { useView } from "../stores/index.ts";

/** What places snap to, each to be switched off; Alt holds all of them off while it is down. */
export function SnapToggles() {
  const snaps = useView((view) => view.snaps);
  const setSnaps = useView((view) => view.setSnaps);
  const lengths = useLengths();
  const toggles = [
    { name: "nodes", word: "nodes and edges", isOn: snaps.nodes },
    {
      name: "grid",
      word: `grid ${wordGrid(lengths, gridIn(lengths.units, snaps.gridMm))}`,
      isOn: snaps.grid,
    },
    { name: "centreLine", word: "centre line", isOn: snaps.centreLine },
  ] as const;
  return (
    <fieldset className="snaps" title="Hold Alt to place freely">
      <legend className="visually-hidden">What places snap to</legend>
      <span className="pencil">snap to</span>
      {toggles.map(({ name, word, isOn }) => (
        <label key={name}>
          <input
            type="checkbox"
            checked={isOn}
            data-testid={`snap-${name}`}
            onChange={(event) => setSnaps({ [name]: event.currentTarget.checked })}
          />
          {word}
        </label>
      ))}
    </fieldset>
  );
}
