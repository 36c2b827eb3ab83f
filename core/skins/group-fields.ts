import { at } from "../foundation/index.ts";

/** Fields to be laid in sessions: how long each takes, and how long a seam every two of them share. */
export interface FieldGraph {
  readonly minutes: readonly number[];
  readonly seams: readonly { readonly fields: readonly [number, number]; readonly lengthMm: number }[];
}

/** A grouping: for each field its session, counted from 0 in the order of the fields. */
export type Grouping = readonly number[];

/**
 * Fields in as few sessions as the time allows each, and among groupings into as many the one whose seams between sessions
 * are the shortest that is found: grown from every field in turn along the longest seams, bettered by moving and
 * changing fields until nothing gains, then looked for in all groupings within a fixed number of steps: of a dozen fields
 * the best is found. Deterministic. A field that is too long alone has a session of its own.
 */
export function groupFields(graph: FieldGraph, mostMinutes: number): Grouping {
  let best: Grouping | undefined;
  const starts = Math.min(
    graph.minutes.length,
    MOST_STARTS,
    Math.ceil(MOST_WORK / graph.minutes.length ** 2),
  );
  for (let start = 0; start < starts; start++) {
    const found = bettered(grownFrom(start, graph, mostMinutes), graph, mostMinutes);
    if (best === undefined || isBetter(found, best, graph)) best = found;
  }
  return renumbered(best === undefined ? [] : searched(best, graph, mostMinutes));
}

const MOST_STARTS = 40;
/** Of many fields fewer are started from: so many pairs are looked at in a round, over all starts. */
const MOST_WORK = 60_000;
/** Seams that differ by less are as long, mm. */
const SAME_MM = 1e-6;

/** Seams between sessions, mm. */
export const cutMm = (grouping: Grouping, { seams }: FieldGraph): number =>
  seams.reduce(
    (sum, { fields: [a, b], lengthMm }) => (grouping[a] === grouping[b] ? sum : sum + lengthMm),
    0,
  );

const sessionCount = (grouping: Grouping): number => new Set(grouping).size;

function isBetter(one: Grouping, other: Grouping, graph: FieldGraph): boolean {
  const [a, b] = [sessionCount(one), sessionCount(other)];
  return a === b ? cutMm(one, graph) < cutMm(other, graph) - SAME_MM : a < b;
}

function grownFrom(start: number, { minutes, seams }: FieldGraph, mostMinutes: number): Grouping {
  const sessionOf = minutes.map(() => -1);
  const tie = (field: number, session: number) =>
    seams.reduce((sum, { fields: [a, b], lengthMm }) => {
      const other = a === field ? b : b === field ? a : undefined;
      return other !== undefined && sessionOf[other] === session ? sum + lengthMm : sum;
    }, 0);
  let next: number | undefined = start;
  for (let session = 0; next !== undefined; session++) {
    let left = mostMinutes;
    while (next !== undefined) {
      sessionOf[next] = session;
      left -= at(minutes, next);
      next = best(
        sessionOf.flatMap((of, field) => (of < 0 && at(minutes, field) <= left ? [field] : [])),
        (field) => tie(field, session),
      );
    }
    // The next session begins beside what is laid, with the largest field that is left.
    next = best(
      sessionOf.flatMap((of, field) => (of < 0 ? [field] : [])),
      (field) => at(minutes, field),
    );
  }
  return sessionOf;
}

/** The first of the fields that is worth most. */
const best = (fields: readonly number[], worth: (field: number) => number): number | undefined =>
  fields.reduce<number | undefined>(
    (found, field) => (found === undefined || worth(field) > worth(found) + SAME_MM ? field : found),
    undefined,
  );

/** Rounds of bettering at most. */
const MOST_ROUNDS = 30;

/** One field moved to another session, or two changed over, as long as that gains; the first that does is taken. */
function bettered(grouping: Grouping, graph: FieldGraph, mostMinutes: number): Grouping {
  let now = grouping;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const next = moved(now, graph, mostMinutes) ?? changedOver(now, graph, mostMinutes);
    if (next === undefined) return now;
    now = next;
  }
  return now;
}

