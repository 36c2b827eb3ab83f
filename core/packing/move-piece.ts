import { at } from "../foundation/index.ts";
import { type Bin, type Field, lossAt, lossOf, putPiece, type Spot } from "./field.ts";
import { nextRandom, type RandomState } from "./random.ts";
import type { Variant } from "./shapes.ts";

/** How many places are tried over all bins, how many near the place the piece has, and how many are refined. */
const [EVERYWHERE, NEARBY, REFINED] = [24, 16, 3];
/** How far a nearby place may be, as a share of the piece's diameter. */
const NEAR = 0.1;
/** Steps of refining, as shares of the diameter: first and least of each candidate, and of the best one again. */
const [FIRST_STEP, LEAST_STEP, FINEST_STEP] = [0.03, 0.004, 0.0002];
const [LONGER, SHORTER] = [1.1, 0.5];

interface Candidate extends Spot {
  loss: number;
}

/**
 * Moves a piece to where it collides least, by weight: places tried at random, the best of them refined by steps along
 * an axis or a diagonal or to a neighbouring angle. It stays where it is if nothing is better.
 */
export function movePiece(field: Field, piece: number, random: RandomState): void {
  const { bins, variants, xs, ys } = field.lie;
  const here: Candidate = {
    bin: bins[piece] ?? 0,
    variant: variants[piece] ?? 0,
    x: xs[piece] ?? 0,
    y: ys[piece] ?? 0,
    loss: lossOf(field, piece),
  };
  const kept = sampled(field, piece, here, random);
  const { diameter } = at(field.shapes, piece);
  let best = at(kept, 0);
  for (const candidate of kept) {
    if (best.loss === 0) break;
    refine(field, piece, candidate, [diameter * FIRST_STEP, diameter * LEAST_STEP], random);
    if (candidate.loss < best.loss) best = candidate;
  }
  refine(field, piece, best, [diameter * LEAST_STEP, diameter * FINEST_STEP], random);
  if (best.loss < here.loss) putPiece(field, piece, best);
}

/** The best of places tried at random, the place that the piece has among them; the least loss first. */
function sampled(field: Field, piece: number, here: Candidate, random: RandomState): readonly Candidate[] {
  const { variants } = at(field.shapes, piece);
  const kept: Candidate[] = [{ ...here }];
  const spot: Spot = { ...here };
  for (let k = 0; k < NEARBY + EVERYWHERE && at(kept, 0).loss > 0; k++) {
    const fits =
      k < NEARBY ? goNear(spot, field, piece, here, random) : goAnywhere(spot, field.bins, variants, random);
    if (!fits) continue;
    const worst = kept.length < REFINED ? Number.POSITIVE_INFINITY : at(kept, -1).loss;
    const loss = lossAt(field, piece, spot, at(variants, spot.variant), worst);
    if (loss < worst) keep(kept, { bin: spot.bin, variant: spot.variant, x: spot.x, y: spot.y, loss });
  }
  return kept;
}

function keep(kept: Candidate[], candidate: Candidate): void {
  kept.push(candidate);
  kept.sort((a, b) => a.loss - b.loss);
  if (kept.length > REFINED) kept.pop();
}

/** Sets a spot anywhere in the bins, at any of a piece's angles; false where the piece does not fit at that angle. */
export function goAnywhere(
  spot: Spot,
  bins: readonly Bin[],
  variants: readonly Variant[],
  random: RandomState,
): boolean {
  spot.bin = Math.floor(nextRandom(random) * bins.length);
  spot.variant = Math.floor(nextRandom(random) * variants.length);
  const turned = at(variants, spot.variant);
  const { length, width } = at(bins, spot.bin);
  if (turned.width > length || turned.height > width) return false;
  spot.x = Math.round(nextRandom(random) * (length - turned.width));
  spot.y = Math.round(nextRandom(random) * (width - turned.height));
  return true;
}

/** Sets a spot near the place that a piece has; false where the piece does not fit at its angle there. */
function goNear(spot: Spot, field: Field, piece: number, from: Spot, random: RandomState): boolean {
  const { variants, diameter } = at(field.shapes, piece);
  const isTurned = variants.length > 1 && nextRandom(random) < 0.5;
  spot.bin = from.bin;
  spot.variant = isTurned ? Math.floor(nextRandom(random) * variants.length) : from.variant;
  const reach = 2 * NEAR * diameter;
  const was = at(variants, from.variant);
  const turned = at(variants, spot.variant);
  spot.x = from.x + (was.width - turned.width) / 2 + (nextRandom(random) - 0.5) * reach;
  spot.y = from.y + (was.height - turned.height) / 2 + (nextRandom(random) - 0.5) * reach;
  return clampInto(field.bins, spot, turned) !== undefined;
}

/** The spot moved into its bin and onto the grid; undefined where the piece does not fit at its angle. */
export function clampInto(bins: readonly Bin[], spot: Spot, turned: Variant): Spot | undefined {
  const { length, width } = at(bins, spot.bin);
  if (turned.width > length || turned.height > width) return undefined;
  spot.x = Math.round(Math.min(Math.max(spot.x, 0), length - turned.width));
  spot.y = Math.round(Math.min(Math.max(spot.y, 0), width - turned.height));
  return spot;
}

/** Moves a candidate by steps both ways along one direction at a time, until the step is under the least. */
function refine(
  field: Field,
  piece: number,
  best: Candidate,
  [firstStep, leastStep]: readonly [number, number],
  random: RandomState,
): void {
  const { variants } = at(field.shapes, piece);
  const directions = variants.length > 8 ? 5 : 4;
  const next: Spot = { bin: best.bin, variant: best.variant, x: best.x, y: best.y };
  const from: Spot = { ...next };
  let step = firstStep;
  while (step >= leastStep && best.loss > 0) {
    const direction = Math.floor(nextRandom(random) * directions);
    from.variant = best.variant;
    from.x = best.x;
    from.y = best.y;
    let isBetter = false;
    for (let sense = -1; sense <= 1; sense += 2) {
      next.variant = from.variant;
      next.x = from.x + (direction === 1 || direction === 4 ? 0 : sense * step);
      next.y =
        from.y + (direction === 0 || direction === 4 ? 0 : direction === 3 ? -sense * step : sense * step);
      if (direction === 4) turnAboutMiddle(next, variants, sense);
      const turned = at(variants, next.variant);
      if (clampInto(field.bins, next, turned) === undefined) continue;
      const loss = lossAt(field, piece, next, turned, best.loss);
      if (loss >= best.loss) continue;
      isBetter = true;
      best.variant = next.variant;
      best.x = next.x;
      best.y = next.y;
      best.loss = loss;
    }
    step *= isBetter ? LONGER : SHORTER;
  }
}

/** The next angle of the list in one sense, the middle of the box kept. */
function turnAboutMiddle(spot: Spot, variants: readonly Variant[], sense: number): void {
  const was = at(variants, spot.variant);
  spot.variant = (spot.variant + sense + variants.length) % variants.length;
  const now = at(variants, spot.variant);
  spot.x += (was.width - now.width) / 2;
  spot.y += (was.height - now.height) / 2;
}
