import { CircleCheck, Minus, OctagonAlert } from "lucide-react";
import type { BendVerdict } from "../../../core/bending/index.ts";

const SIGNS = {
  flat: { Icon: Minus, level: "quiet", words: "flat" },
  "bend cold": { Icon: CircleCheck, level: "ok", words: "bends cold" },
  "too tight": { Icon: OctagonAlert, level: "stop", words: "too tight" },
} as const satisfies Record<BendVerdict, unknown>;

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
