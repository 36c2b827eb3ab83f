import type { BeamLoad } from "./types.ts";

/** What reaches beyond the last support, told outward from it. */
export interface Overhang {
  readonly loadN: number;
  readonly momentAt: (outMm: number) => number;
  /** From the support's height and the beam's slope there, outward; straight where nothing presses. */
  readonly heightAt: (outMm: number, heightMm: number, slope: number, stiffness: number) => number;
}

/** The end of a beam from a support to where it ends, on either side. */
export function layOverhang(supportMm: number, endMm: number, loads: readonly BeamLoad[]): Overhang {
  const [lengthMm, sense] = [Math.abs(endMm - supportMm), Math.sign(endMm - supportMm)];
  const patches = loads.flatMap(({ fromMm, toMm, nPerMm }) => {
    const outs = [(fromMm - supportMm) * sense, (toMm - supportMm) * sense];
    const [from, to] = [Math.max(0, Math.min(...outs)), Math.min(lengthMm, Math.max(...outs))];
    return to > from && nPerMm !== 0 ? [{ from, to, nPerMm }] : [];
  });
  const beyond = (placeMm: number, outMm: number) => Math.max(0, placeMm - outMm);
  /** Twice integrated from the support: of (place − out)² where that is over 0. */
  const bent = (placeMm: number, outMm: number) =>
    (placeMm ** 3 * outMm) / 3 - (placeMm ** 4 - beyond(placeMm, outMm) ** 4) / 12;
  return {
    loadN: patches.reduce((sum, { from, to, nPerMm }) => sum + nPerMm * (to - from), 0),
    momentAt: (outMm) =>
      patches.reduce(
        (sum, { from, to, nPerMm }) =>
          sum - (nPerMm / 2) * (beyond(to, outMm) ** 2 - beyond(from, outMm) ** 2),
        0,
      ),
    heightAt: (outMm, heightMm, slope, stiffness) =>
      heightMm +
      slope * outMm -
      patches.reduce(
        (sum, { from, to, nPerMm }) => sum + (nPerMm / 2) * (bent(to, outMm) - bent(from, outMm)),
        0,
      ) /
        stiffness,
  };
}
