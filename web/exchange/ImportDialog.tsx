import { useEffect, useState } from "react";
import { isSvg } from "../../core/exchange/index.ts";
import { Choice, Dialog, Select, useLengths } from "../controls/index.ts";
import { useDocument, useView } from "../stores/index.ts";
import { core } from "../worker/index.ts";
import { importCommand } from "./import-commands.ts";
import type { ImportKind, ImportPlan } from "./plan-import.ts";
import "./exchange.css";

const KINDS: readonly { readonly value: ImportKind; readonly word: string }[] = [
  { value: "section", word: "Section outline" },
  { value: "profile", word: "Profile" },
  { value: "fence", word: "Fence line" },
  { value: "opening", word: "Opening" },
];
const UNITS = { file: undefined, mm: 1, cm: 10, m: 1000, in: 25.4 } as const;
type UnitName = keyof typeof UNITS;

/** Takes a line from an SVG file or a table of points; shows it, and what is wrong with it, before it is accepted. */
export function ImportDialog() {
  const { show, read, unit } = useLengths();
  const isMirrored = useDocument((state) => state.project.symmetry === "mirrored");
  const [text, setText] = useState("");
  const [kind, setKind] = useState<ImportKind>("section");
  const [unitName, setUnitName] = useState<UnitName>("file");
  const [curvesBecome, setCurvesBecome] = useState<"curves" | "lines">("curves");
  const [isFlipped, setIsFlipped] = useState(false);
  const [shift, setShift] = useState({ x: "0", y: "0", miss: "0.2 mm" });
  const [index, setIndex] = useState<number>();
  const [plan, setPlan] = useState<ImportPlan>();
  const close = () => useView.getState().setOverlay(undefined);
  const shiftXMm = read(shift.x) ?? 0;
  const shiftYMm = read(shift.y) ?? 0;
  const toleranceMm = Math.max(0.01, read(shift.miss) ?? 0.2);

  useEffect(() => {
    if (text === "") return setPlan(undefined);
    let isCurrent = true;
    const settings = {
      kind,
      unitMm: UNITS[unitName],
      shiftMm: [shiftXMm, shiftYMm] as const,
      isFlipped,
      toleranceMm,
      curvesBecome,
      index,
      isMirrored,
    };
    void core()
      .planImport(text, settings)
      .then((made) => {
        if (isCurrent) setPlan(made);
      });
    return () => {
      isCurrent = false;
    };
  }, [text, kind, unitName, shiftXMm, shiftYMm, isFlipped, toleranceMm, curvesBecome, index, isMirrored]);

  const take = (file: File | undefined) => {
    setIndex(undefined);
    void file?.text().then((content) => setText(content === "" ? " " : content));
  };
  const accept = () => {
    if (!plan?.fitted) return;
    const { command, selection } = importCommand(useDocument.getState().project, kind, plan.fitted);
    useDocument.getState().dispatch(command);
    useView.getState().select(selection);
    close();
  };
  return (
    <Dialog
      title="Import a line"
      testId="import-dialog"
      onClose={close}
      foot={
        <button
          type="button"
          className="primary"
          disabled={!plan?.fitted}
          data-testid="import-accept"
          onClick={accept}
        >
          Import
        </button>
      }
    >
      {/* biome-ignore lint/a11y/noStaticElementInteractions: a file can be dropped on it besides being chosen */}
      <div
        className="import"
        onDragOver={(event) => event.preventDefault()}
        onDrop={(event) => {
          event.preventDefault();
          event.stopPropagation();
          take(event.dataTransfer.files[0]);
        }}
      >
        <label className="field stacked">
          <span>SVG, or CSV with x and y (or z)</span>
          <input
            type="file"
            accept=".svg,.csv,.txt,.tsv"
            data-testid="import-file"
            onChange={(event) => take(event.currentTarget.files?.[0])}
          />
        </label>
        <label className="field stacked">
          <span>or paste it here</span>
          <textarea
            rows={3}
            data-testid="import-text"
            value={text.length > 20_000 ? "" : text}
            onChange={(event) => setText(event.currentTarget.value)}
          />
        </label>
        <Choice label="It is to be" value={kind} options={KINDS} testId="import-kind" onChange={setKind} />
        {plan && plan.lines.length > 1 ? (
          <Select
            label="Which line"
            value={String(plan.index)}
            options={plan.lines.map((word, i) => ({ value: String(i), word }))}
            onChange={(value) => setIndex(Number(value))}
          />
        ) : null}
        <Select
          label="One unit is"
          value={unitName}
          options={[
            { value: "file", word: isSvg(text) ? "as the file says" : "1 mm" },
            ...(["mm", "cm", "m", "in"] as const).map((name) => ({ value: name, word: `1 ${name}` })),
          ]}
          onChange={(value) =>
            setUnitName((["mm", "cm", "m", "in"] as const).find((name) => name === value) ?? "file")
          }
        />
        {(["x", "y", "miss"] as const).map((name) => (
          <label key={name} className="field">
            <span>{name === "miss" ? "Most it may miss" : `Move by ${name}`}</span>
            <span className="entry">
              <input
                className="number"
                type="text"
                value={shift[name]}
                aria-invalid={read(shift[name]) === undefined}
                data-testid={`import-${name}`}
                onChange={(event) => setShift({ ...shift, [name]: event.currentTarget.value })}
              />
              {/* The miss says its own unit: it is a fineness, in mm in both. */}
              {name === "miss" ? null : <span className="unit">{unit}</span>}
            </span>
          </label>
        ))}
        <label className="tick">
          <input
            type="checkbox"
            checked={isFlipped}
            data-testid="import-flip"
            onChange={(event) => setIsFlipped(event.currentTarget.checked)}
          />
          flip it, upside down
        </label>
        <Choice
          label="Curves become"
          value={curvesBecome}
          options={[
            { value: "curves", word: "curves" },
            { value: "lines", word: "short straight lines" },
          ]}
          onChange={setCurvesBecome}
        />
        {plan ? (
          <Preview
            plan={plan}
            words={
              plan.fitted
                ? `${show(plan.sizeMm[0])} × ${show(plan.sizeMm[1])} ${unit}, ${plan.fitted.nodes.length} nodes, misses by ${plan.fitted.missMm.toFixed(2)} mm at most`
                : "Nothing to import yet."
            }
          />
        ) : null}
      </div>
    </Dialog>
  );
}

