import type { Design } from "../../../core/design.ts";
import { formatMm, formatNumber, MINUS } from "../../../core/foundation/index.ts";
import type { AsBuilt, CheckPlace } from "../../../core/jig/index.ts";
import { FigureHeads, ScrollAcross } from "../../controls/index.ts";
import { useSettings } from "../settings/index.ts";
import { HeightEntry } from "./HeightEntry.tsx";

/** The laid foam as it is measured: a height for every place, what it stands off, and which rib to shim. */
export function AsBuiltPanel({ design }: { readonly design: Design }) {
  const { project, change } = useSettings();
  const { checks, asBuilt } = design.lie;
  if (checks.length === 0) return null;
  const measured = project.asBuilt ?? [];
  const isAt =
    ({ at }: CheckPlace) =>
    (one: { readonly x: number; readonly y: number }) =>
      one.x === at.x && one.y === at.y;
  const set = (check: CheckPlace, heightMm: number | undefined) => {
    const others = measured.filter((one) => !isAt(check)(one));
    const own = heightMm === undefined ? [] : [{ x: check.at.x, y: check.at.y, heightMm }];
    change({ asBuilt: [...others, ...own] });
  };
  return (
    <section aria-label="Check as built" data-testid="as-built">
      <h3>Check as built</h3>
      <p className="note">
        Measure the laid foam before the skin goes on: the height of its upward face above the baseboard.
      </p>
      {asBuilt ? <Verdict asBuilt={asBuilt} /> : null}
      <ScrollAcross label="Heights of the laid foam">
        <table className="figures">
          <thead>
            <tr>
              {["rib", "part"].map((word) => (
                <th key={word} scope="col">
                  {word}
                </th>
              ))}
              <FigureHeads
                words={["x", "y", "drawn, mm", "measured, mm", "off, mm", "once the whole is moved, mm"]}
              />
            </tr>
          </thead>
          <tbody>
            {checks.map((check) => {
              const { ribId, partId, at, drawnMm } = check;
              const place = asBuilt?.places.find((one) => isAt(check)(one.at));
              return (
                <tr key={`${ribId} ${partId} ${at.x} ${at.y}`}>
                  <td className="code">{ribId}</td>
                  <td className="code">{partId}</td>
                  <td className="figure">{formatNumber(at.x, 0)}</td>
                  <td className="figure">{formatNumber(at.y, 0)}</td>
                  <td className="figure">{formatMm(drawnMm)}</td>
                  <td className="figure">
                    <HeightEntry
                      label={`Measured over ${ribId} at x ${at.x}, y ${at.y}`}
                      heightMm={measured.find(isAt(check))?.heightMm}
                      onChange={(heightMm) => set(check, heightMm)}
                    />
                  </td>
                  <td className="figure">{place ? signed(place.offMm) : ""}</td>
                  <td className="figure">{place ? signed(place.leftMm) : ""}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </ScrollAcross>
    </section>
  );
}

function Verdict({ asBuilt: { fit, shims } }: { readonly asBuilt: AsBuilt }) {
  return (
    <>
      <p data-testid="as-built-fit">
        {`As a whole it stands ${signed(fit.liftMm)} mm at x 0, y 0, ${signed(fit.slopeX * 1000)} mm a metre rearward and ${signed(fit.slopeY * 1000)} mm a metre to the right.`}
      </p>
      <p data-testid="as-built-shims">
        {shims.length === 0
          ? "No rib needs a shim."
          : shims
              .map(
                ({ ribId, byMm }) =>
                  `${ribId}: ${byMm > 0 ? "raise" : "lower"} by ${formatMm(Math.abs(byMm))} mm`,
              )
              .join("; ")}
      </p>
    </>
  );
}

function signed(mm: number): string {
  const size = formatMm(Math.abs(mm));
  if (size === "0.0") return size;
  return mm < 0 ? `${MINUS}${size}` : `+${size}`;
}
