import { formatNumber } from "../../../core/foundation/index.ts";
import type { LaidGroup } from "../../../core/stock/index.ts";
import { DeedButton, layOutDeed, stockDeeds } from "../../deeds/index.ts";
import { useDesign, useDocument, useLaying } from "../../stores/index.ts";
import { LaidSheetView } from "./LaidSheetView.tsx";

/** Which piece lies on which sheet: laying out, looking at what was found, accepting it, and moving pieces by hand. */
export function Layouts() {
  const groups = useDesign((state) => state.design?.stock) ?? [];
  return (
    <section aria-label="Layout on stock" className="layouts">
      <h3 className="caption">Layout on stock</h3>
      {groups.length === 0 ? <p className="pencil">There is nothing to lay out yet.</p> : null}
      {groups.map((group) => (
        <GroupLayout key={group.groupId} group={group} />
      ))}
    </section>
  );
}

function GroupLayout({ group }: { readonly group: LaidGroup }) {
  const laying = useLaying();
  const isHere = laying.groupId === group.groupId;
  const found = isHere ? laying.found?.laid : undefined;
  const shown = found ?? group;
  return (
    <section
      className="layout-group"
      aria-label={group.name}
      data-testid={`layout-${group.groupId}`}
      data-setting={`layouts.${group.groupId}`}
      data-standing={group.standing}
      tabIndex={-1}
    >
      <header className="layout-heading">
        <h4>{group.name}</h4>
        {isHere ? (
          <>
            {laying.isRunning ? <DeedButton deed={stockDeeds.stop} /> : null}
            <DeedButton deed={stockDeeds.accept} />
            <DeedButton deed={stockDeeds.discard} />
          </>
        ) : (
          <DeedButton deed={layOutDeed(group.groupId)} />
        )}
      </header>
      {isHere && laying.isRunning ? (
        <progress max={1} value={laying.found?.progress ?? 0} aria-label="Time gone" />
      ) : null}
      {isHere && laying.failure ? (
        <p className="failure" role="alert">{`It could not be laid out. ${laying.failure}`}</p>
      ) : null}
      <p aria-live="polite" data-testid={`layout-words-${group.groupId}`}>
        {standingWords(group, isHere, found !== undefined)}{" "}
        {found === undefined ? "" : <Figures group={found} />}
        {found === undefined && group.sheets.length > 0 ? <Figures group={group} /> : null}
      </p>
      {shown.unplaced.length > 0 ? (
        <p className="wrong-words">{`No place for ${shown.unplaced.join(", ")}: add a sheet.`}</p>
      ) : null}
      <ol className="laid-sheets">
        {shown.sheets.map((sheet, index) => (
          <LaidSheetView
            key={`${sheet.stockId}-${index}`}
            group={shown}
            index={index}
            canEdit={found === undefined && group.standing === "accepted"}
          />
        ))}
      </ol>
    </section>
  );
}

function standingWords({ standing, pieceIds }: LaidGroup, isHere: boolean, isFound: boolean): string {
  if (isFound) return "Found, not yet accepted:";
  if (isHere) return "Looking for a first layout…";
  switch (standing) {
    case "accepted":
      return "Accepted. Drag a piece to move it.";
    case "out of date":
      return "The accepted layout is out of date: pieces or sheets have changed since. Lay out again.";
    default:
      return `${pieceIds.length} pieces, not laid out yet.`;
  }
}

function Figures({ group }: { readonly group: LaidGroup }) {
  const currency = useDocument((state) => state.project.laying.currency);
  const { wasteShare, price, wastePrice } = group.figures;
  const count = group.sheets.length === 1 ? "1 sheet" : `${group.sheets.length} sheets`;
  const last = group.sheets.at(-1);
  const offcut = last ? `; ${formatNumber(last.lengthMm - last.usedMm, 0)} mm of the last one left over` : "";
  const money =
    price === undefined || wastePrice === undefined
      ? ""
      : `, ${formatNumber(wastePrice, 2)} of ${formatNumber(price, 2)} ${currency}`;
  return <b>{`${count}, waste ${formatNumber(100 * wasteShare, 0)} %${money}${offcut}`}</b>;
}
