import { at } from "../foundation/index.ts";
import type { Solid } from "../solids/index.ts";

/** A place along the car at which it is shown cut across, and the letter of the section. */
export interface SectionStation {
  readonly letter: string;
  readonly xMm: number;
}

const MOST_SECTIONS = 5;
/** Between two places where parts begin or end, no section is put into a gap shorter than this, mm. */
const LEAST_GAP_MM = 40;
/** I and O look like figures. */
const LETTERS = ["A", "B", "C", "D", "E"];

/**
 * Where sections are taken: in the middle between places where parts begin or end, each where other parts are cut; of
 * these the ones that lie farthest from each other, five at most, lettered from the front.
 */
export function sectionStations(
  solids: readonly Pick<Solid, "partId" | "positions">[],
): readonly SectionStation[] {
  const spans = solids.map(({ partId, positions }) => ({ partId, ...spanOf(positions) }));
  const borders = [...new Set(spans.flatMap(({ from, to }) => [Math.round(from), Math.round(to)]))].sort(
    (a, b) => a - b,
  );
  const seen = new Set<string>();
  const places = borders.slice(1).flatMap((to, i) => {
    const from = at(borders, i);
    const middle = (from + to) / 2;
    const cut = spans.filter((span) => span.from < middle && span.to > middle).map(({ partId }) => partId);
    const key = [...new Set(cut)].join(" ");
    if (to - from < LEAST_GAP_MM || cut.length === 0 || seen.has(key)) return [];
    seen.add(key);
    return [{ xMm: Math.round(middle / 5) * 5, lengthMm: to - from }];
  });
  return spread(places).map((xMm, i) => ({ xMm, letter: at(LETTERS, i) }));
}

function spanOf(positions: Solid["positions"]): { readonly from: number; readonly to: number } {
  let [from, to] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < positions.length; i += 3) {
    from = Math.min(from, positions[i] ?? from);
    to = Math.max(to, positions[i] ?? to);
  }
  return { from, to };
}

/** The longest gap's place, then again and again the one farthest from those chosen; front to rear. */
function spread(places: readonly { readonly xMm: number; readonly lengthMm: number }[]): readonly number[] {
  const left = [...places].sort((a, b) => b.lengthMm - a.lengthMm || a.xMm - b.xMm);
  const chosen = left.splice(0, 1).map(({ xMm }) => xMm);
  const room = (xMm: number) => Math.min(...chosen.map((other) => Math.abs(other - xMm)));
  while (chosen.length < MOST_SECTIONS && left.length > 0) {
    left.sort((a, b) => room(b.xMm) - room(a.xMm) || a.xMm - b.xMm);
    chosen.push(...left.splice(0, 1).map(({ xMm }) => xMm));
  }
  return chosen.sort((a, b) => a - b);
}
