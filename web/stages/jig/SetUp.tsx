import { formatMm } from "../../../core/foundation/index.ts";
import { type RibSet, wordInPlace, wordRelease } from "../../../core/jig/index.ts";

/** How one set of ribs is set up: order, squareness, and how the shell comes off it. */
export function SetUp({ set, standName }: { readonly set: RibSet; readonly standName: "jig" | "cradle" }) {
  const { baseboard, assembly, release, fenceStands } = set;
  const crossing = assembly.filter(({ over }) => over.length > 0);
  const first = assembly.filter(({ over }) => over.length === 0).map(({ ribId }) => ribId);
  const isHeld = release.locks.some(({ by }) => by !== "wing");
  return (
    <section aria-label={`Setting up the ${standName}`} data-testid="set-up">
      <h3>Setting up</h3>
      <ul className="facts stacked-facts">
        <li>
          {`${baseboard.sheets.length === 1 ? "One sheet" : `${baseboard.sheets.length} sheets`} of board, ${formatMm(baseboard.thicknessMm)} mm. Both pairs of corner marks are ${formatMm(baseboard.square.diagonalMm)} mm apart.`}
        </li>
        {crossing.length > 0 ? (
          <li>{`First ${first.join(", ")}; then ${crossing.map(({ ribId }) => ribId).join(", ")} come straight down over them.`}</li>
        ) : null}
        {fenceStands.length > 0 ? (
          <li>{`${fenceStands.map(({ partId }) => partId).join(", ")} stand in the jig first, blocked to the heights of their table.`}</li>
        ) : null}
        {wordInPlace(fenceStands).map((words) => (
          <li key={words}>{words}</li>
        ))}
        <li data-testid="release" data-held={isHeld}>
          {wordRelease(release, standName).join(" ")}
        </li>
      </ul>
    </section>
  );
}
