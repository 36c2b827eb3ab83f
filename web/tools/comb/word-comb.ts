import { formatAngle } from "../../../core/foundation/index.ts";
import type { Lengths } from "../../lengths/index.ts";
import type { Comb } from "./comb-of.ts";

/** What a comb says, in a sentence or three: the least radius, what the foam allows, and the kinks. */
export function wordComb({ name, tightest, limit, kinks }: Comb, { show, unit }: Lengths): string {
  const length = (mm: number) => `${show(mm)} ${unit}`;
  const least = tightest ? `${name}: least radius ${length(tightest.radiusMm)}.` : `${name}: nowhere curved.`;
  return [least, ...wordLimit(tightest?.radiusMm, limit, length), ...wordKinks(kinks, show)].join(" ");
}

function wordLimit(
  radiusMm: number | undefined,
  limit: Comb["limit"],
  length: (mm: number) => string,
): readonly string[] {
  if (!limit || radiusMm === undefined) return [];
  const foam = `${limit.foam}, ${length(limit.thicknessMm)}`;
  return radiusMm >= limit.radiusMm
    ? [`Its foam (${foam}) bends cold down to ${length(limit.radiusMm)}: it bends.`]
    : [
        `Tighter than its foam (${foam}) bends cold, ${length(limit.radiusMm)}: ease it, or take thinner foam.`,
      ];
}

function wordKinks(kinks: Comb["kinks"], show: (mm: number) => string): readonly string[] {
  const [first] = kinks;
  if (!first) return ["No kink."];
  const where = `at x ${show(first.at[0])}, by ${formatAngle(Math.abs(first.turnRad))}`;
  return kinks.length === 1 ? [`A kink ${where}.`] : [`${kinks.length} kinks, the first ${where}.`];
}
