import { CircleCheck, Minus, OctagonAlert, Rows3, Scissors } from "lucide-react";
import type { BendVerdict } from "../../../core/bending/index.ts";
import type { Part } from "../../../core/patterns/index.ts";
import { TwistSign } from "../../drawings/index.ts";

const SIGNS = {
  flat: { Icon: Minus, level: "quiet", words: "flat" },
  "bend cold": { Icon: CircleCheck, level: "ok", words: "bends cold" },
  "relief slots": { Icon: Scissors, level: "look", words: "relief slots" },
  planks: { Icon: Rows3, level: "look", words: "planks" },
  "not with this foam": { Icon: OctagonAlert, level: "stop", words: "not with this foam" },
} as const satisfies Record<BendVerdict, unknown>;

/** Whether a part can be bent to its shape: of a transition, what becomes of its twist. */
export const PartSign = ({ part }: { readonly part: Pick<Part, "verdict" | "twist"> }) =>
  part.twist && part.verdict !== "not with this foam" ? (
    <TwistSign twist={part.twist} />
  ) : (
    <VerdictSign verdict={part.verdict} />
  );

/** Whether a part bends, as a sign and a word. */
export function VerdictSign({ verdict }: { readonly verdict: BendVerdict }) {
  const { Icon, level, words } = SIGNS[verdict];
  return (
    <span className="verdict">
      <Icon className={`sign ${level}`} aria-hidden />
      {words}
    </span>
  );
}
