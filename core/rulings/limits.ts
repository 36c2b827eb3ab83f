/** A sheet with less twist than this on every ruling is developable, and a fold under it is no crease: 0.1° (design). */
export const DEVELOPABLE_TWIST_RAD = Math.PI / 1800;