function moved(now: Grouping, graph: FieldGraph, mostMinutes: number): Grouping | undefined {
  const { loads, counts, ties } = looksOf(now, graph);
  for (const [field, own] of now.entries()) {
    for (const session of loads.keys()) {
      if (session === own || at(loads, session) + at(graph.minutes, field) > mostMinutes) continue;
      const gainMm = tie(ties, field, session) - tie(ties, field, own);
      if (at(counts, own) === 1 || gainMm > SAME_MM) return now.with(field, session);
    }
  }
  return undefined;
}

function changedOver(now: Grouping, graph: FieldGraph, mostMinutes: number): Grouping | undefined {
  const { minutes } = graph;
  const { loads, ties, seamMm } = looksOf(now, graph);
  for (const [field, own] of now.entries()) {
    for (let second = field + 1; second < now.length; second++) {
      const other = at(now, second);
      const more = at(minutes, second) - at(minutes, field);
      if (other === own || at(loads, own) + more > mostMinutes || at(loads, other) - more > mostMinutes)
        continue;
      const gainMm =
        tie(ties, field, other) - tie(ties, field, own) + tie(ties, second, own) - tie(ties, second, other);
      // A seam between both stays one.
      if (gainMm - 2 * (seamMm(field, second) ?? 0) > SAME_MM)
        return now.with(field, other).with(second, own);
    }
  }
  return undefined;
}

/** What a grouping is judged by: minutes and fields of each session, and the seams of each field with each session, mm. */
function looksOf(grouping: Grouping, { minutes, seams }: FieldGraph) {
  const size = Math.max(-1, ...grouping) + 1;
  const [loads, counts] = [new Array<number>(size).fill(0), new Array<number>(size).fill(0)];
  for (const [field, session] of grouping.entries()) {
    loads[session] = at(loads, session) + at(minutes, field);
    counts[session] = at(counts, session) + 1;
  }
  const ties = grouping.map(() => new Map<number, number>());
  const between = new Map<string, number>();
  const add = (field: number, session: number | undefined, lengthMm: number) => {
    if (session !== undefined) ties[field]?.set(session, tie(ties, field, session) + lengthMm);
  };
  for (const {
    fields: [a, b],
    lengthMm,
  } of seams) {
    if (a === b) continue;
    add(a, grouping[b], lengthMm);
    add(b, grouping[a], lengthMm);
    const key = a < b ? `${a} ${b}` : `${b} ${a}`;
    between.set(key, (between.get(key) ?? 0) + lengthMm);
  }
  return { loads, counts, ties, seamMm: (a: number, b: number) => between.get(`${a} ${b}`) };
}

const tie = (ties: readonly ReadonlyMap<number, number>[], field: number, session: number): number =>
  ties[field]?.get(session) ?? 0;

/** Steps of the search through all groupings. */
const MOST_STEPS = 30_000;

/** Branch and bound from a good grouping: fields in order, each into a session that it fits or a new one. */
function searched(known: Grouping, graph: FieldGraph, mostMinutes: number): Grouping {
  const { minutes, seams } = graph;
  let found = { grouping: known, count: sessionCount(known), seamMm: cutMm(known, graph) };
  let steps = 0;
  const sessionOf: number[] = [];
  const loads: number[] = [];
  const place = (field: number, seamMm: number): void => {
    steps += 1;
    const isWorse =
      loads.length > found.count || (loads.length === found.count && seamMm >= found.seamMm - SAME_MM);
    if (isWorse || steps > MOST_STEPS) return;
    if (field === minutes.length) {
      found = { grouping: [...sessionOf], count: loads.length, seamMm };
      return;
    }
    for (let session = 0; session <= loads.length; session++) {
      const isNew = session === loads.length;
      if (!isNew && at(loads, session) + at(minutes, field) > mostMinutes) continue;
      const cut = seams.reduce((sum, { fields: [a, b], lengthMm }) => {
        const other = a === field ? b : b === field ? a : field;
        return other < field && sessionOf[other] !== session ? sum + lengthMm : sum;
      }, 0);
      if (isNew) loads.push(0);
      loads[session] = at(loads, session) + at(minutes, field);
      sessionOf.push(session);
      place(field + 1, seamMm + cut);
      sessionOf.pop();
      loads[session] = at(loads, session) - at(minutes, field);
      if (isNew) loads.pop();
    }
  };
  place(0, 0);
  return found.grouping;
}

function renumbered(grouping: Grouping): Grouping {
  const order = [...new Set(grouping)];
  return grouping.map((session) => order.indexOf(session));
}
