type Spot = readonly [number, number];

/**
 * The indices of the points of a line that are enough to draw it with no point of the rest farther than
 * `withinMm` from the drawn one (Ramer 1972, Douglas and Peucker 1973); ends and outermost points among them.
 */
export function thinnedIndices<Point>(
  points: readonly Point[],
  spotOf: (point: Point) => Spot,
  withinMm: number,
): readonly number[] {
  const spots = points.map(spotOf);
  const anchors = anchorsOf(spots);
  const kept = new Set(anchors);
  const spans = anchors.flatMap((to, index): readonly Spot[] => {
    const from = anchors[index - 1];
    return from === undefined ? [] : [[from, to]];
  });
  const open = [...spans];
  for (let span = open.pop(); span !== undefined; span = open.pop()) {
    const [from, to] = span;
    const farthest = farthestBetween(spots, from, to, withinMm);
    if (farthest === undefined) continue;
    kept.add(farthest);
    open.push([from, farthest], [farthest, to]);
  }
  return [...kept].sort((a, b) => a - b);
}

/** Both ends, and the least and the most of each coordinate. */
function anchorsOf(spots: readonly Spot[]): readonly number[] {
  if (spots.length === 0) return [];
  const anchors = new Set([0, spots.length - 1]);
  for (const axis of [0, 1] as const) {
    let least = 0;
    let most = 0;
    spots.forEach((spot, index) => {
      if (spot[axis] < (spots[least]?.[axis] ?? 0)) least = index;
      if (spot[axis] > (spots[most]?.[axis] ?? 0)) most = index;
    });
    anchors.add(least).add(most);
  }
  return [...anchors].sort((a, b) => a - b);
}

/** The point between two others that is farthest from their chord; undefined when all are near enough. */
function farthestBetween(
  spots: readonly Spot[],
  from: number,
  to: number,
  withinMm: number,
): number | undefined {
  const a = spots[from];
  const b = spots[to];
  if (!a || !b) return undefined;
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const squared = dx * dx + dy * dy;
  let farthest: number | undefined;
  let most = withinMm;
  for (let index = from + 1; index < to; index += 1) {
    const spot = spots[index];
    if (!spot) continue;
    const [px, py] = [spot[0] - a[0], spot[1] - a[1]];
    const along = squared === 0 ? 0 : Math.min(1, Math.max(0, (px * dx + py * dy) / squared));
    const away = Math.hypot(px - along * dx, py - along * dy);
    if (away <= most) continue;
    most = away;
    farthest = index;
  }
  return farthest;
}
