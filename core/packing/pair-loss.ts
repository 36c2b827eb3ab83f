import type { Variant } from "./shapes.ts";

/** Room for the edges of a pair that lie in its overlap; as long as any piece has edges. */
export type EdgeRoom = Int32Array;

/**
 * How deep two pieces lie in each other, 0 where they are apart; `dx`, `dy` is the second piece's place seen from the
 * first. Touching counts as apart only where the boxes touch. The depth is the sum over all pairs of poles of their
 * overlap times the smaller radius, with a decaying branch for poles that are apart, so that it always grows smaller
 * on the way out; infinite as soon as it is known to be over `most` (Gardeyn, Vanden Berghe & Wauters 2025, arXiv:2509.13329, section 6).
 */
export function pairDepth(
  a: Variant,
  b: Variant,
  dx: number,
  dy: number,
  shallow: number,
  most: number,
  room: EdgeRoom,
): number {
  if (dx >= a.width || dy >= a.height || -dx >= b.width || -dy >= b.height) return 0;
  if (!largestPolesOverlap(a.poles, b.poles, dx, dy) && !edgesMeet(a, b, dx, dy, room)) {
    if (!isWithin(a, b, dx, dy) && !isWithin(b, a, -dx, -dy)) return 0;
  }
  return depthOfPoles(a.poles, b.poles, dx, dy, shallow, most);
}

/** Of each piece so many of its largest poles are looked at before the edges: numbers, three for each. */
const FIRST_POLES = 12;

/** Whether two of the largest poles overlap: then the pieces do for certain, and no edge has to be looked at. */
function largestPolesOverlap(a: Float64Array, b: Float64Array, dx: number, dy: number): boolean {
  const endA = Math.min(a.length, FIRST_POLES);
  const endB = Math.min(b.length, FIRST_POLES);
  for (let i = 0; i < endA; i += 3) {
    const x = f64(a, i) - dx;
    const y = f64(a, i + 1) - dy;
    const r = f64(a, i + 2);
    for (let j = 0; j < endB; j += 3) {
      const ex = x - f64(b, j);
      const ey = y - f64(b, j + 1);
      const reach = r + f64(b, j + 2);
      if (ex * ex + ey * ey < reach * reach) return true;
    }
  }
  return false;
}

function depthOfPoles(
  a: Float64Array,
  b: Float64Array,
  dx: number,
  dy: number,
  shallow: number,
  most: number,
): number {
  let sum = 0;
  const square = shallow * shallow;
  const twice = 2 * shallow;
  for (let i = 0; i < a.length; i += 3) {
    const x = f64(a, i) - dx;
    const y = f64(a, i + 1) - dy;
    const r = f64(a, i + 2);
    for (let j = 0; j < b.length; j += 3) {
      const ex = x - f64(b, j);
      const ey = y - f64(b, j + 1);
      const s = f64(b, j + 2);
      const reach = r + s;
      const apart = ex * ex + ey * ey - reach * reach;
      const least = Math.min(r, s);
      if (apart < 0) {
        const depth = reach - Math.sqrt(apart + reach * reach);
        sum += (depth >= shallow ? depth : square / (twice - depth)) * least;
      } else {
        sum += (square * reach * least) / (twice * reach + apart / 2);
      }
    }
    if (sum > most) return Number.POSITIVE_INFINITY;
  }
  return sum;
}

/** Whether an edge of one piece meets an edge of the other; ends and touching included. Only edges that reach into
 * the overlap of the two boxes are looked at. Whole units keep every product exact. */
function edgesMeet(a: Variant, b: Variant, dx: number, dy: number, room: EdgeRoom): boolean {
  const lowX = Math.max(dx, 0);
  const lowY = Math.max(dy, 0);
  const highX = Math.min(dx + b.width, a.width);
  const highY = Math.min(dy + b.height, a.height);
  const count = edgesWithin(a.edges, lowX, lowY, highX, highY, room);
  if (count === 0) return false;
  const { edges } = b;
  for (let k = 0; k < edges.length; k += 4) {
    const cx = f64(edges, k) + dx;
    const cy = f64(edges, k + 1) + dy;
    const ex = f64(edges, k + 2) + dx;
    const ey = f64(edges, k + 3) + dy;
    const minX = Math.min(cx, ex);
    const maxX = Math.max(cx, ex);
    const minY = Math.min(cy, ey);
    const maxY = Math.max(cy, ey);
    if (minX > highX || maxX < lowX || minY > highY || maxY < lowY) continue;
    const ux = ex - cx;
    const uy = ey - cy;
    for (let m = 0; m < count; m++) {
      const o = room[m] ?? 0;
      const px = f64(a.edges, o);
      const py = f64(a.edges, o + 1);
      const qx = f64(a.edges, o + 2);
      const qy = f64(a.edges, o + 3);
      if (px > maxX && qx > maxX) continue;
      if (px < minX && qx < minX) continue;
      if (py > maxY && qy > maxY) continue;
      if (py < minY && qy < minY) continue;
      const sideP = ux * (py - cy) - uy * (px - cx);
      const sideQ = ux * (qy - cy) - uy * (qx - cx);
      if ((sideP > 0 && sideQ > 0) || (sideP < 0 && sideQ < 0)) continue;
      const vx = qx - px;
      const vy = qy - py;
      const sideC = vx * (cy - py) - vy * (cx - px);
      const sideE = vx * (ey - py) - vy * (ex - px);
      if ((sideC > 0 && sideE > 0) || (sideC < 0 && sideE < 0)) continue;
      return true;
    }
  }
  return false;
}

/** Writes where in the list the edges start that reach into a box, and returns how many there are. */
function edgesWithin(
  edges: Float64Array,
  lowX: number,
  lowY: number,
  highX: number,
  highY: number,
  room: EdgeRoom,
): number {
  let count = 0;
  for (let k = 0; k < edges.length; k += 4) {
    const ax = f64(edges, k);
    const bx = f64(edges, k + 2);
    if ((ax < lowX && bx < lowX) || (ax > highX && bx > highX)) continue;
    const ay = f64(edges, k + 1);
    const by = f64(edges, k + 3);
    if ((ay < lowY && by < lowY) || (ay > highY && by > highY)) continue;
    room[count++] = k;
  }
  return count;
}

/** Whether the first corner of the second piece lies in the first one's body; only asked where no edges meet. */
function isWithin(a: Variant, b: Variant, dx: number, dy: number): boolean {
  const x = f64(b.edges, 0) + dx;
  const y = f64(b.edges, 1) + dy;
  if (x < 0 || y < 0 || x > a.width || y > a.height) return false;
  const { edges } = a;
  let inside = false;
  for (let k = 0; k < edges.length; k += 4) {
    const ay = f64(edges, k + 1);
    const by = f64(edges, k + 3);
    if (ay > y === by > y) continue;
    const ax = f64(edges, k);
    if (x < ax + ((y - ay) / (by - ay)) * (f64(edges, k + 2) - ax)) inside = !inside;
  }
  return inside;
}

const f64 = (list: Float64Array, index: number): number => list[index] ?? 0;