/** The line as it will be drawn, with its nodes, its size and every remark. */
function Preview({ plan, words }: { readonly plan: ImportPlan; readonly words: string }) {
  const xs = plan.picture.map(([x]) => x);
  const ys = plan.picture.map(([, y]) => -y);
  const left = xs.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
  const top = ys.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
  const [wide, high] = [Math.max(1, plan.sizeMm[0]), Math.max(1, plan.sizeMm[1])];
  const spare = 0.05 * Math.max(wide, high);
  return (
    <>
      {plan.picture.length > 1 ? (
        <svg
          className="import-picture"
          role="img"
          aria-label={words}
          viewBox={`${left - spare} ${top - spare} ${wide + 2 * spare} ${high + 2 * spare}`}
        >
          <polyline
            points={plan.picture.map(([x, y]) => `${x},${-y}`).join(" ")}
            vectorEffect="non-scaling-stroke"
          />
        </svg>
      ) : null}
      <p data-testid="import-size">{words}</p>
      {plan.remarks.length > 0 ? (
        <div role="alert" data-testid="import-remarks">
          <ul className="import-remarks">
            {plan.remarks.slice(0, 12).map((remark) => (
              <li key={remark}>{remark}</li>
            ))}
          </ul>
        </div>
      ) : null}
    </>
  );
}
