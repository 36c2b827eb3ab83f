import { TriangleAlert } from "lucide-react";
import type { Design } from "../../core/design.ts";
import { formatAngle, formatMass, formatMm, formatNumber } from "../../core/foundation/index.ts";
import { openTimeWords, waitWords } from "../../core/glue-up/index.ts";
import { wordBevel } from "../../core/joints/index.ts";
import { ClockStart, clocksOfStep } from "../clocks/index.ts";
import { StepPicture } from "../stages/glue/index.ts";
import { useStripShapes } from "../stages/plan/index.ts";
import type { BenchCard, Sheaf } from "./bench-cards.ts";
import { SessionCard } from "./SessionCard.tsx";

type CardOf<Kind extends BenchCard["kind"]> = Extract<BenchCard, { readonly kind: Kind }>;

/** One card in big print. */
export function BenchCardView({ card, design }: { readonly card: BenchCard; readonly design: Design }) {
  switch (card.kind) {
    case "edges":
      return <Edges card={card} />;
    case "marks":
      return <Marks card={card} />;
    case "rib":
      return <RibHeights card={card} />;
    case "step":
      return <Step card={card} design={design} />;
    case "session":
      return <SessionCard session={card.session} workId={design.project.id} />;
  }
}

/** Less than this shows as square. */
const SQUARE_RAD = 0.0009;

function Edges({ card: { part } }: { readonly card: CardOf<"edges"> }) {
  return (
    <>
      <h2>
        <span className="code">{part.id}</span> {part.name}
      </h2>
      <p>{`With the ${part.faceShown} toward you: flat lengths in mm, and the bevel of each edge.`}</p>
      <ul className="bench-rows">
        {part.edges.map((edge, index) => (
          <li key={edge.edgeId}>
            <span>{`${index + 1} ${edge.name}`}</span>
            <b>{formatMm(edge.flatLengthMm)}</b>
            <small>{wordBevel(edge.bevelRad, part.kind)}</small>
          </li>
        ))}
      </ul>
    </>
  );
}

function Marks({ card: { table, rows, sheaf } }: { readonly card: CardOf<"marks"> }) {
  return (
    <>
      <h2>
        <span className="code">{table.stripId}</span> marks{wordSheaf(sheaf)}
      </h2>
      <table className="bench-table">
        <thead>
          <tr>
            <th scope="col">along, mm</th>
            <th scope="col">off the datum, mm; bevel</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.alongMm}>
              <th scope="row">{formatMm(row.alongMm)}</th>
              <td>
                {row.offsetsMm.map((offset, index) => (
                  <span key={index} className="bench-mark">
                    <b>{formatMm(offset)}</b>
                    <small>{bevelHere(row.bevelsRad[index])}</small>
                  </span>
                ))}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>
        Plus leaves the face longer that looks away from you.{" "}
        {table.joinedBy === "batten"
          ? `Bend a batten along the marks: it misses the edge by at most ${formatNumber(table.battenMissMm, 2)} mm, straight lines by ${formatNumber(table.straightMissMm, 2)} mm.`
          : `Joined straight, the marks miss the edge by at most ${formatNumber(table.straightMissMm, 2)} mm.`}
      </p>
    </>
  );
}

const bevelHere = (bevelRad: number | undefined): string => {
  if (Math.abs(bevelRad ?? 0) < SQUARE_RAD) return "square";
  return `${(bevelRad ?? 0) > 0 ? "+" : ""}${formatAngle(bevelRad ?? 0)}`;
};

function RibHeights({ card: { rib, heights, sheaf } }: { readonly card: CardOf<"rib"> }) {
  const across = rib.runs === "across" ? "y" : "x";
  return (
    <>
      <h2>
        Rib <span className="code">{rib.id}</span>
        {wordSheaf(sheaf)}
      </h2>
      <p>
        {`${rib.runs} at ${formatMm(rib.atMm)} mm, station line on its ${rib.stationFace} face, `}
        {rib.cut === "square" ? "cut square." : "top bevelled."}
        {rib.sameAs === rib.id ? "" : ` Same as ${rib.sameAs}.`}
      </p>
      <table className="bench-table">
        <thead>
          <tr>
            <th scope="col">{`${across}, mm`}</th>
            <th scope="col">{`height on the ${rib.stationFace} face, mm; bevel`}</th>
          </tr>
        </thead>
        <tbody>
          {heights.map((height) => (
            <tr key={`${height.atMm}/${height.partId}`}>
              <th scope="row">{formatMm(height.atMm)}</th>
              <td>
                <span className="bench-mark">
                  <b>{formatMm(height.stationFaceMm)}</b>
                  <small>{rib.cut === "square" ? "square" : bevelHere(height.bevelRad)}</small>
                </span>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

function Step({ card: { step }, design }: { readonly card: CardOf<"step">; readonly design: Design }) {
  const shapes = useStripShapes(design);
  return (
    <>
      <h2>
        <span className="code">{step.step}</span> {step.title}
      </h2>
      {step.cautions.map((caution) => (
        <p key={caution} className="bench-caution">
          <TriangleAlert className="sign look" aria-hidden />
          <span>
            <b>Take care. </b>
            {caution}
          </span>
        </p>
      ))}
      <StepPicture step={step} design={design} shapes={shapes} />
      <ul className="bench-rows">
        <Fact word="comes" value={step.adds.join(", ")} />
        <Fact word="where" value={step.place === "jig" ? "in the jig" : "on the bench"} />
        <Fact
          word="glue"
          value={
            step.glueLengthMm > 0 ? `${formatMm(step.glueLengthMm)} mm, ${formatMass(step.glueMassKg)}` : ""
          }
        />
        <Fact
          word={step.heldBy}
          value={step.pins > 0 ? `${step.pins}, every ${formatNumber(step.pinSpacingMm, 0)} mm` : ""}
        />
        <Fact
          word="then wait"
          value={
            step.waitHours > 0
              ? `${formatNumber(step.clampHours, 1)} h held, ${formatNumber(step.waitHours, 1)} h before load`
              : ""
          }
        />
        <Fact word="glue open" value={openTimeWords(step)} />
      </ul>
      <p>{step.why}</p>
      {[...step.how, waitWords(step)].map((words) => (
        <p key={words}>{words}</p>
      ))}
      {clocksOfStep(step, design.project.id).map((span) => (
        <ClockStart key={span.id} span={span} />
      ))}
    </>
  );
}

function Fact({ word, value }: { readonly word: string; readonly value: string }) {
  if (value === "") return null;
  return (
    <li>
      <span>{word}</span>
      <b>{value}</b>
    </li>
  );
}

const wordSheaf = ({ number, of }: Sheaf): string => (of > 1 ? `, ${number} of ${of}` : "");
