import { useState } from "react";
import type { Design } from "../../../core/design.ts";
import { at, formatMm, formatNumber } from "../../../core/foundation/index.ts";
import { type LieLine, wordOpenings, wordPast, wordPlanked } from "../../../core/jig/index.ts";
import { Select, useSize } from "../../controls/index.ts";
import { HelpMark } from "../../help/index.ts";
import { LiePicture } from "./LiePicture.tsx";
import { worstStation } from "./lie-bands.ts";
import "./lie.css";

/** How the foam lies on the ribs: one line over it from the side, how far it stands off its shape, and where the worst is. */
export function LieView({ design }: { readonly design: Design }) {
  const { lie } = design;
  const [chosen, setChosen] = useState<string>();
  const { ref, widthPx } = useSize<HTMLDivElement>();
  const named = lie.lines.map((line, i) => ({ line, value: `${i}`, word: wordLine(line) }));
  const worst = [...named].sort((a, b) => offOf(b.line) - offOf(a.line))[0];
  const shown = named.find(({ value }) => value === chosen) ?? worst;
  if (!shown) return null;
  const { toleranceMm } = lie.settings;
  return (
    <section aria-label="How the foam lies" data-testid="lie-view">
      <header className="drawing-heading">
        <h2>
          How the foam lies, <HelpMark term="frozen-error">frozen error</HelpMark>
        </h2>
        <p className="pencil" data-testid="lie-worst">
          {wordWorst(design)}
        </p>
        {[...wordPlanked(design.parts), ...wordOpenings(lie)].map((words) => (
          <p key={words} className="pencil">
            {words}
          </p>
        ))}
        {lie.pasts.map((past) => (
          <p key={past.edgeIds.join()} className="pencil" data-testid="lie-past">
            {`${past.partIds.join(", ")}: ${wordPast(past)}`}
          </p>
        ))}
      </header>
      <Select
        label="Along"
        value={shown.value}
        options={named.map(({ value, word }) => ({ value, word }))}
        testId="lie-line"
        onChange={setChosen}
      />
      <div ref={ref} className="part-drawing">
        {widthPx > 0 ? <LiePicture line={shown.line} toleranceMm={toleranceMm} widthPx={widthPx} /> : null}
      </div>
    </section>
  );
}

const offOf = (line: LieLine): number => Math.abs(worstStation(line.stations)?.errorMm ?? 0);

function wordLine({ partId, over, stations }: LieLine): string {
  const aside = over === "across" ? ("y" as const) : ("x" as const);
  const [from, to] = [at(stations, 0).at[aside], at(stations, -1).at[aside]].map((mm) => formatNumber(mm, 0));
  return `${partId}, ${aside} ${from === to ? from : `${from} to ${to}`}, over ribs ${over}`;
}

function wordWorst({ lie }: Design): string {
  const [worst] = lie.worst;
  if (!worst) return "";
  const { errorMm, partId, at: where, ribIds } = worst;
  const beside = ribIds.length > 1 ? `between ${ribIds.join(" and ")}` : `beyond ${ribIds.join("")}`;
  return `At worst ${formatMm(Math.abs(errorMm))} mm ${errorMm > 0 ? "above" : "below"} its shape: ${partId} at x ${formatNumber(where.x, 0)}, y ${formatNumber(where.y, 0)}, ${beside}. Allowed ${formatMm(lie.settings.toleranceMm)} mm.`;
}
