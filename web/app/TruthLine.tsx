import type { Design } from "../../core/design.ts";
import { formatMass, formatNumber, levelOf, THIN_SPACE } from "../../core/foundation/index.ts";
import { HiddenCount } from "../standing/index.ts";
import { useDesign } from "../stores/index.ts";
import { PROBLEMS_ID, ProblemList } from "./ProblemList.tsx";
import { ProblemSign } from "./ProblemSign.tsx";

/** The quiet line at the foot: what the tray is now, and how many things want looking at. */
export function TruthLine() {
  const design = useDesign((state) => state.design);
  const failure = useDesign((state) => state.failure);
  const isComputing = useDesign((state) => state.isComputing);
  return (
    <footer className="truth-line" data-testid="truth-line" data-computing={isComputing}>
      {design ? (
        <Figures totals={design.totals} schedule={design.schedule} />
      ) : (
        <span className="pencil">Counting…</span>
      )}
      {failure ? <Failure text={failure} /> : null}
      <HiddenCount />
      {design ? <ProblemsButton problems={design.problems} /> : null}
    </footer>
  );
}

function Figures({ totals, schedule }: Pick<Design, "totals" | "schedule">) {
  const stockSheets = totals.stock.reduce((sum, stock) => sum + stock.sheetsAtLeast, 0);
  return (
    <ul className="figures-line" aria-label="The tray in figures">
      <Figure name="parts" count={totals.partCount} one="part" many="parts" />
      <Figure name="strips" count={totals.stripCount} one="strip" many="strips" />
      <Figure
        name="stock"
        count={stockSheets}
        one="stock sheet"
        many="stock sheets"
        hint="At least, by area"
      />
      <li title="Bare foam; skins come with their own stage" data-testid="truth-mass">
        <b>{formatMass(totals.foamMassKg)}</b> foam
      </li>
      <Hours totals={totals} schedule={schedule} />
    </ul>
  );
}

/** All the work of the calendar; where there is none yet, what goes into the bare shell. */
function Hours({ totals, schedule }: Pick<Design, "totals" | "schedule">) {
  const isPlanned = schedule.tasks.length > 0;
  const hours = isPlanned ? schedule.workMinutes / 60 : totals.handsOnHours;
  const hint = isPlanned
    ? "By the clock, from the templates to the trimmed edge: the hours of the calendar under Glue"
    : "Hands on: marking, cutting, jig and glue-up";
  return (
    <li title={hint} data-testid="truth-hours">
      <b>{`${formatNumber(hours, 0)}${THIN_SPACE}h`}</b> of work
    </li>
  );
}

interface FigureProps {
  readonly name: string;
  readonly count: number;
  readonly one: string;
  readonly many: string;
  readonly hint?: string;
}

function Figure({ name, count, one, many, hint }: FigureProps) {
  return (
    <li title={hint} data-testid={`truth-${name}`}>
      <b>{count}</b> {count === 1 ? one : many}
    </li>
  );
}

type Problems = Parameters<typeof ProblemList>[0]["problems"];

function ProblemsButton({ problems }: { readonly problems: Problems }) {
  const level = problems.some((problem) => levelOf(problem) === "stop") ? "stop" : "look";
  if (problems.length === 0)
    return (
      <span className="problems-button" data-testid="problems">
        <ProblemSign level="ok" /> Nothing open
      </span>
    );
  return (
    <>
      <button
        type="button"
        className="plain problems-button"
        data-testid="problems"
        popoverTarget={PROBLEMS_ID}
      >
        <ProblemSign level={level} />
        {problems.length === 1 ? "1 thing to look at" : `${problems.length} things to look at`}
      </button>
      <ProblemList problems={problems} />
    </>
  );
}

function Failure({ text }: { readonly text: string }) {
  return (
    <span className="failure" role="alert" title={text}>
      <ProblemSign level="stop" /> A fault of ours: figures are from before the last change
    </span>
  );
}
