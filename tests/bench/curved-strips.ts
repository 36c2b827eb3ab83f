import type { PackingPiece, PackingPoint } from "../../core/packing/index.ts";

/** Words of a linear congruential generator (Numerical Recipes, 2nd edition, section 7.1), from 0 to under 1. */
export function seededNumbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 4294967296;
  };
}

const STATIONS = 40;
/** What a sheet of 1250 mm takes, with room for the blade. */
const LONGEST_MM = 1240;

/**
 * Long thin strips as a tray gives them: 300 to 1800 mm long, 40 to 120 mm wide, gently curved, cut across
 * where they are longer than a sheet. The chord of each lies along the sheet, either way round.
 */
export function curvedStrips(count: number, seed: number): readonly PackingPiece[] {
  const next = seededNumbers(seed);
  return Array.from({ length: count }, (_, index) => {
    const lengthMm = 300 + 1500 * next();
    const widthMm = 40 + 80 * next();
    const taper = 0.6 + 0.4 * next();
    const sagittaMm = lengthMm * 0.03 * (2 * next() - 1);
    const pieces = lengthMm > LONGEST_MM ? [0, LONGEST_MM / lengthMm, 1] : [0, 1];
    return pieces.slice(1).map((to, part): PackingPiece => {
      const from = pieces[part] ?? 0;
      const height = (t: number): number => sagittaMm * 4 * t * (1 - t);
      const edge = (side: 1 | -1): readonly PackingPoint[] =>
        Array.from({ length: STATIONS + 1 }, (_, k) => {
          const t = from + ((to - from) * k) / STATIONS;
          const onChord = height(from) + ((height(to) - height(from)) * (t - from)) / (to - from);
          const middle = height(t) - onChord;
          return { x: (t - from) * lengthMm, y: middle + (side * widthMm * (taper + (1 - taper) * t)) / 2 };
        });
      return {
        id: `strip ${index + 1}${pieces.length > 2 ? `-${part + 1}` : ""}`,
        outline: [...edge(-1), ...edge(1).toReversed()],
        holes: [],
        anglesRad: [0, Math.PI],
      };
    });
  }).flat();
}
