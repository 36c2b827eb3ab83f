import { foamMmOf } from "../../../core/cutting/index.ts";
import type { Design } from "../../../core/design.ts";
import { formatMass, formatMm, formatNumber, THIN_SPACE } from "../../../core/foundation/index.ts";
import type { Part } from "../../../core/patterns/index.ts";
import { foamOf } from "../../../core/project/index.ts";
import { PartSign } from "./VerdictSign.tsx";

/** Code and name of a part, and what is to be known of it at a glance. */
export function PartHeading({ part, design }: { readonly part: Part; readonly design: Design }) {
  const foam = foamOf(design.project, part.foamId);
  const hand = part.hand === "whole" ? "across the centre line" : `${part.hand} hand`;
  const squareMetres = part.flatAreaMm2 / 1e6;
  const massKg = foam ? squareMetres * (foamMmOf(part) / 1000) * foam.densityKgPerM3 : undefined;
  return (
    <header className="part-heading">
      <h2>
        <span className="code">{part.id}</span> {part.name}
      </h2>
      <ul className="facts">
        <li>
          <PartSign part={part} />
        </li>
        <li>{hand}</li>
        <li>{part.faceShown} toward you</li>
        <li>{`${part.panel ? "panel, foam and both skins" : (foam?.name ?? part.foamId)}, ${formatMm(part.thicknessMm)}${THIN_SPACE}mm`}</li>
        <li>{`${formatNumber(squareMetres, 3)}${THIN_SPACE}m²`}</li>
        {massKg === undefined ? null : <li>{formatMass(massKg)} bare foam</li>}
      </ul>
    </header>
  );
}
