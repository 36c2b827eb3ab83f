import { Fragment } from "react";
import type { Strip } from "../../../core/cutting/index.ts";
import type { Design } from "../../../core/design.ts";
import { formatAngle, formatMm, formatNumber, toRadians } from "../../../core/foundation/index.ts";
import type { MarkingTable, RowReason } from "../../../core/marking/index.ts";
import { Choice, NumberField, ScrollAcross } from "../../controls/index.ts";
import { HelpMark } from "../../help/index.ts";
import { useSettings } from "../settings/index.ts";

interface MarkingOutProps {
  readonly design: Design;
  /** The strips of the part, the one that is marked out, and its table. */
  readonly strips: readonly Strip[];
  readonly strip: Strip | undefined;
  readonly table: MarkingTable | undefined;
  readonly onChoose: (stripId: string) => void;
}

/** The strips a part is cut in, and for the chosen one how it is marked out with tape and square. */
export function MarkingOut({ design, strips, strip, table, onChoose }: MarkingOutProps) {
  return (
    <section aria-label="Marking out" className="marking-out">
      <header>
        <h3>Marking out</h3>
        {strips.length > 1 ? <HelpMark term="strip" /> : null}
        {strips.length > 1 ? <StripChoice strips={strips} chosenId={strip?.id} onChoose={onChoose} /> : null}
      </header>
      {strip ? <StripFacts strip={strip} design={design} /> : null}
      <div className="columns">
        {table ? <Rows table={table} /> : <p className="pencil">This strip has no marking-out table.</p>}
        <MarkingSettings table={table} />
      </div>
    </section>
  );
}

interface StripChoiceProps {
  readonly strips: readonly Strip[];
  readonly chosenId: string | undefined;
  readonly onChoose: (stripId: string) => void;
}

function StripChoice({ strips, chosenId, onChoose }: StripChoiceProps) {
  return (
    <div className="choices" role="radiogroup" aria-label="Strip">
      {strips.map(({ id }) => (
        <label key={id} className="code">
          <input type="radio" name="strip" checked={id === chosenId} onChange={() => onChoose(id)} />
          {id}
        </label>
      ))}
    </div>
  );
}

function StripFacts({ strip, design }: { readonly strip: Strip; readonly design: Design }) {
  const stock = design.project.stock.find(({ id }) => id === strip.stockId);
  const panel = design.panels.panels.find(({ pieces }) => pieces.some(({ stripId }) => stripId === strip.id));
  const seams = design.seams.filter((seam) => seam.stripIds.includes(strip.id));
  return (
    <p className="pencil">
      <span className="code">{strip.id}</span>
      {panel
        ? ` is cut from ${panel.id}, laminated first (under Skin), which takes a ${formatMm(panel.foamMm)} mm sheet.`
        : stock
          ? ` is cut from the ${formatMm(stock.lengthMm)} × ${formatMm(stock.widthMm)} × ${formatMm(stock.thicknessMm)} mm sheet.`
          : " fits no sheet in store."}
      {seams.map((seam) => {
        const other = seam.stripIds.find((id) => id !== strip.id);
        const place = seam.runs === "along ruling" ? "square to the length" : "along the length";
        const taper = strip.tapers?.find(({ seamEdgeId }) => seamEdgeId === `seam:${seam.id}`);
        const scarf = taper
          ? `, a scarf: ${formatMm(taper.lengthMm)} mm of its ${taper.face} tapered to nothing`
          : "";
        return ` Glued to ${other} by a seam ${place}, ${formatMm(seam.lengthMm)} mm long${scarf}.`;
      })}
      {strip.loops
        .flatMap(({ edges }) => edges)
        .map(({ edgeId, name, spare }) =>
          spare?.for === "gap" ? (
            <span key={edgeId}>
              {` Its edge “${name}” closes a gap: ${formatMm(spare.lengthMm)} mm are left standing there, to be cut to the gap that you measure.`}
            </span>
          ) : spare?.for === "hold" ? (
            <span key={edgeId}>
              {` It runs ${formatMm(spare.lengthMm)} mm past its edge “${name}”, to be held by: trim it there after the first skin.`}
            </span>
          ) : null,
        )}
    </p>
  );
}

