import { copyLie, type Field, type Lie, lossOf, refreshField, totalLoss } from "./field.ts";
import { movePiece } from "./move-piece.ts";
import { nextRandom, type RandomState } from "./random.ts";

/** When an attempt to separate the pieces is given up. */
export interface Patience {
  /** Sweeps without gain before a strike. */
  readonly sweeps: number;
  readonly strikes: number;
}

/** An attempt to bring all pieces apart in the bins they have. */
export interface Attempt {
  readonly least: number;
  readonly leastLie: Lie;
  readonly sinceGain: number;
  readonly strikes: number;
  /** The least loss when the present strike began. */
  readonly strikeStart: number;
  readonly outcome: "running" | "apart" | "given-up";
}

/** A gain counts when it takes at least this share off the least loss. */
const GAIN = 0.02;
const [LEAST_RISE, MOST_RISE, DECAY] = [1.2, 2, 0.95];

export function openAttempt(field: Field): Attempt {
  const least = totalLoss(field);
  return {
    least,
    leastLie: copyLie(field.lie),
    sinceGain: 0,
    strikes: 0,
    strikeStart: least,
    outcome: least === 0 ? "apart" : "running",
  };
}

/**
 * One sweep: every colliding piece, in random order, moves to where it collides least; then pairs that still collide
 * weigh more and all others less (guided local search). Changes the field; returns the attempt as it stands.
 */
export function sweep(field: Field, attempt: Attempt, patience: Patience, random: RandomState): Attempt {
  for (const piece of shuffled(field.turned.length, random)) {
    if (field.isLocked[piece] !== true && lossOf(field, piece) > 0) movePiece(field, piece, random);
  }
  const loss = totalLoss(field);
  if (loss === 0) return { ...attempt, least: 0, leastLie: copyLie(field.lie), outcome: "apart" };
  raiseWeights(field);
  const isLess = loss < attempt.least;
  const best = isLess ? { least: loss, leastLie: copyLie(field.lie) } : {};
  const sinceGain = loss < attempt.least * (1 - GAIN) ? 0 : attempt.sinceGain + 1;
  const next: Attempt = { ...attempt, ...best, sinceGain };
  if (sinceGain < patience.sweeps) return next;
  resume(field, next.leastLie);
  return struck(next, patience);
}

/** A strike. A strike that brought a gain is not counted. */
function struck(attempt: Attempt, patience: Patience): Attempt {
  const gained = attempt.least < attempt.strikeStart * (1 - GAIN);
  const strikes = gained ? 0 : attempt.strikes + 1;
  const outcome = strikes >= patience.strikes ? "given-up" : "running";
  return { ...attempt, sinceGain: 0, strikes, strikeStart: attempt.least, outcome };
}

/** Back to a lie; the weights stay. */
function resume(field: Field, lie: Lie): void {
  field.lie.bins.set(lie.bins);
  field.lie.variants.set(lie.variants);
  field.lie.xs.set(lie.xs);
  field.lie.ys.set(lie.ys);
  refreshField(field);
}

function raiseWeights({ losses, weights }: Field): void {
  let most = 0;
  for (const loss of losses) if (loss > most) most = loss;
  for (let k = 0; k < weights.length; k++) {
    const loss = losses[k] ?? 0;
    const weight = weights[k] ?? 1;
    weights[k] =
      loss > 0
        ? weight * (LEAST_RISE + ((MOST_RISE - LEAST_RISE) * loss) / most)
        : Math.max(1, weight * DECAY);
  }
}

/** The numbers from 0 to under `count` in random order (Fisher & Yates). */
export function shuffled(count: number, random: RandomState): Int32Array {
  const order = new Int32Array(count);
  for (let i = 0; i < count; i++) order[i] = i;
  for (let i = count - 1; i > 0; i--) {
    const j = Math.floor(nextRandom(random) * (i + 1));
    const swapped = order[i] ?? 0;
    order[i] = order[j] ?? 0;
    order[j] = swapped;
  }
  return order;
}
