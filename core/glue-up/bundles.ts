import type { Strip } from "../cutting/index.ts";
import type { Bond } from "./glue-bonds.ts";
import type { GlueUnit } from "./glue-units.ts";

/** Units that come to the jig in one step whatever the order: one, or strips that only make sense together. */
export interface Bundle {
  readonly units: readonly GlueUnit[];
  /** Laying them, without their joints. */
  readonly layMinutes: number;
}

/** No step is made longer by bundling, minutes: an evening's work (common practice). */
const MOST_MINUTES = 120;

/**
 * Units in bundles: planks of one sheet, and strips that twist divides, come one after the other in one step as long as
 * that is an evening's work, else in as many as make evenings of it; each of them alone would hang on a joint that is still
 * soft. All others are on their own.
 */
export function bundlesOf(
  units: readonly GlueUnit[],
  bonds: readonly Bond[],
  layMinutes: (unit: GlueUnit) => number,
  jointMinutes: (bond: Bond) => number,
): readonly Bundle[] {
  return chainsOf(units, bonds).flatMap(({ chain, hinges }) => {
    const minutes = sum(chain.map(layMinutes)) + sum(hinges.map(jointMinutes));
    const count = Math.ceil(minutes / MOST_MINUTES);
    const each = Math.ceil(chain.length / Math.max(1, count));
    const starts = Array.from({ length: Math.ceil(chain.length / each) }, (_, i) => i * each);
    return starts.map((start): Bundle => {
      const own = chain.slice(start, start + each);
      return { units: own, layMinutes: sum(own.map(layMinutes)) };
    });
  });
}

interface Chain {
  readonly chain: readonly GlueUnit[];
  readonly hinges: readonly Bond[];
}

/** Units one after the other as long as seams that are glued in place join each to the one before. */
function chainsOf(units: readonly GlueUnit[], bonds: readonly Bond[]): readonly Chain[] {
  const chains: { readonly chain: GlueUnit[]; readonly hinges: Bond[] }[] = [];
  for (const unit of units) {
    const last = chains.at(-1);
    const hinge = bonds.find((bond) => isHinge(bond) && joins(bond, last?.chain.at(-1), unit));
    if (last === undefined || hinge === undefined) chains.push({ chain: [unit], hinges: [] });
    else {
      last.chain.push(unit);
      last.hinges.push(hinge);
    }
  }
  return chains;
}

/** A seam that is glued where the strips are bent, because they do not lie in one plane before. */
const isHinge = ({ kind, liesFlat }: Bond): boolean => kind === "seam" && !liesFlat;

const joins = ({ sides }: Bond, one: GlueUnit | undefined, other: GlueUnit): boolean =>
  one !== undefined && sides.some((side) => side.includes(one)) && sides.some((side) => side.includes(other));

/** What comes in one step, in few words: `S1`, `S3 in its 5 strips`, `T1R-a to T1R-h`. */
export function bundleNames(units: readonly GlueUnit[], strips: readonly Strip[]): readonly string[] {
  const parts = [...new Set(units.map(({ part }) => part))];
  return parts.map((part) => {
    const own = units.filter((unit) => unit.part === part);
    const [first, last] = [own[0]?.id ?? "", own.at(-1)?.id ?? ""];
    if (own.length === 1) return first;
    const count = strips.filter(({ partId }) => partId === part.id).length;
    return own.flatMap((unit) => unit.strips).length === count
      ? `${part.id} in its ${count} strips`
      : `${first} to ${last}`;
  });
}

/** What is done with strips that come in one step. Empty for one unit, or for several parts. */
export function bundleWords({ units }: Pick<Bundle, "units">, bonds: readonly Bond[]): readonly string[] {
  const [first] = units;
  if (first === undefined || units.length < 2 || units.some(({ part }) => part !== first.part)) return [];
  const isPlanked = bonds.some(({ kind, sides, bevelRad }) => {
    const isOwn = sides.flat().every((unit) => units.includes(unit));
    return kind === "seam" && isOwn && bevelRad.some((angleRad) => angleRad !== 0);
  });
  return [
    isPlanked
      ? "Tape the planks edge to edge on the face where the bevelled joints close last, so that these open like hinges. Spread the glue, fold the sheet over its ribs, and hold it from one end to the other."
      : "One strip after the other is pressed down on its ribs and held there; its joint to the one before is glued when it comes.",
  ];
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
