import { type CrossingRib, endsOf, type Stretch, sharedMm } from "./crossing-rib.ts";

/** Less of a rib than this is none, mm. */
const LEAST_RIB_MM = 1;

/**
 * Where each rib starts and ends along itself: a rib whose end reaches into the board of one of the other
 * direction by less than half its thickness ends at that board's face, for no lap would hold there. Ribs across
 * give way first. Undefined for a rib of which nothing is left.
 */
export function endsAtFaces(ribs: readonly CrossingRib[]): (Stretch | undefined)[] {
  const full = ribs.map(({ runs, body, top }): Ended => ({ runs, body, ends: endsOf({ top }) }));
  const giveWay = (from: readonly Ended[], runs: CrossingRib["runs"]) =>
    from.map((rib) => (rib.runs === runs ? { ...rib, ends: endsBeside(rib, from) } : rib));
  const ended = giveWay(giveWay(full, "across"), "along");
  return ended.map(({ ends }) => (ends[1] - ends[0] > LEAST_RIB_MM ? ends : undefined));
}

interface Ended extends Pick<CrossingRib, "runs" | "body"> {
  readonly ends: Stretch;
}

function endsBeside({ runs, body, ends }: Ended, others: readonly Ended[]): Stretch {
  let [fromMm, toMm] = ends;
  for (const other of others) {
    if (other.runs === runs || sharedMm(body, other.ends) === 0) continue;
    const inMm = sharedMm(other.body, ends);
    if (inMm === 0 || inMm >= (other.body[1] - other.body[0]) / 2) continue;
    if (ends[0] > other.body[0]) fromMm = Math.max(fromMm, other.body[1]);
    else toMm = Math.min(toMm, other.body[0]);
  }
  return [fromMm, toMm];
}
