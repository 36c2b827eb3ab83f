import { CircleCheck, Hand, OctagonAlert, SquareSplitHorizontal } from "lucide-react";
import { FLAT_RADIUS_MM, formatNumber, THIN_SPACE, toDegrees } from "../../core/foundation/index.ts";
import type { TwistJudgement, TwistVerdict } from "../../core/rulings/index.ts";

const SIGNS = {
  developable: { Icon: CircleCheck, level: "ok" },
  "press down": { Icon: Hand, level: "ok" },
  divide: { Icon: SquareSplitHorizontal, level: "warn" },
  "not with this foam": { Icon: OctagonAlert, level: "stop" },
} as const satisfies Record<TwistVerdict, unknown>;

/** What becomes of a transition's twist, as a sign and words. */
export function TwistSign({ twist }: { readonly twist: TwistJudgement }) {
  const { Icon, level } = SIGNS[twist.verdict];
  return (
    <span className="verdict">
      <Icon className={`sign ${level}`} aria-hidden />
      {wordTwist(twist)}
    </span>
  );
}

/** The verdict on a twist in words: what is to be done with the sheet. */
export function wordTwist({ verdict, strips }: Pick<TwistJudgement, "verdict" | "strips">): string {
  switch (verdict) {
    case "developable":
      return "bends as it is";
    case "press down":
      return "press it down";
    case "divide":
      return `divide into ${strips} strips`;
    case "not with this foam":
      return "not with this foam";
  }
}

/** How much a transition twists and what that costs its foam. `where` says at which place the twist is largest. */
export function TwistFigures({ twist, where }: { readonly twist: TwistJudgement; readonly where?: string }) {
  const figures = [
    ["Largest twist", `${degrees(twist.maxTwistRad)}${where ? ` ${where}` : ""}`],
    ["Least radius", twist.leastRadiusMm < FLAT_RADIUS_MM ? mm(twist.leastRadiusMm) : "flat"],
    ["Stretch of its middle", percent(twist.membraneStrain)],
    ["Stretch of the outer fibre", percent(twist.pressStrain)],
    ["Largest crease", twist.largestCreaseRad > 0 ? degrees(twist.largestCreaseRad) : "none"],
  ] as const;
  return (
    <dl className="twist-figures" data-testid="twist-figures">
      <div>
        <dt>What to do</dt>
        <dd>
          <TwistSign twist={twist} />
        </dd>
      </div>
      {figures.map(([word, figure]) => (
        <div key={word}>
          <dt>{word}</dt>
          <dd className="figure">{figure}</dd>
        </div>
      ))}
    </dl>
  );
}

/** A hundredth counts here: under a tenth of a degree a sheet bends by itself. */
const degrees = (angleRad: number): string => `${formatNumber(toDegrees(angleRad), 2)}°`;
const mm = (value: number): string => `${formatNumber(value, 0)}${THIN_SPACE}mm`;
const percent = (share: number): string => `${formatNumber(share * 100, 2)}${THIN_SPACE}%`;