const REASONS: Readonly<Record<RowReason, string>> = {
  station: "",
  corner: "corner",
  slot: "relief slot",
  extra: "between, for the curve",
};

function Rows({ table }: { readonly table: MarkingTable }) {
  const count = Math.max(0, ...table.rows.map((row) => row.offsetsMm.length));
  const marks = Array.from({ length: count }, (_, index) => ({
    index,
    isBevelled: table.rows.some((row) => isBevel(row.bevelsRad[index])),
  }));
  return (
    <ScrollAcross label="Marks along the datum">
      <table className="figures" data-testid="marking-table">
        <thead>
          <tr>
            <th scope="col" className="figure">
              along the <HelpMark term="datum">datum</HelpMark>, mm
            </th>
            {marks.map(({ index, isBevelled }) => (
              <Fragment key={index}>
                <th scope="col" className="figure">
                  {`mark ${index + 1}, mm`}
                </th>
                {isBevelled ? (
                  <th
                    scope="col"
                    className="figure"
                    title="Off square; plus leaves the face longer that looks away from you"
                  >
                    bevel
                  </th>
                ) : null}
              </Fragment>
            ))}
            <th scope="col">why here</th>
          </tr>
        </thead>
        <tbody>
          {table.rows.map((row) => (
            <tr key={row.alongMm}>
              <td className="figure">{formatMm(row.alongMm)}</td>
              {marks.map(({ index, isBevelled }) => {
                const offset = row.offsetsMm[index];
                return (
                  <Fragment key={index}>
                    <td className="figure">{offset === undefined ? "" : formatMm(offset)}</td>
                    {isBevelled ? (
                      <td className="figure pencil">{wordBevelHere(row.bevelsRad[index])}</td>
                    ) : null}
                  </Fragment>
                );
              })}
              <td className="pencil">{REASONS[row.reason]}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollAcross>
  );
}

/** Less than this shows as square. */
const LEAST_BEVEL_RAD = toRadians(0.05);
const isBevel = (bevelRad: number | undefined): boolean => Math.abs(bevelRad ?? 0) >= LEAST_BEVEL_RAD;

/** The bevel of an edge at one mark: plus leaves the face longer that looks away from the reader. */
function wordBevelHere(bevelRad: number | undefined): string {
  if (bevelRad === undefined) return "";
  if (!isBevel(bevelRad)) return "square";
  return bevelRad > 0 ? `+${formatAngle(bevelRad)}` : formatAngle(bevelRad);
}

function MarkingSettings({ table }: { readonly table: MarkingTable | undefined }) {
  const { project, change } = useSettings();
  const { marking } = project;
  const isForBatten = marking.rows === "fewest for a batten";
  return (
    <div className="settings-group">
      {table ? (
        <p>
          {`Joined with straight lines the marks miss the edge by at most ${formatNumber(table.straightMissMm, 2)} mm; `}
          {`with a batten bent along them by ${formatNumber(table.battenMissMm, 2)} mm.`}
        </p>
      ) : null}
      <Choice
        label="Rows"
        value={marking.rows ?? "stations"}
        testId="marking-rows"
        options={[
          { value: "stations", word: "At stations" },
          { value: "fewest for a batten", word: "As few as a batten needs" },
        ]}
        onChange={(rows) => change({ marking: { ...marking, rows } })}
      />
      {isForBatten ? (
        <p className="pencil">Join the marks with a batten: straight lines between so few of them miss.</p>
      ) : (
        <NumberField
          label="A station every"
          unit="mm"
          value={marking.intervalMm}
          setting="marking.intervalMm"
          onChange={(intervalMm) => change({ marking: { ...marking, intervalMm } })}
        />
      )}
      <NumberField
        label={isForBatten ? "The batten may miss by" : "Extra marks where straight lines miss by more than"}
        unit="mm"
        value={marking.toleranceMm}
        setting="marking.toleranceMm"
        onChange={(toleranceMm) => change({ marking: { ...marking, toleranceMm } })}
      />
    </div>
  );
}
