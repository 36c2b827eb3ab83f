/**
 * Every tolerance of the geometry, named by the decision it makes. Workshop tolerances (form, marking,
 * glue gap) are settings of the document and live there.
 */

// Rounding noise, relative: doubles carry 1e-16; a chain of a few hundred operations keeps 1e-12.
export const ROUNDING_RELATIVE = 1e-12;

/** Quadrature of lengths and areas, relative: under the 1e-9 that curve lengths promise, over the noise of its integrands. */
export const QUADRATURE_RELATIVE = 1e-10;

/** Two drawn points nearer than this are one point: a tenth of what a builder can mark. */
export const COINCIDENT_POINTS_MM = 0.01;

/** A profile may fall back in x by this much before it is called multi-valued (design §2). */
export const PROFILE_FALLBACK_MM = 0.01;

/** A node this near to y = 0 lies on the centre line. */
export const ON_CENTRE_LINE_MM = 0.01;

/** Largest distance between a flat outline as written and the true curve. */
export const CHORD_ERROR_MM = 0.005;

/**
 * How much shorter and smaller than the true curve a flat outline may be as written, relative to its edge's length
 * and to the sheet's area, once for its curves and once for its straight pieces over bends: together under the 1e-6
 * that lengths and areas of patterns promise.
 */
export const OUTLINE_SHORTFALL = 4e-7;

/** Folds under this are one smooth surface: over 20 mm of foam it opens 0.002 mm. */
export const SMOOTH_FOLD_RAD = 1e-4;

/** A sheet whose radius is above this is called flat: 1 m of it rises 0.012 mm. */
export const FLAT_RADIUS_MM = 1e7;

/** A drawn coordinate beyond this is a slip of the keyboard: the largest tray is 3 m long. */
export const LARGEST_COORDINATE_MM = 20_000;

/** More nodes than this in one line are refused, so that no drawing can hang the screen. */
export const MOST_NODES = 5_000;
