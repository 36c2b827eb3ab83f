/** A support of a beam: where along it, and how high it holds it; both in mm. */
export interface BeamSupport {
  readonly atMm: number;
  readonly heightMm: number;
}

/** A load that presses down evenly between two places, in N for each mm of length. */
export interface BeamLoad {
  readonly fromMm: number;
  readonly toMm: number;
  readonly nPerMm: number;
}

/** A beam of one stiffness E I, in N mm², over its supports; it may reach beyond the first and the last. */
export interface Beam {
  readonly stiffness: number;
  readonly fromMm: number;
  readonly toMm: number;
  /** Two at least, ascending; held both ways. */
  readonly supports: readonly BeamSupport[];
  readonly loads: readonly BeamLoad[];
}

/** A beam as it lies. Heights in mm; moments in N mm, positive where it sags; what a support presses up with in N. */
export interface LaidBeam {
  readonly heightAt: (atMm: number) => number;
  readonly momentAt: (atMm: number) => number;
  /** In the order of the supports; negative where the beam must be held down on it. */
  readonly reactionsN: readonly number[];
}
