/** What a laminate is made of: the share of fibre in its mass, and the densities of fibre and cured resin. */
export interface LaminateMix {
  readonly fibreMassShare: number;
  readonly fibreKgPerM3: number;
  readonly resinKgPerM3: number;
}

/** One ply of cloth, wetted out: how thick it is, and what a square metre of it holds. */
export interface PlyFigures {
  readonly thicknessMm: number;
  readonly resinKgPerM2: number;
  readonly massKgPerM2: number;
  readonly fibreVolumeShare: number;
}

/**
 * A ply by the mass of its dry cloth: t = W (1/ρf + (1 − X)/(X ρr)), with the resin that the share of fibre X leaves
 * (R. Geerts, Calculating Laminate Thickness, Epoxyworks). No air in it.
 */
export function plyFigures(arealKgPerM2: number, mix: LaminateMix): PlyFigures {
  const { fibreMassShare, fibreKgPerM3, resinKgPerM3 } = mix;
  const resinKgPerM2 = (arealKgPerM2 * (1 - fibreMassShare)) / fibreMassShare;
  return {
    thicknessMm: 1000 * (arealKgPerM2 / fibreKgPerM3 + resinKgPerM2 / resinKgPerM3),
    resinKgPerM2,
    massKgPerM2: arealKgPerM2 + resinKgPerM2,
    fibreVolumeShare: fibreVolumeShare(mix),
  };
}

/** The share of fibre by volume: (X/ρf) / (X/ρf + (1 − X)/ρr). */
export function fibreVolumeShare({ fibreMassShare, fibreKgPerM3, resinKgPerM3 }: LaminateMix): number {
  const fibre = fibreMassShare / fibreKgPerM3;
  return fibre / (fibre + (1 - fibreMassShare) / resinKgPerM3);
}

/** The share of fibre by mass from that by volume. */
export function fibreMassShare(volumeShare: number, fibreKgPerM3: number, resinKgPerM3: number): number {
  const fibre = volumeShare * fibreKgPerM3;
  return fibre / (fibre + (1 - volumeShare) * resinKgPerM3);
}

/** Mass of a cubic metre of laminate, kg. */
export function laminateKgPerM3(mix: LaminateMix): number {
  const volumeShare = fibreVolumeShare(mix);
  return volumeShare * mix.fibreKgPerM3 + (1 - volumeShare) * mix.resinKgPerM3;
}
